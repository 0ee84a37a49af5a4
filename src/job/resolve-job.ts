/**
 * The job resolved: millimetres and minutes, every default filled in, every figure with where it comes from. Lengths come in
 * the job's own units; points in the drawing's, so its unit must be known before there is a job.
 */
import { knownFigures } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { bareJob } from './bare-job.ts';
import { fillJob } from './fill-job.ts';
import type { Job, MakingRules, Taper } from './job.ts';
import { DEFAULT_JOIN_TOLERANCE, DEFAULT_LEVELS, DEFAULT_RULES, DEFAULT_UNITS } from './job-defaults.ts';
import { givenFigure, jobMillimetres, provenanceOf } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import { resolveProcess } from './resolve-process.ts';
import { resolveRequirements } from './resolve-requirements.ts';
import { resolveStock } from './resolve-stock.ts';
import { drawnPoint } from './resolve-taper.ts';
import { thickestOf } from './sheet-at.ts';

export interface ResolvedJob {
  /**
   * What can be resolved of the job. Undefined when the drawing's unit is not known or nothing gives the etch factor or the
   * rate; a requirement that the sheet can't give is left out and told in the findings.
   */
  readonly job?: Job;
  /** The job file with its defaults filled in, in its own units: it reads back to the same job. */
  readonly filled: JobFile;
  readonly findings: readonly Finding[];
}

/**
 * `drawingUnit` is the unit that the drawing was read in; undefined when neither drawing nor job says. Figures of the job's
 * own must stand in it (`takeInBeside`).
 */
export function resolveJob(given: JobFile, drawingUnit: LengthUnit | undefined): ResolvedJob {
  const { jobFile, findings } = bareJob(given, (bare) => resolveBare(bare, drawingUnit).filled);
  const resolved = resolveBare(jobFile, drawingUnit);
  return { ...resolved, findings: [...findings, ...resolved.findings] };
}

/** `assumed` has been looked at. */
function resolveBare(jobFile: JobFile, drawingUnit: LengthUnit | undefined): ResolvedJob {
  const unit = jobFile.units ?? DEFAULT_UNITS;
  // Without a drawing unit there is no job in the end, but its other faults can be told all the same.
  const units = { job: unit, drawing: drawingUnit ?? 'mm' };
  const { alloys, baths } = knownFigures(typeof jobFile.figures === 'object' ? jobFile.figures : undefined);
  const { stock, alloy, ...ofStock } = resolveStock(jobFile.stock, { units, alloys });
  const { process, known, ...ofProcess } = resolveProcess(jobFile.process, { alloy, unit, baths });
  const asked = resolveRequirements(jobFile.requirements, { stock: stock.thickness, units });
  const join = resolveLength(jobFile.joinTolerance, DEFAULT_JOIN_TOLERANCE, { path: 'joinTolerance', unit });
  const rules = resolveRules(jobFile.rules, unit);
  const levels = resolveLevels(jobFile, { stock: stock.thickness, unit });
  const resolved: Omit<Job, 'process'> = {
    name: jobFile.name ?? bareName(jobFile.drawing),
    drawing: jobFile.drawing,
    drawingUnits: jobFile.drawingUnits,
    joinTolerance: join.value,
    layers: resolveLayers(jobFile.layers, units.drawing),
    stock,
    requirements: asked.requirements,
    rules: rules.rules,
    levels: levels.levels,
    lockedLevels: levels.lockedLevels,
    provenance: [
      ...ofStock.provenance,
      ...ofProcess.provenance,
      ...asked.provenance,
      provenanceOf('gap that is joined', 'mm', join),
      ...rules.provenance,
    ],
  };
  return {
    ...(process === undefined || drawingUnit === undefined ? {} : { job: { ...resolved, process } }),
    filled: fillJob(jobFile, { ...resolved, process: known }),
    findings: [...ofStock.findings, ...ofProcess.findings, ...asked.findings, ...levels.findings],
  };
}

function resolveLayers(given: JobFile['layers'], drawing: LengthUnit): Job['layers'] {
  const { outline = [], regions, ignore = [], holes } = given ?? {};
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
  };
}

function resolveLength(
  given: number | undefined,
  otherwise: Sourced,
  { path, unit }: { readonly path: string; readonly unit: LengthUnit },
): Sourced {
  return given === undefined ? otherwise : givenFigure(jobMillimetres(given, unit), path);
}

const RULE_NAMES: Readonly<Record<keyof MakingRules, string>> = {
  minWeb: 'thinnest web',
  minLineSpacing: 'least distance of scribe lines',
  minPieceWidth: 'narrowest piece',
  minLandWidth: 'narrowest land',
};

function resolveRules(
  given: JobFile['rules'],
  unit: LengthUnit,
): { readonly rules: MakingRules; readonly provenance: readonly Provenance[] } {
  const rule = (key: keyof MakingRules) =>
    resolveLength(given?.[key], DEFAULT_RULES[key], { path: `rules.${key}`, unit });
  const keys = Object.keys(RULE_NAMES) as (keyof MakingRules)[];
  return {
    rules: {
      minWeb: rule('minWeb').value,
      minLineSpacing: rule('minLineSpacing').value,
      minPieceWidth: rule('minPieceWidth').value,
      minLandWidth: rule('minLandWidth').value,
    },
    provenance: keys.map((key) => provenanceOf(RULE_NAMES[key], 'mm', rule(key))),
  };
}

function resolveLevels(
  { levels, lockedLevels = [] }: Pick<JobFile, 'levels' | 'lockedLevels'>,
  { stock, unit }: { readonly stock: number | Taper; readonly unit: LengthUnit },
): {
  readonly levels: Job['levels'];
  readonly lockedLevels: readonly number[];
  readonly findings: readonly Finding[];
} {
  const thickest = thickestOf(stock);
  const findings: Finding[] = [];
  const resolve = (given: readonly number[], key: string) =>
    given.map((each, index) => {
      const level = jobMillimetres(each, unit);
      if (level >= thickest) {
        findings.push(
          finding('level-beyond-stock', { level, stock: thickest }, { path: `${key}[${index}]` }),
        );
      }
      return level;
    });
  return {
    levels: Array.isArray(levels) ? resolve(levels, 'levels') : (levels ?? DEFAULT_LEVELS),
    lockedLevels: resolve(lockedLevels, 'lockedLevels'),
    findings,
  };
}

/** A file's name without its folders and its ending. */
function bareName(path: string): string {
  const file = path.split(/[\\/]/).at(-1) ?? path;
  return file.replace(/\.dxf$/i, '');
}
