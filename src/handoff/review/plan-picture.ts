/**
 * The whole part at once: every floor in the colour of the stage that bares it, with its name and level, every scribe line with its
 * mark, floors of the far face dashed, and where the sections are cut.
 */
import { type Box, boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { lineSpan } from '#geometry/span.ts';
import { drawName, type NameGround, placeName } from '#handoff/pdf/name-places.ts';
import { type PictureRoom, type Placed, partFrame } from '#handoff/pdf/part-frame.ts';
import { closed, drawLines, drawScaleBar, markTicks, SCALE_BAR } from '#handoff/pdf/part-marks.ts';
import type { PageBox, Pen, Stroke } from '#handoff/pdf/pen.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import { hypot } from '#maths/hypot.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { levelFigures } from './exact-figures.ts';
import type { ReviewPage } from './review-page.ts';

/** mm kept free around the part: section lines reach out of it, and their letters stand there. */
const ASIDE = 9;
const ABOVE = 2.5;
const REACH = 3;
const METAL = '#f1f1f1';
const BORDER: Stroke = { width: 0.3, color: INK };
const SCRIBED: Stroke = { width: 0.2, color: INK };
const FAR: Stroke = { width: 0.3, color: INK, dash: [1.6, 0.9] };
/** A chain line marks a cutting plane (ISO 128-3). */
const CUT: Stroke = { width: 0.3, color: INK, dash: [6, 1.2] };
const LETTER = { size: 3.6, isBold: true } as const;

type PicturePage = Pick<ReviewPage, 'plan' | 'sections' | 'figures' | 'width'>;

/** mm that the picture takes of the page where nothing keeps it lower. */
export function planPictureHeight({ plan, width }: PicturePage, most: number): number {
  return pictureFrame({ plan, width }, most).height + 2 * ABOVE + SCALE_BAR;
}

export function planPicture(page: PicturePage, height: number): Block {
  const { plan, width } = page;
  const frame = pictureFrame({ plan, width }, height);
  const whole = frame.height + 2 * ABOVE + SCALE_BAR;
  return {
    height: whole,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left: left + ASIDE, right, top: top - ABOVE });
      pen.paths(plan.sheet.map(placed.loop).map(closed), {
        fill: METAL,
        stroke: { width: 0.5, color: INK },
      });
      drawFloors(pen, plan, placed);
      drawFarFloors(pen, plan, placed);
      for (const stage of plan.stages) drawLines(pen, stage, placed, SCRIBED);
      const box = { minX: left, maxX: right, minY: top - whole + SCALE_BAR, maxY: top };
      const taken: Box[] = [];
      const lines = drawCuts(pen, page.sections, { placed, box, taken });
      const unnamed = nameFloors(pen, page, placed, { lines, marks: ticksOf(plan, placed), taken });
      drawScaleBar(pen, { left, top: top - whole + SCALE_BAR }, frame.scale, page.figures.units[0]);
      const said =
        unnamed === 0 ? '' : `${unnamed} ${unnamed === 1 ? 'floor is' : 'floors are'} too small to name here`;
      pen.text(said, { x: right, y: top - whole + SCALE_BAR - 4.1 }, { size: 2.6, align: 'right' });
    },
  };
}

function pictureFrame({ plan, width }: Pick<PicturePage, 'plan' | 'width'>, height: number) {
  const room: PictureRoom = { width: width - 2 * ASIDE, height: height - 2 * ABOVE - SCALE_BAR };
  return partFrame(plan, room);
}

function drawFloors(pen: Pen, { stages, regions }: EtchPlan, placed: Placed): void {
  for (const { regions: ids, color } of stages) {
    const own = new Set(ids);
    const loops = regions.filter(({ id }) => own.has(id)).flatMap((region) => region.loops.map(placed.loop));
    pen.paths(loops.map(closed), { fill: color, stroke: BORDER });
  }
}

function drawFarFloors(pen: Pen, { far }: EtchPlan, placed: Placed): void {
  const loops = etched(far).flatMap((region) => region.loops.map(placed.loop));
  pen.paths(loops.map(closed), { stroke: FAR });
}

