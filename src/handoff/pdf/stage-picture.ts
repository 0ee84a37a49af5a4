/**
 * The sheet at one stage: what to peel now (tinted in the stage's colour and hatched close), what is bare already (hatched wide),
 * lines of later stages, sealed (dashed), and each line's stage by its mark, so that a copy without colour reads the same.
 * With a coat a stage nothing else is bare and no later line is cut: a thin line shows the floor that the windows lie on.
 */
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { type PictureRoom, partFrame } from './part-frame.ts';
import { closed, drawLines, drawScaleBar, nameRegions, SCALE_BAR } from './part-marks.ts';
import type { Stroke } from './pen.ts';
import { areaEntry, lineEntry, pictureKey } from './picture-key.ts';
import type { Block } from './sheet-book.ts';
import { hatch, INK, tint } from './sheet-ink.ts';

const CLOSE = { spacing: 1.1, angle: Math.PI / 4 };
const WIDE = { spacing: 3, angle: -Math.PI / 4 };
const CUT: Stroke = { width: 0.45, color: INK };
const THIN: Stroke = { width: 0.18, color: INK };
const SEALED: Stroke = { ...THIN, dash: [1.2, 0.8] };

export function stagePicture(plan: EtchPlan, stage: Stage, room: PictureRoom): Block {
  const frame = partFrame(plan, room);
  return {
    height: frame.height + SCALE_BAR + 4,
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
      nameRegions(pen, plan, { ids: new Set(stage.regions), scale: frame.scale, placed });
      drawScaleBar(pen, { left, top: top - frame.height - 4 }, frame.scale);
    },
  };
}

/** What the picture's hatches and lines mean, in a row below it. */
export function stageKey(plan: EtchPlan, stage: Stage, width: number): Block {
  const isRemasked = plan.masking === 're-mask';
  const isSealed =
    !isRemasked && plan.stages.some(({ number, lines }) => number > stage.number && lines.length > 0);
  return pictureKey(
    [
      areaEntry('peel now', { fill: tint(stage.color), style: CLOSE }),
      ...(stage.number > 1 && !isRemasked ? [areaEntry('bare already', { style: WIDE })] : []),
      lineEntry('line of this stage, with its mark', stage.number, CUT),
      ...(stage.number > 1 && isRemasked
        ? [lineEntry('edge of the floor etched before, under the coat', undefined, THIN)]
        : []),
      ...(isSealed ? [lineEntry('line sealed over, with its own stage’s mark', undefined, SEALED)] : []),
    ],
    width,
  );
}
