/**
 * Carriers by the edges of the grid that may lie on them: which of many an edge fits. Cost of an edge: the carriers near it, looked up by
 * box once there are many.
 */

import { itemAt } from '#geometry/assert.ts';
import { type Box, boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import type { Point } from '#geometry/point.ts';
import type { Span } from '#geometry/span.ts';
import { type FittedCarrier, fittedCarrier, misfit } from '#geometry/spans/carrier.ts';
import { FITS_CARRIER, SAGITTA, SPECK } from '#geometry/tolerances.ts';

/** A curve that an outline may be made of. */
export interface Carrier {
  readonly span: Span;
  /** Whether it is a border already, and wins over a new one that runs along it. */
  readonly isKnown: boolean;
}

/** With fewer carriers than this, trying them all is cheaper than an index. */
const FEW_CARRIERS = 24;

export type FoundCarrier = Carrier & FittedCarrier;

export interface CarrierFinder {
  /** Those that an edge may lie on. */
  readonly near: (a: Point, b: Point) => readonly FoundCarrier[];
  /** The first known one that the edge fits; else the given one; else that which it fits best, and of those the first. */
  readonly best: (a: Point, b: Point, given: FoundCarrier | undefined) => FoundCarrier | undefined;
  readonly hasKnown: boolean;
}

export function carrierFinder(given: readonly Carrier[]): CarrierFinder {
  const carriers = given.map(({ span, isKnown }) => ({ ...fittedCarrier(span), isKnown }));
  const hasKnown = carriers.some(({ isKnown }) => isKnown);
  const index =
    carriers.length < FEW_CARRIERS
      ? undefined
      : indexBoxes(carriers.map(({ span }) => growBox(boxOfSpan(span), SAGITTA + SPECK)));
  const best = (a: Point, b: Point, other: FoundCarrier | undefined): FoundCarrier | undefined => {
    // They come in no order.
    let [known, found] = [carriers.length, carriers.length];
    let least = Number.POSITIVE_INFINITY;
    const take = (at: number): void => {
      const carrier = itemAt(carriers, at);
      const off = misfit(carrier, a, b, carrier.isKnown ? Math.max(least, FITS_CARRIER) : least);
      if (off === undefined) return;
      if (carrier.isKnown && off < FITS_CARRIER) known = Math.min(known, at);
      if (off > least || (off === least && at > found)) return;
      found = at;
      least = off;
    };
    if (index === undefined) for (const at of carriers.keys()) take(at);
    else index.around((a.x + b.x) / 2, (a.y + b.y) / 2, take);
    return carriers[known] ?? other ?? carriers[found];
  };
  const near = (a: Point, b: Point): readonly FoundCarrier[] =>
    index === undefined ? carriers : index.meeting(edgeMiddle(a, b)).map((each) => itemAt(carriers, each));
  return { near, best, hasKnown };
}

function edgeMiddle(a: Point, b: Point): Box {
  const x = (a.x + b.x) / 2;
  const y = (a.y + b.y) / 2;
  return { minX: x, minY: y, maxX: x, maxY: y };
}
