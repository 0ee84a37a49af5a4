/** A job with nothing special about it, for tests that ask for one thing. */
import type { EdgeDatum, Job, Masking } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';

/** As a file, where only its being one counts. */
export const plainJobFile: JobFile = {
  format: 'isobath-job',
  version: 1,
  drawing: 'plain.dxf',
  stock: { thickness: 6 },
  process: { etchFactor: 1, rate: 0.025 },
  requirements: [],
};

export function plainJob(
  special: {
    readonly etchFactor?: Job['process']['etchFactor'];
    readonly edgeDatum?: EdgeDatum;
    readonly masking?: Masking;
    readonly levels?: Job['levels'];
  } = {},
): Job {
  return {
    name: 'Plain part',
    drawing: 'plain.dxf',
    drawingUnits: undefined,
    joinTolerance: 0.05,
    layers: { outline: [], regions: undefined, ignore: [] },
    stock: { alloy: undefined, thickness: 6, minus: 0.05, plus: 0.05, density: undefined },
    process: {
      bath: undefined,
      etchFactor: special.etchFactor ?? [[0, 1]],
      rate: 0.025,
      rateSpread: 0.05,
      timing: 0.25,
      edgeDatum: special.edgeDatum ?? 'shallow-edge',
      masking: special.masking ?? 'peel-next',
    },
    requirements: [],
    rules: { minWeb: 0.5, minLineSpacing: 1.5, minPieceWidth: 3, minLandWidth: 3 },
    levels: special.levels ?? 'as-drawn',
    provenance: [],
  };
}
