/**
 * traveller.pdf: what goes with the part from the cleaned sheet to the accepted part. A cover with the run, the steps up to the bath, a
 * page a stage with the dip that is gauged at four fifths and corrected, and the last page, on which final thickness is bought off with
 * the maskant still on. The tolerance that the plan promises rests on these steps (method.md, M6.3).
 */

import { OPPOSITE_HAND } from '#handoff/paper-heading.ts';
import { drawPapers, paperRoom } from '#handoff/pdf/paper-book.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import { coverBlocks } from './cover-page.ts';
import { lastBlocks } from './last-page.ts';
import { stageBlocks, stagePage } from './stage-page.ts';
import { stepsBlocks } from './steps-page.ts';
import type { TravellerInput, TravellerPage } from './traveller-page.ts';

export async function traveller(input: TravellerInput): Promise<Uint8Array> {
  const { plan, job, planHash, choices, isMirrored } = input;
  const { paper, date, heading, issue } = choices;
  const pen = await makePdfPen({ title: `Traveller, ${job.name}`, date });
  const page: TravellerPage = { ...input, pen, ...paperRoom(paper) };
  const head = {
    title: 'Traveller',
    part: heading.part ?? job.name,
    hand: isMirrored === true ? OPPOSITE_HAND : undefined,
    issue: issue.number,
    serial: heading.serial,
    planHash,
  };
  const isRemasked = plan.masking === 're-mask';
  drawPapers(pen, {
    paper,
    head,
    parts: [
      {
        subtitle: isRemasked
          ? 'Step chemical milling, a new coat for each stage, shallowest first'
          : 'Step chemical milling, one coat, peel by peel',
        blocks: coverBlocks(page),
      },
      { subtitle: 'From the clean sheet to the bath', blocks: stepsBlocks(page) },
      ...plan.stages.map((stage) => ({
        subtitle: `Step ${stagePage(stage.number)}. ${job.name}`,
        blocks: stageBlocks(page, stage),
      })),
      { subtitle: 'From the last dip to the accepted part', blocks: lastBlocks(page) },
    ],
  });
  return pen.finish();
}
