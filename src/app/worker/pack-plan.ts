/** Puts contours of a plan down as numbers. The one who packs and the one who unpacks both remember the last plan, and it alone. */
import { assert } from '#geometry/assert.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { packContours, unpackContours } from './pack-contours.ts';
import type { WirePlan } from './wire-page.ts';

export interface Packer {
  /** Contours that the last plan has, by identity. */
  numbers: Map<Contour, number>;
  next: number;
}

export function createPacker(): Packer {
  return { numbers: new Map(), next: 0 };
}

export function packPlan(packer: Packer, plan: ShownPlan): WirePlan {
  const numbers = new Map<Contour, number>();
  const first = packer.next;
  const fresh: Contour[] = [];
  const numberOf = (contour: Contour): number => {
    const known = numbers.get(contour);
    if (known !== undefined) return known;
    const before = packer.numbers.get(contour);
    const number = before ?? packer.next++;
    if (before === undefined) fresh.push(contour);
    numbers.set(contour, number);
    return number;
  };
  const listOf = (contours: readonly Contour[]) => Int32Array.from(contours, numberOf);
  const wire = {
    ...plan,
    outline: plan.outline === null ? undefined : numberOf(plan.outline),
    cutouts: plan.cutouts.map(numberOf),
    regions: plan.regions.map((region) => ({ ...region, contours: region.contours.map(numberOf) })),
    stages: plan.stages.map((stage) => ({
      ...stage,
      piece: listOf(stage.piece),
      opening: listOf(stage.opening),
      lines: listOf(stage.lines),
    })),
    fresh: { first, ...packContours(fresh) },
  };
  packer.numbers = numbers;
  return wire;
}

export interface Unpacker {
  contours: Map<number, Contour>;
}

/** The plan again; a contour that the plan before had is the very same object, so that what was made from it stays good. */
export function unpackPlan(unpacker: Unpacker, { fresh, ...wire }: WirePlan): ShownPlan {
  const arrived = unpackContours(fresh);
  const contours = new Map<number, Contour>();
  const contourOf = (number: number): Contour => {
    const contour = contours.get(number) ?? arrived[number - fresh.first] ?? unpacker.contours.get(number);
    assert(contour !== undefined, 'a contour is sent before it is named');
    contours.set(number, contour);
    return contour;
  };
  const listOf = (numbers: Int32Array) => Array.from(numbers, contourOf);
  const plan = {
    ...wire,
    outline: wire.outline === undefined ? null : contourOf(wire.outline),
    cutouts: wire.cutouts.map(contourOf),
    regions: wire.regions.map((region) => ({ ...region, contours: region.contours.map(contourOf) })),
    stages: wire.stages.map((stage) => ({
      ...stage,
      piece: listOf(stage.piece),
      opening: listOf(stage.opening),
      lines: listOf(stage.lines),
    })),
  };
  unpacker.contours = contours;
  return plan;
}
