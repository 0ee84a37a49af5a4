/**
 * Parts as drawings have them: whole millimetres, shared edges, corners that touch, and necks, legs and gaps of exactly
 * twice the undercut, where fronts meet in a line all at once.
 */
import type { Loop } from '#geometry/span.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import type { Dice } from './dice.ts';
import type { DrawnPart } from './drawn-part.ts';

const WIDTH = 60;
const HEIGHT = 40;

export function wholeMillimetres(dice: Dice): DrawnPart {
  const factor = dice.oneOf([1, 0.8, 0.5]);
  const depth = dice.whole(1, 4);
  const neck = 2 * factor * depth;
  const count = dice.whole(1, 4);
  return {
    kind: 'whole millimetres',
    sheet: dice.chance(0.75) ? rectangle(0, 0, WIDTH, HEIGHT) : roundedRectangle(0, 0, WIDTH, HEIGHT, 6),
    cutouts: dice.chance(0.15) ? [circle(dice.whole(10, 50), dice.whole(10, 30), dice.whole(1, 3))] : [],
    outlines: Array.from({ length: count }, () => outline(dice, neck)),
    depths: Array.from({ length: dice.whole(1, 5) }, (_, i) => (i === 0 ? depth : dice.whole(0, 4))),
    factor,
    masking: dice.oneOf(['peel-next', 'peel-next', 're-mask']),
    edgeDatum: dice.oneOf(['shallow-edge', 'shallow-edge', 'mid-wall', 'deep-foot']),
  };
}

/** One outline within the sheet; `neck` is the width at which the opening just closes, or a gap of land just drowns. */
function outline(dice: Dice, neck: number): Loop {
  const width = dice.whole(6, 30);
  const height = dice.whole(6, 24);
  // Some lie along the sheet's edge.
  const edge = dice.chance(0.85) ? 6 : 0;
  const x = dice.whole(edge, WIDTH - width - edge);
  const y = dice.whole(edge, HEIGHT - height - edge);
  const [right, top] = [x + width, y + height];
  switch (dice.oneOf(['rectangle', 'angle', 'channel', 'bar bell', 'cross', 'rounded', 'round', 'slot'])) {
    case 'angle':
      return polygon(
        mirrored(dice, { x, y, width, height }, [
          [x, y],
          [right, y],
          [right, y + neck],
          [x + neck, y + neck],
          [x + neck, top],
          [x, top],
        ]),
      );
    case 'channel':
      return polygon(
        mirrored(dice, { x, y, width, height }, [
          [x, y],
          [x + 2 * neck + 2, y],
          [x + 2 * neck + 2, y + height],
          [x + neck + 2, y + height],
          [x + neck + 2, y + neck],
          [x + neck, y + neck],
          [x + neck, y + height],
          [x, y + height],
        ]).map(([px, py]) => [Math.min(px, WIDTH), py]),
      );
    case 'bar bell':
      return barBell(dice, x, y, neck);
    case 'cross': {
      const [a, b] = [dice.whole(2, width - 3), dice.whole(2, height - 3)];
      const [c, d] = [Math.min(a + neck, width), Math.min(b + neck, height)];
      return polygon([
        [x + a, y],
        [x + c, y],
        [x + c, y + b],
        [right, y + b],
        [right, y + d],
        [x + c, y + d],
        [x + c, top],
        [x + a, top],
        [x + a, y + d],
        [x, y + d],
        [x, y + b],
        [x + a, y + b],
      ]);
    }
    case 'rounded':
      return roundedRectangle(x, y, right, top, dice.whole(1, 2));
    case 'round': {
      const radius = Math.floor(Math.min(width, height) / 2);
      return circle(x + radius, y + radius, radius);
    }
    case 'slot':
      return rectangle(x, y, right, Math.min(HEIGHT, y + neck));
    default:
      return rectangle(x, y, right, top);
  }
}

type Corner = readonly [number, number];

/** Two squares with a neck between them. */
function barBell(dice: Dice, left: number, bottom: number, neck: number): Loop {
  const side = Math.ceil(neck) + dice.whole(2, 6);
  const length = dice.whole(2, 8);
  const x = Math.min(left, WIDTH - 2 * side - length);
  const y = Math.min(bottom, HEIGHT - side);
  const low = y + dice.whole(1, side - Math.ceil(neck) - 1);
  return polygon([
    [x, y],
    [x + side, y],
    [x + side, low],
    [x + side + length, low],
    [x + side + length, y],
    [x + 2 * side + length, y],
    [x + 2 * side + length, y + side],
    [x + side + length, y + side],
    [x + side + length, low + neck],
    [x + side, low + neck],
    [x + side, y + side],
    [x, y + side],
  ]);
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The corners as they are or turned by half a turn within the box, so that the run stays counter-clockwise. */
function mirrored(dice: Dice, { x, y, width, height }: Box, corners: readonly Corner[]): readonly Corner[] {
  if (dice.chance(0.5)) return corners;
  return corners.map(([px, py]) => [2 * x + width - px, 2 * y + height - py]);
}
