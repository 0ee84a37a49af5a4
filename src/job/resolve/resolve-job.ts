/**
 * The job resolved: millimetres and minutes, every default filled in, every figure with where it comes from. Lengths come in
 * the job's own units; points in the drawing's, so its unit must be known before there is a job.
 */
import { knownFigures } from '#bath/known-figures.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { ResolveUnits } from '#job/fields/field.ts';
import { fillGroup, readGroup } from '#job/fields/read-group.ts';
import type { Job } from '#job/job.ts';
import { drawnPoint } from '#job/job-figures.ts';
import { JOB, type JobFile, type JobValues } from '#job/job-file.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { bareJob, pathsFilled } from './bare-job.ts';
import { farProvenance } from './far-job.ts';
import { resolveProcess } from './resolve-process.ts';
import { requirementProvenance, resolveRequirements } from './resolve-requirements.ts';
import { resolveSizing, sizedStock } from './resolve-sizing.ts';
import { resolveStock } from './resolve-stock.ts';

export interface ResolvedJob {
  /**
   * What can be resolved of the job. Undefined when the drawing's unit is not known or nothing gives the etch factor or the
   * rate; a requirement that the sheet can't give is left out and reported.
   */
  readonly job?: Job;
  /** The job file with its defaults filled in, in its own units: it reads back to the same job. */
  readonly filled: JobFile;
  readonly findings: readonly Finding[];
}

/**
 * `drawingUnit` is the unit that the drawing was read in; undefined when neither drawing nor job says. Figures of the job's
 * own must stand in it (`fillInFiles`).
 */
export function resolveJob(given: JobFile, drawingUnit: LengthUnit | undefined): ResolvedJob {
  const { jobFile, findings } = bareJob(given, (bare) => resolveBare(bare, drawingUnit).filled);
  const resolved = resolveBare(jobFile, drawingUnit);
  return { ...resolved, findings: [...findings, ...resolved.findings] };
}

/** `assumed` has been looked at. */
function resolveBare(jobFile: JobFile, drawingUnit: LengthUnit | undefined): ResolvedJob {
  // Without a drawing unit there is no job in the end, but its other faults can be reported all the same.
  const units: ResolveUnits = { job: jobFile.units ?? 'mm', drawing: drawingUnit ?? 'mm' };
  const figures = knownFigures(typeof jobFile.figures === 'object' ? jobFile.figures : undefined);
  const setting = { units, figures };
  const { stock, process, handoff, ...others } = JOB.members;
  const sheet = resolveStock(jobFile.stock, setting);
  const { alloy } = sheet;
  const { values, provenance } = readGroup({ ...JOB, members: others }, jobFile, {
    ...setting,
    alloy,
    path: '',
  });
  const bath = resolveProcess(jobFile.process, { ...setting, alloy });
  const { sizing, findings: sizingFindings } = resolveSizing(bath.values.sizing, {
    stock: sheet.stock,
    process: bath.process,
  });
  const left = sizing === undefined ? sheet.stock : sizedStock(sheet.stock, sizing);
  const { thickness } = left;
  const asked = resolveRequirements(values.requirements, { given: jobFile.requirements, stock: thickness });
  const { $schema, format, version, assumed, units: _, figures: __, wideLines, ...held } = values;
  const job: Omit<Job, 'process'> = {
    ...held,
    layers: resolveLayers(values.layers, units.drawing),
    stock: left,
    ...(sizing === undefined ? {} : { sizing }),
    requirements: asked.requirements,
    lockedLevels: values.lockedLevels ?? [],
    provenance: [
      ...sheet.provenance,
      ...bath.provenance,
      ...requirementProvenance(jobFile.requirements, units),
      ...provenance,
      ...farProvenance(jobFile),
    ],
  };
  const known = { ...values, stock: sheet.values, process: bath.values };
  const filled = fillGroup(JOB, jobFile, { values: known, units }) as JobFile;
  return {
    ...(bath.process === undefined || drawingUnit === undefined
      ? {}
      : { job: { ...job, process: bath.process } }),
    filled: { ...filled, assumed: pathsFilled(jobFile, filled) },
    findings: [
      ...sheet.findings,
      ...bath.findings,
      ...sizingFindings,
      ...asked.findings,
      ...levelsBeyond({ levels: values.levels, lockedLevels: values.lockedLevels }, thickestOf(thickness)),
    ],
  };
}

function resolveLayers(given: JobValues['layers'], drawing: LengthUnit): Job['layers'] {
  const { outline, regions, ignore, holes, far, both } = given;
  const place = (at: readonly [number, number], path: string) => ({ at: drawnPoint(at, drawing), path });
  return {
    ...(Array.isArray(outline)
      ? { outline }
      : {
          outline: [],
          sheet: outline === 'outermost' ? outline : place(outline.at, 'layers.outline.at'),
        }),
    ...(holes === undefined ? {} : { holes: holes.map((at, index) => place(at, `layers.holes[${index}]`)) }),
    regions,
    ignore,
    ...(far === undefined ? {} : { far }),
    ...(both === undefined ? {} : { both }),
  };
}

function levelsBeyond(
  lists: Readonly<Record<string, string | readonly number[] | undefined>>,
  stock: number,
): Finding[] {
  return Object.entries(lists).flatMap(([key, levels]) =>
    typeof levels === 'string' || levels === undefined
      ? []
      : levels.flatMap((level, index) =>
          level < stock
            ? []
            : [finding('level-beyond-stock', { level, stock }, { path: `${key}[${index}]` })],
        ),
  );
}
