/** Where a taper along the section line begins and ends: on the part or what is picked, and not where the line's handles stand off it. mm on the sheet. */
import { cutFrame, extentAlong } from '#geometry/loops/cut-across.ts';
import { dot, type Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import type { SectionLine } from './workbench-state.ts';

/** From where the line, however far it was drawn, first meets one of the borders to where it last leaves one; undefined where it misses all. */
export function lineAcross(borders: readonly Contour[], line: SectionLine): SectionLine | undefined {
  const along = unitWay(line);
  const places = meetings(
    borders.map((border) => pathOfContour(border).spans),
    line,
  );
  if (places.length === 0) return undefined;
  const begin = dot(line.from, along);
  return stretchOf(line, Math.min(...places) - begin, Math.max(...places) - begin);
}

type Outlined = Pick<ShownPlan, 'outline'>;

/** From where the line first meets the part to where it leaves it; an end that lies inside stays. The line itself where it misses, or no outline is known. */
export function lineOnPart({ outline }: Outlined, { from, to }: SectionLine): SectionLine {
  if (outline === null) return { from, to };
  const along = unitWay({ from, to });
  const places = meetings(loopsOf(outline), { from, to });
  const [begin, end] = [dot(from, along), dot(to, along)];
  const [first, last] = [Math.max(begin, Math.min(...places)), Math.min(end, Math.max(...places))];
  return first < last ? stretchOf({ from, to }, first - begin, last - begin) : { from, to };
}

/** The whole of the part along the line's direction, `past` further at both ends: nothing of it lies beyond. */
export function lineAlongPart({ outline }: Outlined, line: SectionLine, past: number): SectionLine {
  if (outline === null) return line;
  const along = unitWay(line);
  const extent = extentAlong(loopsOf(outline), along);
  const begin = dot(line.from, along);
  return stretchOf(line, extent.from - past - begin, extent.to + past - begin);
}

/** Where the line, however far it was drawn, meets the loops: distances along it from the origin of the plane. */
function meetings(loops: readonly Loop[], line: SectionLine): readonly number[] {
  const along = unitWay(line);
  const across = { x: -along.y, y: along.x };
  const cuts = cutFrame(loops, across).cutsAt(dot(line.from, across));
  return cuts.flatMap(({ start, end }) => [dot(start, along), dot(end, along)]);
}

function loopsOf(outline: NonNullable<Outlined['outline']>): readonly Loop[] {
  return [pathOfContour(outline).spans];
}

/** Between two distances from its start. */
function stretchOf(line: SectionLine, first: number, last: number): SectionLine {
  const { from } = line;
  const { x, y } = unitWay(line);
  return {
    from: { x: from.x + x * first, y: from.y + y * first },
    to: { x: from.x + x * last, y: from.y + y * last },
  };
}

function unitWay({ from, to }: SectionLine): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
