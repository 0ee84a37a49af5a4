/**
 * The ladder of stages and a section beside it on the same depth axis: what each stage takes at the deepest floor, which floors end at
 * which level, and what the section leaves of the sheet.
 */

import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { ROUNDING, SAME_COUNT } from '#geometry/tolerances.ts';
import { idRuns } from '#handoff/id-runs.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { flowText } from '#handoff/pdf/flow-text.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { closed, ratio } from '#handoff/pdf/part-marks.ts';
import type { PageBox, Pen } from '#handoff/pdf/pen.ts';
import { bandLoops, metalLoops, type SectionFrame } from '#handoff/pdf/section-loops.ts';
import type { Area, Block } from '#handoff/pdf/sheet-book.ts';
import { INK, inkOn } from '#handoff/pdf/sheet-ink.ts';
import { shortened } from '#handoff/pdf/shortened.ts';
import { roundUp, twoFigures } from '#handoff/round-lengths.ts';
import { decadeOf } from '#maths/decade.ts';
import { hypot } from '#maths/hypot.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { levelFigures } from './exact-figures.ts';
import { type CutFloor, floorsAlong } from './floors-along.ts';
import type { ReviewPage } from './review-page.ts';
import { spreadApart } from './spread-apart.ts';

/** mm from the block's left edge. */
const AXIS = 14;
const COLUMN = { from: 15, to: 25 };
/** Where both faces are etched: the far one's left of the near one's, which the levels stand beside. */
const FAR_COLUMN = { from: 15, to: 22 };
const NEAR_COLUMN = { from: 24, to: 33 };
/** Of what stands right of the columns: the label's text, where it ends, and where the section begins. */
const TICK = 3;
const LABEL = 5;
const SECTION = 76;
/** That much further right for levels in two units, and for two columns. */
const FURTHER = { units: 12, columns: 6 };
/** mm above and below the axis. */
const HEAD = 6;
const NAMES = 8.5;
const SCALES = 4.5;
const METAL = '#e6e6e6';
const THIN = { width: 0.15, color: INK };
const OUTLINE = { width: 0.35, color: INK };
const GUIDE = { width: 0.1, color: '#555555', dash: [1.2, 1] } as const;

export function levelsAndSection(page: ReviewPage, axis: number): Block {
  return {
    height: HEAD + axis + NAMES + SCALES,
    draw: (pen, area) => {
      const { thickness } = page;
      const scale = twoFigures(axis / thickness);
      const y = (depth: number): number => area.top - HEAD - depth * scale;
      const { plan, figures } = page;
      const column = plan.far === undefined ? COLUMN : NEAR_COLUMN;
      const left =
        area.left +
        SECTION +
        (figures.units.length > 1 ? FURTHER.units : 0) +
        (plan.far === undefined ? 0 : FURTHER.columns);
      const ladder = { page, area, left, y };
      drawDepthAxis(pen, ladder);
      drawColumn(pen, ladder, { ...column, plan });
      if (plan.far !== undefined) drawFarColumn(pen, ladder, plan.far);
      drawLevels(pen, ladder, column.to);
      const [section] = page.sections;
      if (section !== undefined) drawSection(pen, { ...ladder, section, scale });
    },
  };
}

interface Ladder {
  readonly page: ReviewPage;
  readonly area: Area;
  /** x at which the section begins, on the page. */
  readonly left: number;
  /** Of a depth, on the page. */
  readonly y: (depth: number) => number;
}

/** mm of paper between two figures. */
const FIGURES_APART = 5;

function drawDepthAxis(pen: Pen, { page, area, y }: Ladder): void {
  const { thickness, figures } = page;
  const unit = figures.units[0] ?? 'mm';
  const inUnit = millimetresIn(unit);
  const x = area.left + AXIS - 1;
  const head = { size: TYPE.note, isBold: true };
  pen.text(`Depth, ${unit}`, { x: area.left, y: area.top - 4 }, head);
  const columns = page.plan.far === undefined ? 'Stages at the deepest floor' : 'Stages: far face, near face';
  pen.text(`${columns}; levels`, { x: area.left + COLUMN.from + 4, y: area.top - 4 }, head);
  pen.line({ x, y: y(0) }, { x, y: y(thickness) }, THIN);
  const perMetal = (y(0) - y(thickness)) / thickness;
  const step = roundUp(FIGURES_APART / perMetal / inUnit);
  const places = Math.max(0, -decadeOf(step));
  for (let count = 0; count * step * inUnit <= thickness * (1 + SAME_COUNT); count++) {
    const at = y(count * step * inUnit);
    pen.line({ x: x - 1.5, y: at }, { x, y: at }, THIN);
    pen.text((count * step).toFixed(places), { x: x - 2, y: at - 0.9 }, { size: TYPE.head, align: 'right' });
  }
}

