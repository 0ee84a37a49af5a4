/**
 * traveller.pdf: what goes with the part from the cleaned sheet to the accepted part. A cover with the run, the steps up to the bath, a
 * page a stage with the dip that is gauged at four fifths and corrected, and the last page, on which final thickness is bought off with
 * the maskant still on. The tolerance that the plan promises rests on these steps (method.md, M6.3).
 */

import { itemAt } from '#geometry/assert.ts';
import { paperOwner } from '#handoff/paper-heading.ts';
import { drawPapers, pageCount, paperRoom } from '#handoff/pdf/paper-book.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { aspectOf } from '#job/aspect-of.ts';
import { type Cover, coverOf } from './cover-page.ts';
import { lastBlocks } from './last-page.ts';
import { stageBlocks, stagePage } from './stage-page.ts';
import { type BookPages, stepsBlocks } from './steps-page.ts';
import type { TravellerInput, TravellerPage } from './traveller-page.ts';

export async function traveller(input: TravellerInput): Promise<Uint8Array> {
  const { plan, job, planHash, choices, fonts } = input;
  const { paper, date } = choices;
  const pen = await makePdfPen({ title: `Traveller, ${job.name}`, date, fonts });
  const page: TravellerPage = { ...input, pen, ...paperRoom(paper) };
  const head = {
    title: 'Traveller',
    ...paperOwner(input),
    planHash,
  };
  const cover = coverOf(page);
  const stages = plan.stages.map((stage) => stageBlocks(page, stage));
  drawPapers(pen, {
    paper,
    head,
    parts: [
      {
        subtitle: coverTitle(page),
        blocks: cover.first,
      },
      { subtitle: 'From the clean sheet to the bath', blocks: stepsOn(page, { cover, stages }) },
      ...plan.stages.map(({ number }, index) => ({
        subtitle: `Step ${stagePage(number)}${head.isNumber ? `. ${aspectOf(job).part}` : ''}`,
        blocks: itemAt(stages, index),
      })),
      { subtitle: 'From the last dip to the accepted part', blocks: lastBlocks(page) },
    ],
  });
  return pen.finish();
}

function coverTitle({ plan, side }: TravellerPage): string {
  if (side === 'far') return 'Far face, seen from it; both are in the bath at once';
  if (side === 'near') return 'Near face; both are in the bath at once';
  return plan.masking === 're-mask'
    ? 'Step chemical milling, a new coat for each stage, shallowest first'
    : 'Step chemical milling, one coat, peel by peel';
}

/** The steps name pages of the book, their own among them: they are set once to count those, and again with the numbers. */
function stepsOn(
  page: TravellerPage,
  { cover, stages }: { readonly cover: Cover; readonly stages: readonly (readonly Block[])[] },
): Block[] {
  const countOf = (blocks: readonly Block[]) => pageCount(page.choices.paper, blocks);
  const first = countOf(cover.first);
  // Its boxes stand on two pages where the first has no room for all of them.
  const covers = first + (cover.rest.length > 0 ? 1 : 0);
  const pagesWith = (own: number): BookPages => ({
    cover: { from: 1, count: covers },
    steps: { from: first + 1, count: own },
    stages: { from: first + own + 1, count: stages.reduce((sum, blocks) => sum + countOf(blocks), 0) },
  });
  const set = (own: number) => [...cover.rest, ...stepsBlocks(page, pagesWith(own), heightOf(cover.rest))];
  return set(countOf(set(1)));
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, { height }) => sum + height, 0);
}
