/**
 * The sheet at one stage: what to peel now (tinted in the stage's colour and hatched close), what is bare already (hatched wide),
 * lines of later stages, sealed (dashed), and each line's stage by its mark, so that a copy without colour reads the same.
 * With a new coat for each stage nothing else is bare and no later line is cut: a thin line shows the floor that the windows lie on.
 */

import { type Box, growBox } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { arcSpan } from '#geometry/span.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { type PictureRoom, partFrame } from './part-frame.ts';
import { closed, drawLines, drawScaleBar, SCALE_BAR } from './part-marks.ts';
import type { Pen, Stroke } from './pen.ts';
import { areaEntry, type KeyEntry, lineEntry, pictureKey } from './picture-key.ts';
import type { Block } from './sheet-book.ts';

import { hatch, INK, tint } from './sheet-ink.ts';
import { drawStageName, placePointNames, placeRegionNames, TARGET_REACH } from './stage-names.ts';

const CLOSE = { spacing: 1.1, angle: Math.PI / 4 };
const WIDE = { spacing: 3, angle: -Math.PI / 4 };
const CUT: Stroke = { width: 0.6, color: INK };
const THIN: Stroke = { width: 0.18, color: INK };
const SEALED: Stroke = { ...THIN, dash: [1.2, 0.8] };

/** mm of a picture beside its part: above it, and the scale bar. */
export const PICTURE_EDGE = SCALE_BAR + 4;

/** mm between a target and a region's name. */
const TARGET_APART = 0.6;

/** A place to gauge, as the page numbers it. */
export interface PicturePoint {
  readonly name: string;
  readonly at: Point;
}

export interface PictureMarks {
  readonly points?: readonly PicturePoint[];
  /** Of the scale bar. */
  readonly unit?: 'mm' | 'in' | undefined;
}

export function stagePicture(
  plan: EtchPlan,
  stage: Stage,
  room: PictureRoom,
  { points = [], unit = 'mm' }: PictureMarks = {},
): Block {
  const frame = partFrame(plan, room);
  return {
    height: frame.height + PICTURE_EDGE,
    draw: (pen, { left, right, top }) => {
      const placed = frame.on({ left, right, top: top - 2 });
      const bare = plan.stages.filter(({ number }) => number < stage.number).at(-1)?.opening ?? [];
      const isRemasked = plan.masking === 're-mask';
      if (!isRemasked) hatch(pen, bare.map(placed.loop), WIDE);
      const piece = stage.piece.map(placed.loop);
      pen.paths(piece.map(closed), { fill: tint(stage.color) });
      hatch(pen, piece, CLOSE);
      pen.paths(plan.sheet.map(placed.loop).map(closed), { stroke: { width: 0.4, color: INK } });
      for (const each of isRemasked ? [] : plan.stages)
        if (each.number > stage.number) drawLines(pen, each, placed, SEALED);
      pen.paths(bare.map(placed.loop).map(closed), { stroke: THIN });
      drawLines(pen, stage, placed, CUT);
      const targets = points.map(({ name, at }) => ({ name, at: placed.place(at) }));
      const numbers = placePointNames(pen, targets);
      const taken = [
        ...targets.map(({ at }) => growBox(targetBox(at), TARGET_APART)),
        ...numbers.map(({ box }) => box),
      ];
      for (const name of placeRegionNames(pen, plan, { ids: stage.regions, placed, taken }))
        drawStageName(pen, name, true);
      for (const number of numbers) drawStageName(pen, number, false);
      for (const { at } of targets) drawTarget(pen, at);
      drawScaleBar(pen, { left, top: top - frame.height - 4 }, frame.scale, unit);
    },
  };
}

const TARGET_ENTRY: KeyEntry = {
  text: 'gauge here',
  draw: (pen, { minX, maxX, minY, maxY }) => drawTarget(pen, { x: (minX + maxX) / 2, y: (minY + maxY) / 2 }),
};

function targetBox({ x, y }: Point): Box {
  return { minX: x - TARGET_REACH, minY: y - TARGET_REACH, maxX: x + TARGET_REACH, maxY: y + TARGET_REACH };
}

function drawTarget(pen: Pen, { x, y }: Point): void {
  const stroke = { width: 0.3, color: INK };
  const ring = [0, Math.PI].map((from) => arcSpan({ center: { x, y }, radius: 1.2, from, sweep: Math.PI }));
  pen.paths([closed(ring)], { fill: '#ffffff', stroke });
  pen.line({ x: x - TARGET_REACH, y }, { x: x + TARGET_REACH, y }, stroke);
  pen.line({ x, y: y - TARGET_REACH }, { x, y: y + TARGET_REACH }, stroke);
}

/** What the picture's hatches and lines mean, in a row below it. */
export function stageKey(plan: EtchPlan, stage: Stage, width: number, isGauged = false): Block {
  const isRemasked = plan.masking === 're-mask';
  const isSealed =
    !isRemasked && plan.stages.some(({ number, lines }) => number > stage.number && lines.length > 0);
  return pictureKey(
    [
      ...(stage.piece.length > 0 ? [areaEntry('peel now', { fill: tint(stage.color), style: CLOSE })] : []),
      ...(stage.number > 1 && !isRemasked ? [areaEntry('bare already', { style: WIDE })] : []),
      ...(stage.lines.length > 0 ? [lineEntry('line of this stage', stage.number, CUT)] : []),
      ...(stage.number > 1 && isRemasked
        ? [lineEntry('edge of the floor etched before, under the coat', undefined, THIN)]
        : []),
      ...(isSealed ? [lineEntry('sealed line', undefined, SEALED)] : []),
      ...(isGauged ? [TARGET_ENTRY] : []),
    ],
    width,
  );
}