interface Column {
  readonly from: number;
  readonly to: number;
  /** Of its face. */
  readonly plan: EtchPlan;
}

/** What the stages take of the deepest floor of this face, one below the other; metal below it. */
function drawColumn(pen: Pen, { page, area, y }: Ladder, { from, to, plan }: Column): void {
  const { thickness } = page;
  const deepest = Math.max(...plan.regions.map(({ level }) => level));
  const box = (top: number, bottom: number): PageBox => ({
    minX: area.left + from,
    maxX: area.left + to,
    minY: y(Math.min(bottom, thickness)),
    maxY: y(top),
  });
  pen.rectangle(box(0, thickness), { fill: METAL });
  let depth = 0;
  for (const { number, etch, color, level } of plan.stages) {
    if (level > deepest + ROUNDING) continue;
    drawStep(pen, { box: box(depth, depth + etch), number, color });
    depth += etch;
  }
  pen.rectangle(box(0, thickness), { stroke: OUTLINE });
}

/** The same from the far face up: both are etched in the same dips. */
function drawFarColumn(pen: Pen, ladder: Ladder, far: EtchPlan): void {
  const { page, y } = ladder;
  drawColumn(pen, { ...ladder, y: (depth) => y(page.thickness - depth) }, { ...FAR_COLUMN, plan: far });
}

interface Step {
  readonly box: PageBox;
  readonly number: number;
  readonly color: string;
}

function drawStep(pen: Pen, { box, number, color }: Step): void {
  const upright = { ...box, minY: Math.min(box.minY, box.maxY), maxY: Math.max(box.minY, box.maxY) };
  pen.rectangle(upright, { fill: color, stroke: THIN });
  drawNumber(pen, { box: upright, number, color });
}

/** mm of letters; none are smaller. */
const NUMBER = { most: 3.2, least: 1.7 };

function drawNumber(pen: Pen, { box, number, color }: Step): void {
  const size = Math.min(NUMBER.most, (box.maxY - box.minY) * 0.9);
  const style = { size, isBold: true };
  if (size < NUMBER.least || pen.textWidth(String(number), style) + 0.6 > box.maxX - box.minX) return;
  const at = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 - size * 0.36 };
  pen.text(String(number), at, { ...style, align: 'middle', color: inkOn(color) });
}

/** mm between two labels where there is room. */
const PITCH = 4;

/** At each level a tick, its depth, the stage that ends with it and the floors that have it. */
function drawLevels(pen: Pen, { page, area, left, y }: Ladder, column: number): void {
  const { plan, planFile, figures, thickness, sections } = page;
  const x = area.left + column;
  const right = sections.length === 0 ? area.right - 2 : left - 3;
  const levels = plan.stages.map(({ level }) => y(level));
  const pitch = Math.min(PITCH, (y(0) - y(thickness) + PITCH) / levels.length);
  const texts = spreadApart(levels, { pitch, low: y(thickness), high: y(0) });
  const size = Math.min(TYPE.text, pitch * 0.88);
  plan.stages.forEach(({ number, color, level }, index) => {
    const [tick, text] = [itemAt(levels, index), itemAt(texts, index)];
    pen.line({ x, y: tick }, { x: x + TICK, y: tick }, { width: 0.45, color: INK });
    pen.line({ x: x + TICK, y: tick }, { x: x + LABEL, y: text }, THIN);
    const half = Math.min(1.6, pitch * 0.45);
    const swatch = { minX: x + LABEL, maxX: x + LABEL + 4.4, minY: text - half, maxY: text + half };
    drawStep(pen, { box: swatch, number, color });
    const at = { x: x + LABEL + 5.4, y: text - size * 0.36 };
    const [first, second] = levelFigures(figures, level);
    pen.text(first, at, { size, isBold: true });
    let next = at.x + pen.textWidth(first, { size, isBold: true }) + 1;
    if (second !== undefined) {
      pen.text(`(${second})`, { x: next, y: at.y }, { size });
      next += pen.textWidth(`(${second})`, { size }) + 1;
    }
    const ids = planFile.stages.find((each) => each.number === number)?.regions ?? [];
    const floors = floorWords(pen, ids, { width: right - next - 1, size });
    pen.text(floors.text, { x: next, y: at.y }, floors);
    if (sections.length > 0) {
      const from = next + pen.textWidth(floors.text, floors) + 1;
      if (from < right - 2) pen.line({ x: from, y: text }, { x: right - 2, y: text }, GUIDE);
      pen.line({ x: right - 2, y: text }, { x: right + 1, y: tick }, GUIDE);
    }
  });
}

