/**
 * The whole part at once: every floor hatched and tinted by the stage that bares it, every scribe line with its mark, and where
 * the sections are cut.
 */
import type { Point } from '#geometry/point.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type PictureRoom, partFrame } from './part-frame.ts';
import { closed, drawLines, drawScaleBar, nameRegions, SCALE_BAR } from './part-marks.ts';
import type { PageBox, Pen, Stroke } from './pen.ts';
import { areaEntry, lineEntry, pictureKey } from './picture-key.ts';
import type { Block } from './sheet-book.ts';
import { hatch, INK, stageHatch, tint } from './sheet-ink.ts';

/** mm kept free around the part for letters of sections that begin outside. */
const AROUND = 5;
const SCRIBED: Stroke = { width: 0.35, color: INK };
const DRAWN: Stroke = { width: 0.12, color: INK, dash: [0.8, 0.6] };
/** A chain line marks a cutting plane (ISO 128-3). */
const CUT: Stroke = { width: 0.3, color: INK, dash: [7, 1.5] };

export function overviewPicture(
  plan: EtchPlan,
  sections: readonly Pick<NamedSection, 'name' | 'from' | 'to'>[],
  room: PictureRoom,
): Block {
  const frame = partFrame(plan, { ...room, width: room.width - 2 * AROUND });
  return {
    height: frame.height + 2 * AROUND + SCALE_BAR,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left: left + AROUND, right, top: top - AROUND });
      for (const { regions, number, color } of plan.stages) {
        const loops = plan.regions
          .filter(({ id }) => regions.includes(id))
          .flatMap((region) => region.loops.map(placed.loop));
        pen.paths(loops.map(closed), { fill: tint(color) });
        hatch(pen, loops, stageHatch(number));
        pen.paths(loops.map(closed), { stroke: DRAWN });
      }
      pen.paths(plan.sheet.map(placed.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      for (const stage of plan.stages) drawLines(pen, stage, placed, SCRIBED);
      const box = {
        minX: left + 2,
        maxX: right - 2,
        minY: top - frame.height - 2 * AROUND + 2,
        maxY: top - 2,
      };
      for (const { name, from, to } of sections) {
        const ends = clipped({ from: placed.place(from), to: placed.place(to) }, box);
        if (ends === undefined) continue;
        pen.line(ends.from, ends.to, CUT);
        letter(pen, name, ends.from);
        letter(pen, name, ends.to);
      }
      nameRegions(pen, plan, {
        ids: new Set(plan.stages.flatMap(({ regions }) => regions)),
        scale: frame.scale,
        placed,
      });
      drawScaleBar(pen, { left, top: top - frame.height - 2 * AROUND }, frame.scale);
    },
  };
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

function letter(pen: Pen, name: string, { x, y }: Point): void {
  const short = name.length > 12 ? `${name.slice(0, 11)}…` : name;
  const half = pen.textWidth(short, { size: 3.6, isBold: true }) / 2 + 0.6;
  pen.rectangle({ minX: x - half, minY: y - 2, maxX: x + half, maxY: y + 2 }, { fill: '#ffffff' });
  pen.text(short, { x, y: y - 1.3 }, { size: 3.6, isBold: true, align: 'middle' });
}

export function overviewKey(plan: EtchPlan, width: number): Block {
  return pictureKey(
    [
      ...plan.stages.map(({ number, color, level }) =>
        areaEntry(`stage ${number}, to ${level.toFixed(3)}`, {
          fill: tint(color),
          style: stageHatch(number),
        }),
      ),
      lineEntry('scribe line with its stage’s mark', 1, SCRIBED),
      lineEntry('drawn border', undefined, DRAWN),
      lineEntry('section', undefined, CUT),
    ],
    width,
  );
}
