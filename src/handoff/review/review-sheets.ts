/**
 * review.pdf: what a reviewer signs for. All of it on page 1: plan, levels and section, findings, signatures. Behind it what it rests on:
 * figures, each stage, the sections chosen, inspection points and sources.
 */
import { paperOwner } from '#handoff/paper-heading.ts';
import { drawPapers, paperRoom } from '#handoff/pdf/paper-book.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import { laterPages } from './later-pages.ts';
import type { ReviewInput, ReviewPage } from './review-page.ts';
import { signedPage } from './signed-page.ts';

export async function reviewSheets(input: ReviewInput): Promise<Uint8Array> {
  const { job, planHash, choices, fonts } = input;
  const { paper, date } = choices;
  const pen = await makePdfPen({ title: `Review, ${job.name}`, date, fonts });
  const page: ReviewPage = { ...input, pen, ...paperRoom(paper) };
  const { blocks, rest } = signedPage(page);
  drawPapers(pen, {
    paper,
    head: {
      title: 'Review',
      ...paperOwner(input),
      planHash,
      isNamedAtOnce: true,
    },
    parts: [
      { subtitle: 'Is the order right, is no line missing, does nothing end too thin?', blocks },
      { subtitle: 'What the signatures rest on', blocks: laterPages(page, rest) },
    ],
  });
  return pen.finish();
}
