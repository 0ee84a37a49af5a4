/**
 * A section on paper: metal that stays filled, what each stage took hatched and tinted as on the overview and numbered, what was
 * asked dashed. As wide as the page; heights are drawn larger by a round factor, which is stated.
 */

import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan } from '#geometry/span.ts';
import { fitSection, type SectionFit } from '#handoff/fit-section.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import {
  type BandPoint,
  bandsOf,
  leftRuns,
  levelStretches,
  metalRuns,
  type SectionPoints,
  shownFronts,
} from '#handoff/section-shapes.ts';
import { decadeOf, powerOfTen } from '#maths/decade.ts';
import { hypot } from '#maths/hypot.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { closed, ratio } from './part-marks.ts';
import type { Pen } from './pen.ts';
import { areaEntry, lineEntry, pictureKey } from './picture-key.ts';
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
      for (const run of metalRuns(section.points)) drawRun(pen, run, metal, place);
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

type Place = (distance: number, depth: number) => Point;

function drawRun(pen: Pen, run: SectionPoints, { thickness, stages }: SectionMetal, place: Place): void {
  const pieces = leftRuns(run).map((left) => {
    const fronts = left.map((point) => ({ distance: point.distance, ...shownFronts(point) }));
    const surface = fronts.map(({ distance, near }) => place(distance, Math.min(near.depth, thickness)));
    const farFace = fronts.map(({ distance, far }) => place(distance, Math.min(far.depth, thickness)));
    return closed(polygon([...surface, ...farFace.reverse()]));
  });
  pen.paths(pieces, { fill: METAL });
  stages.forEach((stage, index) => {
    for (const band of bandsOf(run, index)) {
      const above = band.map(({ distance, top }) => place(distance, Math.min(top, thickness)));
      const below = band.map(({ distance, bottom }) => place(distance, Math.min(bottom, thickness)));
      const loop = polygon([...above, ...below.reverse()]);
      pen.paths([closed(loop)], { fill: tint(stage.color) });
      hatch(pen, [loop], stageHatch(stage.number));
      pen.paths([closed(loop)], { stroke: THIN });
      nameBand(pen, String(stage.number), band, place);
    }
  });
  pen.paths(pieces, { stroke: SURFACE });
}

function polygon(points: readonly Point[]): Loop {
  return points.flatMap((point, index) => {
    const next = itemAt(points, (index + 1) % points.length);
    return point.x === next.x && point.y === next.y ? [] : [lineSpan(point, next)];
  });
}

/** mm of paper: a number needs this much. */
const NUMBER = { width: 3.4, height: 3.2 };

/** mm of metal by which a floor may rise and fall under one number. */
const LEVEL = 0.01;

/** The stage's number amid each level stretch of the band that has room for it. */
function nameBand(pen: Pen, text: string, band: readonly BandPoint[], place: Place): void {
  for (const [from, to] of levelStretches(band, LEVEL)) {
    const [a, b] = [place(from.distance, from.top), place(to.distance, from.bottom)];
    if (b.x - a.x < NUMBER.width || a.y - b.y < NUMBER.height) continue;
    const [x, y] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
    const half = pen.textWidth(text, { size: 2.8, isBold: true }) / 2 + 0.5;
    pen.rectangle({ minX: x - half, maxX: x + half, minY: y - 1.5, maxY: y + 1.5 }, { fill: '#ffffff' });
    pen.text(text, { x, y: y - 1 }, { size: 2.8, isBold: true, align: 'middle' });
  }
}

function drawAsked(pen: Pen, asked: NamedSection['asked'], place: Place): void {
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

function drawFarAsked(pen: Pen, run: SectionPoints, place: Place): void {
  const line = run.flatMap(({ distance, far }) =>
    far?.target === undefined ? [] : [place(distance, far.sheet - far.target)],
  );
  line.slice(1).forEach((to, index) => {
    pen.line(itemAt(line, index), to, ASKED);
  });
}

interface Axes {
  readonly metal: SectionMetal;
  readonly place: Place;
  readonly area: Area;
}

/** mm of paper between two figures of the depth axis. */
const LINE = 3;

/** Depths of surface, floors and far face at the left; distances below. */
function drawAxes(pen: Pen, { name, from, to }: NamedSection, { metal, place, area }: Axes): void {
  const length = hypot(to.x - from.x, to.y - from.y);
  const far = place(length, metal.thickness);
  const depths = [0, metal.thickness, ...metal.stages.map(({ level }) => level)];
  const written: number[] = [];
  for (const depth of depths) {
    const { x, y } = place(0, depth);
    if (written.some((other) => Math.abs(other - y) < LINE)) continue;
    written.push(y);
    pen.line({ x: x - 2.5, y }, { x: x - 0.8, y }, THIN);
    pen.text(depth.toFixed(3), { x: x - 3.2, y: y - 0.9 }, { size: 2.5, align: 'right' });
  }
  for (const [index, x] of [place(0, 0).x, far.x].entries()) {
    const short = name.length > 20 ? `${name.slice(0, 19)}…` : name;
    const align = index === 0 ? 'left' : 'right';
    pen.text(short, { x, y: area.top - 3.6 }, { size: 3.6, isBold: true, align });
  }
  const step = roundUp(length / 10);
  for (let distance = 0; distance <= length * (1 + 1e-9); distance += step) {
    const { x } = place(distance, metal.thickness);
    pen.line({ x, y: far.y - 0.8 }, { x, y: far.y - 2 }, THIN);
    const text = String(Number(distance.toPrecision(6)));
    pen.text(text, { x, y: far.y - 4.8 }, { size: 2.5, align: 'middle' });
  }
}

/** 1, 2 or 5 times a power of ten, not below. */
function roundUp(length: number): number {
  const decade = powerOfTen(decadeOf(length));
  const step = [1, 2, 5, 10].find((each) => each * decade >= length) ?? 10;
  return Number((step * decade).toPrecision(1));
}

export function sectionKey({ stages }: SectionMetal, width: number): Block {
  return pictureKey(
    [
      areaEntry('metal that stays', { fill: METAL }),
      ...stages.map(({ number, color }) =>
        areaEntry(`taken in stage ${number}`, { fill: tint(color), style: stageHatch(number) }),
      ),
      lineEntry('asked', undefined, ASKED),
    ],
    width,
  );
}