function etched(plan: EtchPlan | undefined): readonly PlannedRegion[] {
  return plan?.regions.filter(({ level }) => level > 0) ?? [];
}

function ticksOf({ stages }: EtchPlan, placed: Placed): Box[] {
  return stages.flatMap(({ number, lines }) => {
    const paths = lines.map((line) => ({ ...line, spans: placed.loop(line.spans) }));
    return markTicks(paths, number).map((ends) => boxOfPoints(ends));
  });
}

/** How many floors have no room for a name. */
function nameFloors(pen: Pen, { plan, figures }: PicturePage, placed: Placed, ground: NameGround): number {
  const colorOf = new Map(plan.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])));
  const sides = [
    ...etched(plan).map((region) => ({ region, color: colorOf.get(region.id) ?? METAL })),
    // On what the near face shows.
    ...etched(plan.far).map((region) => ({ region, color: '#ffffff' })),
  ];
  let unnamed = 0;
  for (const { region, color } of sides) {
    const { id, level, label } = region;
    const loops = region.loops.map(placed.loop);
    const lines = [id, levelFigures(figures, level)[0]];
    const place = placeName(pen, { lines, loops, at: placed.place(label) }, ground);
    if (place === undefined) unnamed++;
    else drawName(pen, place, color);
  }
  return unnamed;
}

interface Cuts {
  readonly placed: Placed;
  readonly box: PageBox;
  readonly taken: Box[];
}

/** Section lines, a little longer than they are cut where there is room, with a letter at either end. */
function drawCuts(pen: Pen, sections: PicturePage['sections'], { placed, box, taken }: Cuts) {
  return sections.flatMap(({ name, from, to }) => {
    const [a, b] = [placed.place(from), placed.place(to)];
    const length = hypot(b.x - a.x, b.y - a.y);
    const [dx, dy] = length === 0 ? [0, 0] : [((b.x - a.x) / length) * REACH, ((b.y - a.y) / length) * REACH];
    const outer = { from: { x: a.x - dx, y: a.y - dy }, to: { x: b.x + dx, y: b.y + dy } };
    const ends = clipped(outer, {
      minX: box.minX + 4,
      maxX: box.maxX - 4,
      minY: box.minY + 2,
      maxY: box.maxY - 2,
    });
    if (ends === undefined) return [];
    pen.line(ends.from, ends.to, CUT);
    drawLetter(pen, name, { at: { x: ends.from.x - dx / 2, y: ends.from.y - dy / 2 }, taken });
    drawLetter(pen, name, { at: { x: ends.to.x + dx / 2, y: ends.to.y + dy / 2 }, taken });
    return [lineSpan(ends.from, ends.to)];
  });
}

interface Ends {
  readonly from: Point;
  readonly to: Point;
}

/** The stretch of a straight line inside a box (Liang and Barsky, 1984): a section may begin far outside the part. */
function clipped({ from, to }: Ends, box: PageBox): Ends | undefined {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [start, end] = [0, 1];
  for (const [step, room] of [
    [-dx, from.x - box.minX],
    [dx, box.maxX - from.x],
    [-dy, from.y - box.minY],
    [dy, box.maxY - from.y],
  ] as const) {
    if (step === 0 && room < 0) return undefined;
    if (step < 0) start = Math.max(start, room / step);
    if (step > 0) end = Math.min(end, room / step);
  }
  if (start > end) return undefined;
  const at = (share: number) => ({ x: from.x + dx * share, y: from.y + dy * share });
  return { from: at(start), to: at(end) };
}

function drawLetter(
  pen: Pen,
  name: string,
  { at: { x, y }, taken }: { readonly at: Point; readonly taken: Box[] },
): void {
  const short = name.length > 12 ? `${name.slice(0, 11)}…` : name;
  const half = pen.textWidth(short, LETTER) / 2 + 0.6;
  const box = { minX: x - half, maxX: x + half, minY: y - 2, maxY: y + 2 };
  taken.push(box);
  pen.rectangle(box, { fill: '#ffffff' });
  pen.text(short, { x, y: y - 1.3 }, { ...LETTER, align: 'middle' });
}
