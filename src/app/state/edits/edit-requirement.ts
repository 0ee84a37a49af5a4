/** What else is asked of regions, as pure functions: (job, arguments) → job. It is said where what is asked of them stands. */
import type { JobFile } from '#job/job-file.ts';
import { inJobUnits } from './edit-figures.ts';
import { isAskedAt, isAskedOfLayer, placeOf, type RegionTarget } from './region-target.ts';

export type Requirement = JobFile['requirements'][number];

/** What is asked of a region: by a point in it, else by its layer. Undefined where nothing is. */
export function requirementOf(job: JobFile, target: RegionTarget): Requirement | undefined {
  return (
    job.requirements.find((each) => isAskedAt(each, target)) ??
    job.requirements.find((each) => isAskedOfLayer(each, target))
  );
}

/**
 * Changes what is asked of the targets. A layer's requirement is changed where all regions of the layer are meant; else each region meant
 * is set apart by a point in it, with all that the layer's requirement asked. One of which nothing was asked gets a requirement if the
 * change alone makes one.
 * @param all every region of the plan
 */
export function changeRequirements(
  job: JobFile,
  { targets, all }: { readonly targets: readonly RegionTarget[]; readonly all: readonly RegionTarget[] },
  change: (requirement: Requirement) => Requirement,
): JobFile {
  const chosen = new Set(targets);
  const whole = new Set(
    job.requirements.filter(
      (each) => each.layer !== undefined && all.every((one) => one.layer !== each.layer || chosen.has(one)),
    ),
  );
  const apart: Requirement[] = [];
  const changed = new Set<Requirement>();
  for (const target of chosen) {
    const own = requirementOf(job, target);
    if (own !== undefined && (own.at !== undefined || whole.has(own))) changed.add(own);
    else {
      const { layer: _, ...asked } = own ?? {};
      apart.push(change({ ...asked, ...placeOf(target) }));
    }
  }
  return {
    ...job,
    requirements: [
      ...job.requirements.map((each) => (changed.has(each) ? change(each) : each)),
      ...apart.filter(asksSomething),
    ],
  };
}

function asksSomething({ depth, thickness, taper, through }: Requirement): boolean {
  return [depth, thickness, taper, through].some((each) => each !== undefined);
}

/** Which face is etched; one that is left out is the near one, and only both share a thickness. */
export function withFace(
  { face: _, split, ...rest }: Requirement,
  face: 'near' | 'far' | 'both',
): Requirement {
  if (face === 'near') return rest;
  return { ...rest, face, ...(face === 'both' && split !== undefined ? { split } : {}) };
}

/** Cut out of the sheet, in place of a depth, of what is left, or of a taper. */
export function cutOut({
  depth: _,
  thickness: __,
  taper: ___,
  split: ____,
  ...rest
}: Requirement): Requirement {
  return { ...rest, through: true };
}

/** How far drawn edges may lie outside and inside their lines, mm: a side that is not set yet may be off as far as the other. */
export function withEdge(
  job: JobFile,
  requirement: Requirement,
  side: { readonly plus?: number; readonly minus?: number },
): Requirement {
  const said = {
    ...(side.plus === undefined ? {} : { plus: inJobUnits(job, side.plus) }),
    ...(side.minus === undefined ? {} : { minus: inJobUnits(job, side.minus) }),
  };
  const { plus = said.minus ?? 0, minus = said.plus ?? 0 } = { ...requirement.edge, ...said };
  return { ...requirement, edge: { plus, minus } };
}

/** Depth that the near face takes of a thickness asked of both, mm; undefined divides it evenly. */
export function withSplit(
  job: JobFile,
  { split: _, ...rest }: Requirement,
  near: number | undefined,
): Requirement {
  return near === undefined ? rest : { ...rest, split: inJobUnits(job, near) };
}

export interface TabsGiven {
  /** mm */
  readonly width: number;
  /** Points of the drawing. Without them tabs are placed evenly: so many, or as many as is usual. */
  readonly at?: readonly (readonly [number, number])[] | undefined;
  readonly count?: number | undefined;
}

/** Strips across a cut-out, of one width; an empty list of places is no tabs. */
export function withTabs(
  job: JobFile,
  { tabs: _, ...rest }: Requirement,
  tabs: TabsGiven | undefined,
): Requirement {
  if (tabs === undefined || tabs.at?.length === 0) return rest;
  const { at, count } = tabs;
  const placed =
    at === undefined
      ? { ...(count === undefined ? {} : { count }) }
      : { at: at.map(([x, y]): [number, number] => [x, y]) };
  return { ...rest, tabs: { width: inJobUnits(job, tabs.width), ...placed } };
}
