/**
 * Parts of odd figures: outlines of lines and arcs at any angle that overlap, nest, and touch in a corner, on sheets with
 * rounded concave edges that outlines run along.
 */
import { type Loop, reverseSpans, spanFromBulge } from '#geometry/span.ts';
import { moveSpan } from '#support/geometry/move-spans.ts';
import { circle, polygon, rectangle } from '#support/geometry/shapes.ts';
import type { Dice } from './dice.ts';
import type { DrawnPart } from './drawn-part.ts';

type Corner = readonly [number, number];

export function oddShapes(dice: Dice): DrawnPart {
  const sheet = oddSheet(dice);
  const outlines = Array.from({ length: dice.whole(1, 5) }, () => outline(dice));
  const first = outlines[0]?.[0];
  // A corner that touches another outline's.
  if (first !== undefined && dice.chance(0.3)) {
    const { x, y } = first.start;
    const [u, v] = [dice.between(4, 9) * dice.oneOf([1, -1]), dice.between(4, 9) * dice.oneOf([1, -1])];
    outlines.push(
      turnedLeft([
        [x, y],
        [x + u, y],
        [x + u, y + v],
        [x, y + v],
      ]),
    );
  }
  const turn = dice.between(-3, 3);
  const shift = { x: dice.between(-200, 200), y: dice.between(-200, 200) };
  const scale = dice.oneOf([1, 1, 1, 0.2, 5]);
  const moved = (loop: Loop): Loop =>
    loop.map((span) => moveSpan(span, { turn, factor: scale, mirrored: false, shift }));
  return {
    kind: 'odd shapes',
    sheet: moved(sheet),
    cutouts: dice.chance(0.15)
      ? [moved(circle(dice.between(20, 70), dice.between(20, 40), dice.between(1, 4)))]
      : [],
    outlines: outlines.map(moved),
    depths: Array.from({ length: dice.whole(1, 6) }, (_, i) =>
      i > 0 && dice.chance(0.25) ? 0 : dice.between(0.4, 4.5) * Math.min(1, scale),
    ),
    factor: dice.between(0.5, 1.6),
    masking: dice.oneOf(['peel-next', 're-mask']),
    edgeDatum: dice.oneOf(['shallow-edge', 'mid-wall', 'deep-foot']),
  };
}

const WIDTH = 90;
const HEIGHT = 60;

/** A rectangle, or one with a rounded bay in its lower edge, or with a bulging or hollow side. */
function oddSheet(dice: Dice): Loop {
  const at = dice.between(25, 60);
  const half = dice.between(4, 14);
  const point = (x: number, y: number) => ({ x, y });
  switch (dice.oneOf(['plain', 'bay', 'hollow side', 'bulging side'])) {
    case 'bay':
      return [
        spanFromBulge(point(0, 0), point(at - half, 0), 0),
        // A bay into the sheet is passed clockwise.
        spanFromBulge(point(at - half, 0), point(at + half, 0), -dice.between(0.3, 1)),
        spanFromBulge(point(at + half, 0), point(WIDTH, 0), 0),
        ...polygon([
          [WIDTH, 0],
          [WIDTH, HEIGHT],
          [0, HEIGHT],
          [0, 0],
        ]).slice(0, 3),
      ];
    case 'hollow side':
    case 'bulging side':
      return [
        spanFromBulge(point(0, 0), point(WIDTH, 0), dice.between(-0.25, 0.3)),
        ...polygon([
          [WIDTH, 0],
          [WIDTH, HEIGHT],
          [0, HEIGHT],
          [0, 0],
        ]).slice(0, 3),
      ];
    default:
      return rectangle(0, 0, WIDTH, HEIGHT);
  }
}

function outline(dice: Dice): Loop {
  const x = dice.between(8, 82);
  const y = dice.between(6, 54);
  const reach = dice.between(3, 20);
  if (dice.chance(0.2)) return circle(x, y, reach);
  const count = dice.whole(3, 7);
  const first = dice.between(0, 6);
  const corners = Array.from({ length: count }, (_, i): Corner => {
    const angle = first + ((i + dice.between(-0.3, 0.3)) * 2 * Math.PI) / count;
    const far = reach * dice.between(0.35, 1);
    return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
  });
  return corners.map(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % count] ?? [ax, ay];
    const bulge = dice.chance(0.4) ? dice.between(-0.3, 0.4) : 0;
    return spanFromBulge({ x: ax, y: ay }, { x: bx, y: by }, bulge);
  });
}

function turnedLeft(corners: readonly Corner[]): Loop {
  const loop = polygon(corners);
  let double = 0;
  corners.forEach(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length] ?? [ax, ay];
    double += ax * by - ay * bx;
  });
  return double > 0 ? loop : reverseSpans(loop);
}