/** More have no room beside a level: laying out letters costs. */
const MOST_LETTERS = 60;

function floorWords(
  pen: Pen,
  ids: readonly string[],
  { width, size }: { readonly width: number; readonly size: number },
): { readonly text: string; readonly size: number } {
  const text = idRuns(ids);
  const fitting =
    text.length > MOST_LETTERS
      ? undefined
      : [size, size * 0.85, size * 0.72].find((each) => pen.textWidth(text, { size: each }) <= width);
  if (fitting !== undefined) return { text, size: fitting };
  return { text: shortened(pen, `${ids.length} floors`, { width, size }), size };
}

interface SectionDrawn extends Ladder {
  readonly section: NamedSection;
  /** mm of paper to one of depth. */
  readonly scale: number;
}

function drawSection(pen: Pen, drawn: SectionDrawn): void {
  const { page, area, left, y, section, scale } = drawn;
  const { plan, thickness } = page;
  const { from, to } = section;
  const length = hypot(to.x - from.x, to.y - from.y);
  const width = area.right - left - 1;
  // No longer than deep: a short cut keeps its shape.
  const along = Math.min(width / length, scale);
  const place = (distance: number, depth: number): Point => ({ x: left + distance * along, y: y(depth) });
  const frame: SectionFrame = { thickness, place };
  const short = section.name.length > 12 ? `${section.name.slice(0, 11)}…` : section.name;
  const others = page.sections.length - 1;
  const more = others === 0 ? '' : `; ${others} more on a later page`;
  const title = `Section ${short}–${short}: metal each stage takes${more}`;
  const head = { size: TYPE.note, isBold: true };
  pen.text(shortened(pen, title, { ...head, width: width + 2 }), { x: left, y: area.top - 4 }, head);
  const metal = metalLoops(section.points, frame).map(closed);
  pen.paths(metal, { fill: METAL });
  const end = boxOfSpans(metal.flatMap(({ spans }) => spans)).maxX;
  for (const { level } of plan.stages) {
    pen.line({ x: left - 2, y: y(level) }, { x: end, y: y(level) }, GUIDE);
  }
  plan.stages.forEach(({ number, color }, index) => {
    for (const { loop, numbers } of bandLoops(section.points, index, frame)) {
      pen.paths([closed(loop)], { fill: color, stroke: THIN });
      for (const box of numbers) drawNumber(pen, { box, number, color });
    }
  });
  pen.paths(metal, { stroke: OUTLINE });
  const unnamed = nameFloors(pen, drawn, along);
  const heights = scale / along;
  const scales =
    heights < 1.005
      ? `Lengths and depths ${ratio(scale)}`
      : `Lengths ${ratio(along)}, depths ${ratio(scale)}: heights ${Number(heights.toPrecision(2))} times larger`;
  const said = unnamed === 0 ? scales : `${scales}; ${unnamed} too narrow to name`;
  flowText(pen, said, { width: width + 1, size: TYPE.head }).draw(pen, { x: left, y: y(thickness) - NAMES });
}

/** Below the section, the widest first where they would meet: how many are named nowhere along it. */
function nameFloors(pen: Pen, { page, area, left, y, section }: SectionDrawn, along: number): number {
  const base = y(page.thickness) - 3.6;
  const taken: { readonly from: number; readonly to: number }[] = [];
  const [named, unnamed] = [new Set<string>(), new Set<string>()];
  const width = ({ from, to }: CutFloor) => to - from;
  for (const floor of floorsAlong(section, page.plan).sort((a, b) => width(b) - width(a))) {
    const leaves =
      floor.leaves > 0 ? `leaves ${levelFigures(page.figures, floor.leaves)[0]}` : 'nothing left';
    const [name, below] = [{ size: TYPE.note, isBold: true }, { size: TYPE.label }];
    const half = Math.max(pen.textWidth(floor.name, name), pen.textWidth(leaves, below)) / 2 + 0.8;
    const x = Math.max(left + half, left + ((floor.from + floor.to) / 2) * along);
    if (x + half > area.right || taken.some(({ from, to }) => x + half > from && x - half < to)) {
      unnamed.add(floor.name);
      continue;
    }
    named.add(floor.name);
    taken.push({ from: x - half, to: x + half });
    pen.text(floor.name, { x, y: base }, { ...name, align: 'middle' });
    pen.text(leaves, { x, y: base - 3.2 }, { ...below, align: 'middle' });
  }
  return [...unnamed].filter((name) => !named.has(name)).length;
}
