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

function sizeWords(page: TravellerPage, sizing: Sizing): string {
  const { figures, job } = page;
  const { amount, faces, minutes } = sizing;
  const isBoth = faces === 'both';
  const bare = isBoth
    ? 'Nothing covered: both faces, edges, holes.'
    : 'Far face covered; edges and holes bare.';
  const off = figures.said(amount, { tolerance: amount });
  return [
    `Degreased. **${bare}** Coupons, bath, extraction, second person as before the first dip.`,
    `Mean of 5 readings _13_  In _13_ out _13_`,
    `**${minutes.toFixed(1)} min** at the planned rate take ${off} off ${isBoth ? 'each face' : 'the near face'}; by the coupon ${byCoupon(page, sizing)}.`,
    `Rinse${needsDesmut(job) ? ', desmut, rinse' : ''}, dry.`,
  ].join(' ');
}

/** Minutes of this very sheet, where it is to come to a thickness. */
function byCoupon({ figures }: TravellerPage, { amount, faces, to }: Sizing): string {
  if (to === undefined) return `${figures.said(amount, { tolerance: amount })} ÷ rate`;
  return `(mean − ${figures.said(to)})${faces === 'both' ? ' ÷ 2' : ''} ÷ rate`;
}

function gaugeWords({ figures }: TravellerPage, { edge }: Sizing, cover: PageRun): string {
  const moved = figures.said(edge, { tolerance: edge });
  return `Boxes of the sheet on ${pageWords(cover)} filled in **now**, before cleaning and masking: minutes of all stages rest on them. Edges and holes are ${moved} off the drawing, as the outline in the files is. Gauge no. _14_ mean _14_`;
}
