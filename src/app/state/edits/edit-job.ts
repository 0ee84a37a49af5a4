/** What the engineer does to a job, as pure functions: (job, arguments) → job. Lengths come in millimetres. */

import type { JobFile } from '#job/job-file.ts';
import { inJobUnits } from './edit-figures.ts';
import { type DrawingPoint, outlineLayers, sheetChoice } from './edit-sheet.ts';
import { isAskedAt, isAskedOfLayer, namedFace, placeOf, type RegionTarget } from './region-target.ts';

type Requirement = JobFile['requirements'][number];

/** A depth, or what it leaves, that changes evenly from one place to another, and is held beyond both. */
export type TaperEdit = { readonly from: DrawingPoint; readonly to: DrawingPoint } & TaperEnds;

export type TaperEnds =
  | { readonly depthFrom: number; readonly depthTo: number }
  | { readonly thicknessFrom: number; readonly thicknessTo: number };

/** What is required: a depth, what remains, a taper or a cut-out, and its tolerance where that is to change. */
export interface RequirementEdit {
  readonly depth?: number;
  readonly thickness?: number;
  readonly taper?: TaperEdit;
  readonly plus?: number;
  readonly minus?: number;
}

/**
 * Asks the same of every target. Where the targets are all the regions of a layer the layer's requirement says it, else each
 * region gets a requirement by point, in place of one it already had.
 */
export function askOfRegions(
  job: JobFile,
  targets: readonly RegionTarget[],
  all: readonly RegionTarget[],
  edit: RequirementEdit,
): JobFile {
  let requirements = [...job.requirements];
  const chosen = new Set(targets);
  const done = new Set<RegionTarget>();
  for (const layer of new Set(targets.map((target) => target.layer))) {
    const mates = all.filter((target) => target.layer === layer);
    if (layer === '' || mates.length < 2 || !mates.every((mate) => chosen.has(mate))) continue;
    const pointed = (each: Requirement) => mates.some((mate) => isAskedAt(each, mate));
    requirements = askOfOne(
      requirements.filter((each) => !pointed(each)),
      {
        isMine: (each) => mates.some((mate) => isAskedOfLayer(each, mate)),
        fresh: { layer, ...namedFace(mates[0]?.face) },
        requested: inUnitsOf(job, edit),
      },
    );
    for (const mate of mates) done.add(mate);
  }
  for (const target of targets) {
    if (done.has(target)) continue;
    requirements = askOfOne(requirements, {
      isMine: (each) => isAskedAt(each, target),
      fresh: { ...placeOf(target), ...toleranceFrom(requirements, target) },
      requested: inUnitsOf(job, edit),
    });
  }
  return { ...job, requirements };
}

function askOfOne(
  requirements: Requirement[],
  ask: { isMine: (each: Requirement) => boolean; fresh: Requirement; requested: RequirementEdit },
): Requirement[] {
  const index = requirements.findIndex(ask.isMine);
  const base = requirements[index] ?? ask.fresh;
  const asked = withEdit(base, ask.requested);
  return index === -1 ? [...requirements, asked] : requirements.with(index, asked);
}

/** Depth, thickness, taper and cut-out exclude each other, and tabs hold what is cut out. */
function withEdit(base: Requirement, { depth, thickness, taper, plus, minus }: RequirementEdit): Requirement {
  const { depth: oldDepth, thickness: oldThickness, taper: oldTaper, through, tabs, ...rest } = base;
  const tolerance = {
    ...(plus === undefined ? {} : { plus }),
    ...(minus === undefined ? {} : { minus }),
  };
  if (depth !== undefined) return { ...rest, depth, ...tolerance };
  if (thickness !== undefined) return { ...rest, thickness, ...tolerance };
  if (taper !== undefined) {
    const { from, to, ...ends } = taper;
    return { ...rest, taper: { from: [...from], to: [...to], ...ends }, ...tolerance };
  }
  return { ...base, ...tolerance };
}

/** A region set apart from its layer keeps the layer's tolerance. */
function toleranceFrom(
  requirements: readonly Requirement[],
  target: RegionTarget,
): Pick<RequirementEdit, 'plus' | 'minus'> {
  const mate = requirements.find((each) => isAskedOfLayer(each, target));
  return {
    ...(mate?.plus === undefined ? {} : { plus: mate.plus }),
    ...(mate?.minus === undefined ? {} : { minus: mate.minus }),
  };
}

/** Nominal sheet thickness, in mm; readings of another sheet go. */
export function setSheetThickness(job: JobFile, thickness: number): JobFile {
  const { measured, survey, ...stock } = job.stock;
  return {
    ...job,
    stock: { ...stock, thickness: inJobUnits(job, thickness) },
  };
}

/** What a layer draws: the sheet's border, regions of the near face, of the far one or of both, or nothing of the part. */
export type LayerRole = 'outline' | 'regions' | 'far' | 'both' | 'ignore';

/** The part a layer plays. A job that names no region layers takes every layer without another part. */
export function setLayerRole(job: JobFile, layer: string, role: LayerRole): JobFile {
  const { regions, far, both, ...others } = job.layers ?? {};
  const without = (names: readonly string[] = []) => names.filter((name) => name !== layer);
  const named = (names: readonly string[] | undefined, own: LayerRole) =>
    role === own ? [...without(names), layer] : names && without(names);
  const [farLayers, bothLayers] = [named(far, 'far'), named(both, 'both')];
  const outline = named(outlineLayers(job), 'outline') ?? [];
  return {
    ...job,
    layers: {
      ...others,
      // A sheet named by a point or as the outermost outline stays so until a layer takes its place.
      outline: outline.length === 0 ? (sheetChoice(job) ?? outline) : outline,
      ignore: named(others.ignore, 'ignore') ?? [],
      ...(regions === undefined ? {} : { regions: named(regions, 'regions') ?? [] }),
      ...(farLayers === undefined || farLayers.length === 0 ? {} : { far: farLayers }),
      ...(bothLayers === undefined || bothLayers.length === 0 ? {} : { both: bothLayers }),
    },
  };
}

export function layerRole(job: JobFile, layer: string): LayerRole {
  if (outlineLayers(job).includes(layer)) return 'outline';
  for (const role of ['ignore', 'far', 'both'] as const) {
    if (job.layers?.[role]?.includes(layer)) return role;
  }
  return job.layers?.regions === undefined || job.layers.regions.includes(layer) ? 'regions' : 'ignore';
}

/** Layers that draw about the part, all left out in one step. */
export function leaveLayersOut(job: JobFile, layers: readonly string[]): JobFile {
  return layers.reduce((changed, layer) => setLayerRole(changed, layer, 'ignore'), job);
}

function inUnitsOf(job: JobFile, { taper, ...lengths }: RequirementEdit): RequirementEdit {
  const converted = Object.fromEntries(
    Object.entries(lengths).map(([name, length]) => [name, inJobUnits(job, length)]),
  ) as RequirementEdit;
  if (taper === undefined) return converted;
  const { from, to, ...ends } = taper;
  const inUnits = Object.entries(ends).map(([name, length]) => [name, inJobUnits(job, length)]);
  return { ...converted, taper: { from, to, ...(Object.fromEntries(inUnits) as TaperEnds) } };
}
