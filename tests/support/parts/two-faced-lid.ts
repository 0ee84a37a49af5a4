/** A lid with pockets on either face, and jobs about it. */
import { type RunInput, type RunResult, runJob } from '#run/run-job.ts';
import { box, buoyLidJob, circle, dxf } from '#support/drawings/small-drawing.ts';

const BASE = { ...buoyLidJob, layers: { outline: ['TRIM'], far: ['BACK'] } };

/** A lid with pockets on either face: the far one drawn as seen through it. */
export const LID = [
  box('TRIM', [0, 0], [200, 120]),
  box('POCKETS', [20, 20], [90, 100]),
  circle('ROUND', [150, 62], 21),
  box('BACK', [105, 17], [190, 103]),
];

export function runLid(
  job: object,
  entities: readonly string[],
  more: Partial<RunInput> = {},
): Promise<RunResult> {
  return runJob({
    jobText: JSON.stringify({ ...BASE, ...job }),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
    ...more,
  });
}

export const codes = ({ findings }: RunResult) => findings.map(({ code }) => code);
export const stops = ({ findings }: RunResult) =>
  findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);

export const requirements = [
  { layer: 'POCKETS', depth: 1.2 },
  { layer: 'ROUND', depth: 0.7 },
  { layer: 'BACK', depth: 1.2, face: 'far' },
];
