/**
 * A section on paper: metal that stays filled, what each stage took hatched and tinted as on the overview and numbered, what was
 * asked dashed. As wide as the page; heights are drawn larger by a round factor, which is stated.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { fitSection, type SectionFit } from '#handoff/fit-section.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { roundUp } from '#handoff/round-lengths.ts';
import { metalRuns, type SectionPoints } from '#handoff/section-shapes.ts';
import { hypot } from '#maths/hypot.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { closed, ratio } from './part-marks.ts';
import type { PageBox, Pen } from './pen.ts';
import { areaEntry, lineEntry, pictureKey } from './picture-key.ts';
import { bandLoops, metalLoops, type SectionPlace } from './section-loops.ts';
import type { Area, Block } from './sheet-book.ts';
import { hatch, INK, METAL, stageHatch, tint } from './sheet-ink.ts';

/** mm */
const AXIS = 16;
const ABOVE = 6;
const BELOW = 9;
const SURFACE = { width: 0.3, color: INK };
const ASKED = { width: 0.3, color: INK, dash: [2, 1] } as const;
const THIN = { width: 0.15, color: INK };

export interface SectionRoom {
  readonly width: number;
  /** That the sheet's thickness may take. */
  readonly height: number;
}

export interface SectionMetal {
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
  readonly stages: readonly Stage[];
  /** In which the axes are; mm where it is left out. */
  readonly unit?: 'mm' | 'in' | undefined;
}

/** In mm of paper. */
interface Scale extends SectionFit {
  readonly height: number;
}

export function sectionPicture(section: NamedSection, metal: SectionMetal, room: SectionRoom): Block {
  const scale = sectionScale(section, metal, room);
  return {
    height: ABOVE + scale.height + BELOW,
    draw: (pen, area) => {
      const origin = { x: area.left + AXIS, y: area.top - ABOVE };
      const place = (distance: number, depth: number): Point => ({
        x: origin.x + distance * scale.along,
        y: origin.y - depth * scale.along * scale.exaggeration,
      });
      drawMetal(pen, section, metal, place);
      drawAsked(pen, section.asked, place);
      for (const run of metalRuns(section.points)) drawFarAsked(pen, run, place);
      drawAxes(pen, section, { metal, place, area });
    },
  };
}

/** The note on scale above the picture. */
export function saidScale(section: NamedSection, metal: SectionMetal, room: SectionRoom): string {
  const { along, exaggeration } = sectionScale(section, metal, room);
  const heights = exaggeration === 1 ? 'heights to the same scale' : `heights ${exaggeration} times larger`;
  return `lengths ${ratio(along)}, ${heights}`;
}

function sectionScale({ from, to }: NamedSection, { thickness }: SectionMetal, room: SectionRoom): Scale {
  const length = hypot(to.x - from.x, to.y - from.y);
  const fit = fitSection({ length, thickness, width: room.width - AXIS - 4, height: room.height });
  return { ...fit, height: thickness * fit.along * fit.exaggeration };
}

function drawMetal(
  pen: Pen,
  { points }: NamedSection,
  { thickness, stages }: SectionMetal,
  place: SectionPlace,
): void {
  const frame = { thickness, place };
  const pieces = metalLoops(points, frame).map(closed);
  pen.paths(pieces, { fill: METAL });
  stages.forEach((stage, index) => {
    for (const { loop, numbers } of bandLoops(points, index, frame)) {
      pen.paths([closed(loop)], { fill: tint(stage.color) });
      hatch(pen, [loop], stageHatch(stage.number));
      pen.paths([closed(loop)], { stroke: THIN });
      for (const room of numbers) nameBand(pen, String(stage.number), room);
    }
  });
  pen.paths(pieces, { stroke: SURFACE });
}

/** mm of paper: a number needs this much. */
const NUMBER = { width: 3.4, height: 3.2 };

/** The stage's number in the middle of a level stretch of its band, where it has room. */
function nameBand(pen: Pen, text: string, { minX, maxX, minY, maxY }: PageBox): void {
  if (maxX - minX < NUMBER.width || maxY - minY < NUMBER.height) return;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const half = pen.textWidth(text, { size: 2.8, isBold: true }) / 2 + 0.5;
  pen.rectangle({ minX: x - half, maxX: x + half, minY: y - 1.5, maxY: y + 1.5 }, { fill: '#ffffff' });
  pen.text(text, { x, y: y - 1 }, { size: 2.8, isBold: true, align: 'middle' });
}

function drawAsked(pen: Pen, asked: NamedSection['asked'], place: SectionPlace): void {
  let before: Point | undefined;
  for (const { start, end, depth } of asked) {
    if (depth === undefined) {
      before = undefined;
      continue;
    }
    const [from, to] = [place(start, depth.start), place(end, depth.end)];
    if (before !== undefined && before.y !== from.y) pen.line(before, from, ASKED);
    pen.line(from, to, ASKED);
    before = to;
  }
}

function drawFarAsked(pen: Pen, run: SectionPoints, place: SectionPlace): void {
  const line = run.flatMap(({ distance, far }) =>
    far?.target === undefined ? [] : [place(distance, far.sheet - far.target)],
  );
  line.slice(1).forEach((to, index) => {
    pen.line(itemAt(line, index), to, ASKED);
  });
}

interface Axes {
  readonly metal: SectionMetal;
  readonly place: SectionPlace;
  readonly area: Area;
}

/** mm of paper between two figures of the depth axis. */
const LINE = 3;

/** Depths of surface, floors and far face at the left; distances below. */
function drawAxes(pen: Pen, { name, from, to }: NamedSection, { metal, place, area }: Axes): void {
  const length = hypot(to.x - from.x, to.y - from.y);
  const { unit = 'mm' } = metal;
  const inUnit = millimetresIn(unit);
  const far = place(length, metal.thickness);
  const depths = [0, metal.thickness, ...metal.stages.map(({ level }) => level)];
  const written: number[] = [];
  for (const depth of depths) {
    const { x, y } = place(0, depth);
    if (written.some((other) => Math.abs(other - y) < LINE)) continue;
    written.push(y);
    pen.line({ x: x - 2.5, y }, { x: x - 0.8, y }, THIN);
    pen.text(
      (depth / inUnit).toFixed(unit === 'mm' ? 3 : 4),
      { x: x - 3.2, y: y - 0.9 },
      { size: 2.5, align: 'right' },
    );
  }
  for (const [index, x] of [place(0, 0).x, far.x].entries()) {
    const short = name.length > 20 ? `${name.slice(0, 19)}…` : name;
    const align = index === 0 ? 'left' : 'right';
    pen.text(short, { x, y: area.top - 3.6 }, { size: 3.6, isBold: true, align });
  }
  const step = roundUp(length / inUnit / 10);
  for (let distance = 0; distance * inUnit <= length * (1 + SAME_COUNT); distance += step) {
    const { x } = place(distance * inUnit, metal.thickness);
    pen.line({ x, y: far.y - 0.8 }, { x, y: far.y - 2 }, THIN);
    const text = String(Number(distance.toPrecision(6)));
    pen.text(text, { x, y: far.y - 4.8 }, { size: 2.5, align: 'middle' });
  }
}

export function sectionKey({ stages }: SectionMetal, width: number): Block {
  return pictureKey(
    [
      areaEntry('metal that stays', { fill: METAL }),
      ...stages.map(({ number, color }) =>
        areaEntry(`taken in stage ${number}`, { fill: tint(color), style: stageHatch(number) }),
      ),
      lineEntry('required', undefined, ASKED),
    ],
    width,
  );
}
