/** Depth notes of the drawing that is open, against what is required already; and accepting them. */

import { boxOfShapes, type RegionShape, shapeHolds } from '#app/state/region-shape.ts';
import { shapeAt } from '#app/state/shape-finder.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import type { Box } from '#geometry/box.ts';
import type { JobFile } from '#job/job-file.ts';
import { type DepthOffer, depthNotes, unitOfNotes, unreadNotes } from '#part/depth-notes.ts';
import { SAME_ASKED } from '#units/depth-tolerances.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { askOfRegions, type RequirementEdit } from './edit-job.ts';
import type { RegionTarget } from './region-target.ts';

export interface JudgedOffer extends DepthOffer {
  /** `asked`: exactly this is required of the region; `other`: something else is; `open`: nothing yet. */
  readonly standing: 'asked' | 'other' | 'open';
}

interface OfferContext {
  readonly page: PlannedPage | undefined;
  readonly shapes: readonly RegionShape[];
  readonly prefix: string;
  /** mm */
  readonly thickness: number;
  /** What figures mean that do not state it themselves; undefined until the engineer has chosen. */
  readonly meaning?: Meaning | undefined;
}

export type Meaning = 'depth' | 'thickness';

export function depthOffers({ page, shapes, prefix, thickness, meaning }: OfferContext): JudgedOffer[] {
  if (page?.plan === undefined || page.notes.length === 0) return [];
  const unit = unitOfNotes(page.plan.drawing.unit as LengthUnit);
  const regionAt = (at: { x: number; y: number }) => shapeAt(shapes, at)?.region.id;
  const asked = new Map(shapes.map(({ region }) => [region.id, region.asked]));
  return depthNotes(page.notes, regionAt, { unit, prefix, thickness }).map((read) => {
    const offer = read.isSaid || meaning === undefined ? read : { ...read, asks: meaning };
    const now = asked.get(offer.region);
    const depth = offer.asks === 'depth' ? offer.length : thickness - offer.length;
    if (now === undefined || now.depth <= 0) return { ...offer, standing: 'open' };
    const isSame =
      Math.abs(now.depth - depth) < SAME_ASKED &&
      Math.abs(now.plus - (offer.plus ?? now.plus)) < SAME_ASKED &&
      Math.abs(now.minus - (offer.minus ?? now.minus)) < SAME_ASKED;
    return { ...offer, standing: isSame ? 'asked' : 'other' };
  });
}

/**
 * Texts with a figure that no depth was read of, in regions of which nothing is required yet. What stands on the land that reaches round the
 * part is about the part, not about a pocket.
 */
export function unreadFigures({
  page,
  shapes,
  prefix,
  thickness,
}: OfferContext): readonly { readonly region: string; readonly text: string }[] {
  if (page?.plan === undefined || page.notes.length === 0) return [];
  const unit = unitOfNotes(page.plan.drawing.unit as LengthUnit);
  const whole = boxOfShapes(shapes);
  const pockets = shapes.filter(
    ({ box, region }) => region.asked.depth <= 0 && whole !== undefined && !holdsBox(box, whole),
  );
  const regionAt = (at: { x: number; y: number }) =>
    pockets.find((shape) => shapeHolds(shape, at))?.region.id;
  return unreadNotes(page.notes, regionAt, { unit, prefix, thickness });
}

function holdsBox(box: Box, other: Box): boolean {
  return box.minX <= other.minX && box.minY <= other.minY && box.maxX >= other.maxX && box.maxY >= other.maxY;
}

/** Regions that are offered the same are asked at once, so that a layer that they all share is named once. */
export function takeOffers(
  job: JobFile,
  offers: readonly DepthOffer[],
  targets: ReadonlyMap<string, RegionTarget>,
): JobFile {
  const groups = new Map<string, { readonly edit: RequirementEdit; readonly regions: RegionTarget[] }>();
  for (const { asks, length, plus, minus, region } of offers) {
    const target = targets.get(region);
    if (target === undefined) continue;
    const edit: RequirementEdit = {
      ...(asks === 'depth' ? { depth: length } : { thickness: length }),
      ...(plus === undefined ? {} : { plus }),
      ...(minus === undefined ? {} : { minus }),
    };
    const key = JSON.stringify(edit);
    const group = groups.get(key) ?? { edit, regions: [] };
    group.regions.push(target);
    groups.set(key, group);
  }
  return [...groups.values()].reduce(
    (asked, { edit, regions }) => askOfRegions(asked, regions, [...targets.values()], edit),
    job,
  );
}
