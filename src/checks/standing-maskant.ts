/** The maskant that stands to the end of its coat: where it is, which stage cuts under its border, and how deep the metal under it went. */

import { makeProbe } from '#front/depth-at.ts';
import { momentAt, reachAt } from '#front/front.ts';
import { squaredDistance } from '#front/front-features.ts';
import type { FrontIndex } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfPoints, growBox } from '#geometry/box.ts';
import { isInside } from '#geometry/loops/inside-index.ts';
import { partAtTouches } from '#geometry/loops/part-at-touches.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, pointAlong, reverseSpans } from '#geometry/span.ts';
import { SAME_BORDER, TOUCHING } from '#geometry/tolerances.ts';
import type { Stage } from '#plan/etch-plan.ts';
import type { MakingPlace } from './making.ts';
import { type Side, sidesOf } from './sides.ts';

export interface StandingMaskant {
  /** Borders with the maskant on the left: first those with openings, then the sheet's own edge. */
  readonly sides: readonly Side[];
  /** How many of them border openings. */
  readonly cutSides: number;
  /** Borders with what the coat leaves bare in the end. */
  readonly borders: readonly Loop[];
  readonly isStanding: (point: Point) => boolean;
  /** Depth of the floor that the openings are cut over, mm. */
  readonly base: number;
}

/** The one coat of the run, or one a stage. */
export function standingMaskant(making: MakingPlace): StandingMaskant[] {
  const { stages, masking } = making.plan;
  return (masking === 're-mask' ? stages : stages.slice(-1)).map((stage) => coatOf(making, stage));
}

function coatOf({ plan, kit: { index } }: MakingPlace, { number, opening, base }: Stage): StandingMaskant {
  const borders = partAtTouches(opening.map(reverseSpans), TOUCHING);
  const cut = sidesOf(borders);
  const bare = index.openings[index.front.stages.findIndex((stage) => stage.number === number)];
  return {
    sides: [...cut, ...sidesOf(plan.sheet)],
    cutSides: cut.length,
    borders,
    isStanding: ({ x, y }) => isOnSheet(index, x, y) && !(bare !== undefined && isInside(bare, x, y)),
    base,
  };
}

export function isOnSheet({ sheet }: FrontIndex, x: number, y: number): boolean {
  return sheet === undefined || isInside(sheet, x, y);
}

/** Depth gauge for the end of the run. */
export function gaugeOf({ kit: { index } }: MakingPlace): (point: Point) => number {
  const probe = makeProbe(index, momentAt(index.front));
  return ({ x, y }) => probe.measure(x, y);
}

export interface Undercutter {
  /** Undercut below the maskant, φ · cut, and the level that is cut to; both 0 where nothing is cut. */
  readonly reach: number;
  readonly level: number;
}

/**
 * The undercutter of a side that reaches deepest, as found in the middle of each of its parts: what the side can be too near to follows
 * from the side alone, and not from what else its group etches.
 */
export function deepestUndercutter(
  making: MakingPlace,
  { parts }: Side,
  on: 'line' | 'surface',
): Undercutter {
  return parts
    .map((part) => undercutterAt(making, pointAlong(part, 0.5), on))
    .reduce((deepest, each) => (each.level > deepest.level ? each : deepest));
}

/**
 * The stage that cuts under a place on a border: of a scribe line's (`on` = 'line') the first that was peeled there, of the etched
 * surface's border (`on` = 'surface') the one that reaches just so far.
 */
export function undercutterAt(
  { kit: { index } }: MakingPlace,
  at: Point,
  on: 'line' | 'surface',
): Undercutter {
  const moment = momentAt(index.front);
  let first = Number.POSITIVE_INFINITY;
  for (const member of index.near.meeting(growBox(boxOfPoints([at]), SAME_BORDER))) {
    const feature = index.features[member];
    if (feature === undefined || feature.kind === 'corner' || feature.stage >= first) continue;
    const far = Math.sqrt(squaredDistance(feature, at.x, at.y));
    const expected = on === 'line' ? 0 : reachAt(moment, feature.stage, 0);
    if (Math.abs(far - expected) < SAME_BORDER) first = feature.stage;
  }
  const level = index.front.stages[first]?.level ?? 0;
  return { level, reach: level === 0 ? 0 : reachAt(moment, first, itemAt(moment.bases, first)) };
}

export function areaOfDisc(width: number): number {
  return (Math.PI / 4) * width * width;
}
