/** Steps between receiving the sheet and cleaning it, where it is sized (M8.7): the etch all over, and gauging what is left. */
import type { Sizing } from '#job/sizing.ts';
import { type PageRun, pageWords } from './page-run.ts';
import { needsDesmut } from './shop-words.ts';
import type { TravellerPage } from './traveller-page.ts';

/** Between the first step and the second, which are numbered by tens. */
export function sizingSteps(
  page: TravellerPage,
  cover: PageRun,
): readonly (readonly [number: string, what: string, so: string])[] {
  const { sizing } = page.job;
  if (sizing === undefined) return [];
  return [
    ['12', 'Size', sizeWords(page, sizing)],
    ['14', 'Gauge it sized', gaugeWords(page, sizing, cover)],
  ];
}

function sizeWords({ figures, job }: TravellerPage, { amount, faces, minutes }: Sizing): string {
  const each = faces === 'both' ? 'each face' : 'the near face';
  const bare =
    faces === 'both'
      ? '**Nothing covered: both faces, edges, holes.**'
      : '**Far face covered; edges and holes bare.**';
  const off = figures.said(amount, { tolerance: amount });
  return `Degreased. ${bare} Mean of 5 readings before _13_  In _13_ out _13_  **${minutes.toFixed(1)} min** at the planned rate take ${off} off ${each}; by the coupon: ${off} ÷ rate. Rinse${needsDesmut(job) ? ', desmut, rinse' : ''}, dry.`;
}

function gaugeWords({ figures }: TravellerPage, { edge }: Sizing, cover: PageRun): string {
  const moved = figures.said(edge, { tolerance: edge });
  return `Boxes of the sheet on ${pageWords(cover)} filled in **now**, before cleaning and masking: minutes of all stages rest on them. Edges and holes are ${moved} off the drawing, as the outline in the files is. Gauge no. _14_ mean _14_`;
}
