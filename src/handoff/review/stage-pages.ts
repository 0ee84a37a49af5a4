/** Stages two a page, or more where the part is so wide that none is drawn smaller for it: what is peeled, its lines, what is bare and what stays sealed, and a box for who looked at it. */

import { formTable } from '#handoff/pdf/form-table.ts';
import { paperRoom, sectionHead } from '#handoff/pdf/paper-book.ts';
import { type PictureRoom, partFrame } from '#handoff/pdf/part-frame.ts';
import type { Paper } from '#handoff/pdf/pen.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { stageKey, stagePicture } from '#handoff/pdf/stage-picture.ts';
import { sealedWords } from '#handoff/stage-words.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { mirrorPlan } from '#plan/mirror-plan.ts';
import type { ReviewPage } from './review-page.ts';

/** mm of a stage's share of a page beside its picture: head, scale bar, key, box, gap. */
const BESIDE_PICTURE = 40;
const FEWEST = 2;
const MOST = 4;
/** Of its size two a page: what a picture keeps where more stand on a page. */
const KEPT_SIZE = 0.8;

/** Room for a stage's picture. */
export function reviewPictureRoom(plan: EtchPlan, paper: Paper): PictureRoom {
  const { width, height } = paperRoom(paper);
  const roomOf = (stages: number) => ({ width, height: height / stages - BESIDE_PICTURE });
  const scaleOf = (stages: number) => partFrame(plan, roomOf(stages)).scale;
  let count = FEWEST;
  while (count < MOST && scaleOf(count + 1) >= KEPT_SIZE * scaleOf(FEWEST)) count++;
  return roomOf(count);
}

export function stagePages(page: ReviewPage): Block[] {
  const { plan, planFile, figures } = page;
  const near = plan.stages.flatMap((stage) => {
    const sealed = planFile.stages.find(({ number }) => number === stage.number)?.sealed ?? [];
    const stays = plan.masking === 're-mask' ? 'on a coat of its own' : sealedWords(sealed);
    return stageBlocks(page, {
      plan,
      stage,
      title: `Stage ${stage.number} of ${plan.stages.length}: to ${figures.said(stage.level, { isGiven: true })}`,
      said: `peeled at minute ${stage.startMinute.toFixed(1)}, then ${stage.minutes.toFixed(1)} min for ${figures.said(stage.etch, { isGiven: true })}; ${lineCount(stage)}; ${stays}`,
      ask: 'The right piece, after the right one; every line there; nothing else open.',
    });
  });
  return [...near, ...farPages(page)];
}

/** The same of the far face as it is seen from its own side, for the stages that peel something there. */
function farPages(page: ReviewPage): Block[] {
  const { far } = page.plan;
  if (far === undefined) return [];
  const plan = mirrorPlan(far, 0);
  return plan.stages
    .filter(({ piece }) => piece.length > 0)
    .flatMap((stage) =>
      stageBlocks(page, {
        plan,
        stage,
        title: `Far face, seen from it, stage ${stage.number} of ${plan.stages.length}: to ${page.figures.said(stage.level, { isGiven: true })}`,
        said: `in the bath with the near face; mirrored about x = 0 of the drawing; ${lineCount(stage)}`,
        ask: 'The right piece on the right face; every line there; nothing else open.',
      }),
    );
}

function lineCount({ lines }: Stage): string {
  return lines.length === 1 ? '1 line' : `${lines.length} lines`;
}

interface StageShown {
  readonly plan: EtchPlan;
  readonly stage: Stage;
  readonly title: string;
  readonly said: string;
  readonly ask: string;
}

function stageBlocks(page: ReviewPage, { plan, stage, title, said, ask }: StageShown): Block[] {
  const { pen, width, choices, figures } = page;
  return together([
    sectionHead(pen, title, said, width),
    stagePicture(plan, stage, reviewPictureRoom(plan, choices.paper), { unit: figures.units[0] }),
    stageKey(plan, stage, width),
    ...formTable(pen, {
      columns: [{ share: 130 }, { share: 50 }],
      rows: [[ask, 'Looked at by']],
      width,
      row: 7.5,
    }),
    gap(3),
  ]);
}
