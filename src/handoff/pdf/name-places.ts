/**
 * Where names stand on a picture of the part: inside their own area, clear of its borders, of lines drawn across it and of each other;
 * each as large as its area has room for. Cost: areas times places times the borders of the area.
 */
import { type Box, boxesMeet, boxOfSpans, growBox } from '#geometry/box.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import { type Loop, lineSpan, type Span } from '#geometry/span.ts';
import { spanGap } from '#geometry/spans/span-gap.ts';
import type { Pen } from './pen.ts';
import { inkOn } from './sheet-ink.ts';

/** Lines of a name, the first in bold: `R01` over `0.80`. */
export interface NameAsked {
  readonly lines: readonly string[];
  /** Of its area, on the page. */
  readonly loops: readonly Loop[];
  /** Where it stands best. */
  readonly at: Point;
}

export interface NamePlace {
  readonly lines: readonly string[];
  readonly middle: Point;
  readonly size: number;
  readonly box: Box;
}

/** What names give way to. */
export interface NameGround {
  /** Drawn across the areas; a name covers them where it has no room beside them. */
  readonly lines: readonly Span[];
  /** Small marks, which a name stands on where there is no other place. */
  readonly marks: readonly Box[];
  readonly taken: Box[];
}

/** mm of letters; smaller ones are not read. */
const SMALLEST = 1.8;
const SIZES = [3.2, 2.8, 2.4, 2.1, SMALLEST];
/** mm from the borders. */
const CLEAR = 0.6;
/** mm between two names, and from a line across. */
const APART = 0.4;
/** Places tried either way. */
const ACROSS = 9;
const STEP = 1.25;

/** All of its lines, or else the first alone; undefined where even that has no room. What it takes is added to the ground. */
export function placeName(pen: Pen, name: NameAsked, ground: NameGround): NamePlace | undefined {
  const spans = name.loops.flat();
  const area = boxOfSpans(spans);
  if (!hasRoom(area, halfSize(pen, name.lines.slice(0, 1), SMALLEST))) return undefined;
  const middles = placesIn(area, name.at);
  const marks = ground.marks.filter((mark) => boxesMeet(mark, area));
  const [only] = name.lines;
  const tries = [
    { lines: name.lines, shunned: marks, isCovering: false },
    { lines: name.lines, shunned: marks, isCovering: true },
    { lines: name.lines, shunned: [], isCovering: true },
    { lines: [only ?? ''], shunned: marks, isCovering: true },
    { lines: [only ?? ''], shunned: [], isCovering: true },
  ].flatMap((each) => SIZES.map((size) => ({ ...each, size })));
  for (const { lines, shunned, isCovering, size } of tries) {
    const [halfX, halfY] = halfSize(pen, lines, size);
    if (!hasRoom(area, [halfX, halfY])) continue;
    const boxAt = ({ x, y }: Point): Box => ({
      minX: x - halfX,
      maxX: x + halfX,
      minY: y - halfY,
      maxY: y + halfY,
    });
    const middle = middles.find((place) => {
      const box = boxAt(place);
      return (
        shunned.every((mark) => !boxesMeet(mark, box)) &&
        isFree(box, isCovering ? { ...ground, lines: [] } : ground) &&
        isWithin(box, { loops: name.loops, spans, clear: CLEAR })
      );
    });
    if (middle === undefined) continue;
    ground.taken.push(boxAt(middle));
    return { lines, middle, size, box: boxAt(middle) };
  }
  return undefined;
}

function hasRoom({ minX, minY, maxX, maxY }: Box, [halfX, halfY]: readonly [number, number]): boolean {
  return 2 * halfX <= maxX - minX && 2 * halfY <= maxY - minY;
}

/** On the ground of its area, which covers what is drawn across it. */
export function drawName(pen: Pen, { lines, middle, size, box }: NamePlace, ground: string): void {
  pen.rectangle(box, { fill: ground });
  const color = inkOn(ground);
  const first = middle.y + ((lines.length - 1) * size * STEP) / 2 - size * 0.36;
  lines.forEach((line, index) => {
    const at = { x: middle.x, y: first - index * size * STEP };
    pen.text(line, at, { size, isBold: index === 0, align: 'middle', color });
  });
}

function halfSize(pen: Pen, lines: readonly string[], size: number): [number, number] {
  const widths = lines.map((line, index) => pen.textWidth(line, { size, isBold: index === 0 }));
  return [Math.max(...widths) / 2, (size * (0.76 + (lines.length - 1) * STEP)) / 2];
}

/** An even grid over the area's box, nearest to the best place first. */
function placesIn({ minX, maxX, minY, maxY }: Box, best: Point): Point[] {
  const places = [best];
  for (let row = 1; row < 2 * ACROSS; row++) {
    for (let column = 1; column < ACROSS; column++) {
      places.push({
        x: minX + ((maxX - minX) * column) / ACROSS,
        y: minY + ((maxY - minY) * row) / (2 * ACROSS),
      });
    }
  }
  return places.sort((a, b) => distance(a, best) - distance(b, best));
}

function isFree(box: Box, { lines, taken }: NameGround): boolean {
  const around = growBox(box, APART);
  const sides = sidesOf(around);
  return (
    taken.every((other) => !boxesMeet(other, around)) &&
    lines.every((line) => !isIn(around, line.start) && sides.every((side) => spanGap(line, side) > 0))
  );
}

interface Walls {
  readonly loops: readonly Loop[];
  readonly spans: readonly Span[];
  readonly clear: number;
}

function isWithin(box: Box, { loops, spans, clear }: Walls): boolean {
  const sides = sidesOf(box);
  const around = growBox(box, clear);
  return (
    sides.every(({ start }) => isInsideLoops(loops, start)) &&
    spans.every(
      (span) =>
        !boxesMeet(boxOfSpans([span]), around) ||
        (!isIn(box, span.start) && sides.every((side) => spanGap(span, side) >= clear)),
    )
  );
}

function isIn({ minX, maxX, minY, maxY }: Box, { x, y }: Point): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}

function sidesOf({ minX, maxX, minY, maxY }: Box): Span[] {
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  return corners.map((corner, index) => lineSpan(corner, corners[(index + 1) % 4] ?? corner));
}
