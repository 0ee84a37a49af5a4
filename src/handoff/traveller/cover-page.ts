/** The cover: whose run it is, the run as a table, the sheet as measured, coupons, bath, whom to ask and what can hurt. */

import { itemAt } from '#geometry/assert.ts';
import { loopArea as signedArea } from '#geometry/span.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { shopCautions } from '#handoff/cautions.ts';
import { idRuns } from '#handoff/id-runs.ts';
import { headingBlock, sheetSaid } from '#handoff/paper-heading.ts';
import { type DrawnCell, formBoxes, formTable, framed } from '#handoff/pdf/form-table.ts';
import { framedText, sectionHead } from '#handoff/pdf/paper-book.ts';
import { drawMarkSample } from '#handoff/pdf/part-marks.ts';
import { type Block, gap } from '#handoff/pdf/sheet-book.ts';
import { drawWarningSign } from '#handoff/pdf/warning-sign.ts';
import { QUESTIONED_SHARE } from '#job/questioned-share.ts';
import { thickestOf, thinnestOf } from '#job/sheet-at.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { gaugedIn } from './gauge-points.ts';
import { stageSum } from './stage-sum.ts';
import type { TravellerPage } from './traveller-page.ts';

/** Share of the factor by which a coupon may be off before planning is asked: a tenth (our own choice). */
const FACTOR_OFF = 0.1;
/** mm */
const GAP = 3;
/** Between the same length in two units, so that a row stays one line high. */
export const BESIDE = ' / ';

/** mm that rows and boxes to write in are high. */
interface Sizes {
  readonly run: number;
  readonly coupon: number;
  readonly boxes: number;
}

const USUAL: Sizes = { run: 7, coupon: 9, boxes: 11 };
/** Of a long run: no box to write in is lower than a line of handwriting. */
const CLOSE: Sizes = { run: 5.2, coupon: 7.5, boxes: 8.6 };

export interface Cover {
  readonly first: readonly Block[];
  /** What has no room on it, for the page that follows. */
  readonly rest: readonly Block[];
}

/** One page: closer where the run is long, and what is filled in just before it on the next page where that is not enough. */
export function coverOf(page: TravellerPage): Cover {
  const { pen, width, height, job } = page;
  const cautions = framedText(pen, shopCautions(job), { width, sign: drawWarningSign });
  const heading = headingBlock(page, { pen, width });
  const laid = (sizes: Sizes, later: readonly number[]): Cover => {
    const parts = formParts(page, sizes);
    const form = parts
      .filter((_, index) => !later.includes(index))
      .flatMap((part, index) => (index === 0 ? part : [gap(2), ...part]));
    return {
      first: [heading, gap(GAP), ...form, gap(GAP), cautions],
      rest: later.flatMap((index) => [...itemAt(parts, index), gap(GAP)]),
    };
  };
  const tried = [laid(USUAL, []), ...LATER.map((later) => laid(CLOSE, later))];
  const fits = ({ first }: Cover) => first.reduce((sum, block) => sum + block.height, 0) <= height;
  return tried.find(fits) ?? laid(CLOSE, [1, 2, 3, 4]);
}

/** Of the parts of the form what follows on the next page: as little as has to. */
const LATER: readonly (readonly number[])[] = [[], [4], [2], [3, 4], [2, 3, 4]];

/** The run, the sheet, coupons, the bath, and whom to ask. */
function formParts(page: TravellerPage, sizes: Sizes): Block[][] {
  const { pen, width, job } = page;
  const under = (title: string, said: string, blocks: readonly Block[]) => [
    sectionHead(pen, title, said, width),
    ...blocks,
  ];
  const help = ['planning: name, phone', 'emergency: phone', 'nearest shower and eye wash'];
  return [
    runTable(page, sizes.run),
    under(sheetTitle(page), sheetRemark(page), [sheetBoxes(page, sizes.boxes)]),
    under(
      'Coupon before the run',
      'same alloy, temper and lot; all faces bare but for the strip with the opening',
      couponTable(page, sizes.coupon),
    ),
    under('Bath before the run', 'limits are the site’s; write them in', [
      formBoxes(pen, bathBoxes(job.process.bathNamed?.etches), { width, height: sizes.boxes }),
    ]),
    under('Whom to ask, and where help is', '', [
      formBoxes(
        pen,
        help.map((label) => ({ label, share: 4 })),
        { width, height: sizes.boxes },
      ),
    ]),
  ];
}

function runTable(page: TravellerPage, row: number): Block[] {
  const { pen, width, plan, figures } = page;
  const minutes = plan.stages.reduce((sum, stage) => sum + stage.minutes, 0);
  const etch = plan.stages.reduce((sum, stage) => sum + stage.etch, 0);
  const dips = plan.stages.reduce((sum, each) => sum + (sumOf(each, page).isByClock ? 1 : 2), 0);
  const pieces = plan.stages.reduce((sum, { piece }) => sum + outerCount(piece), 0);
  const rows = plan.stages.map((stage) => [
    String(stage.number),
    stage.lines.length > 0 ? markCell(stage.number) : '–',
    idRuns(stage.regions) || '–',
    figures.lengths(stage.etch, { isGiven: true }).join(BESIDE),
    stage.minutes.toFixed(1),
    `**${outWords(stage, page)}**`,
    leaves(page, stage),
  ]);
  const { sizing } = page.job;
  const before = sizing === undefined ? '' : `after ${sizing.minutes.toFixed(1)} min of sizing; `;
  const remark = `${before}minutes at the planned rate, ${figures.rate(plan.rate)}; the readings decide`;
  const isInBoth = figures.units.length > 1;
  const table = formTable(pen, {
    columns: [
      { share: isInBoth ? 12 : 14, head: 'Stage', align: 'middle', isBold: true },
      { share: isInBoth ? 22 : 24, head: 'Mark on its lines' },
      { share: isInBoth ? 52 : 46, head: plan.masking === 're-mask' ? 'Floors that end with it' : 'Peel' },
      { share: isInBoth ? 26 : 24, head: `Etch, ${figures.named}`, align: 'right' },
      { share: isInBoth ? 16 : 20, head: 'Minutes', align: 'right' },
      { share: 24, head: 'Out to gauge at', align: 'right' },
      { share: 28, head: `Leaves thick, ${figures.named}`, align: 'right' },
    ],
    rows: [
      ...rows,
      [
        { text: 'In the bath in all', spans: 3 },
        `**${figures.lengths(etch, { isGiven: true }).join(BESIDE)}**`,
        `**${minutes.toFixed(1)}**`,
        { text: `${plan.stages.length} stages, ${dips} dips, ${pieces} pieces`, spans: 2 },
      ],
    ],
    width,
    row,
  });
  return [sectionHead(pen, 'The run', remark, width), ...table];
}

function sumOf(stage: Stage, { plan, job, gauged }: TravellerPage) {
  return stageSum(stage, { process: job.process, points: gaugedIn(stage, plan, gauged) });
}

function outWords(stage: Stage, page: TravellerPage): string {
  const { isByClock, outAt } = sumOf(stage, page);
  return isByClock ? 'by the clock' : outAt.toFixed(1);
}

/** Of the nominal sheet under the floors that end with the stage. */
function leaves({ plan, job, figures }: TravellerPage, { regions, level }: Stage): string {
  const loops = plan.regions.filter(({ id }) => regions.includes(id)).flatMap((region) => region.loops);
  const { least, most } = thicknessOver(job.stock.thickness, loops);
  const [thin, thick] = [least - level, most - level].map((left) =>
    figures.lengths(left, { isGiven: true }).join(BESIDE),
  );
  return thin === thick ? String(thin) : `${thin} to\n${thick}`;
}

export function outerCount(piece: Stage['piece']): number {
  return piece.filter((loop) => signedArea(loop) > 0).length;
}

export function markCell(stage: number): DrawnCell {
  return { draw: (pen, box) => drawMarkSample(pen, box, stage) };
}

function sheetTitle({ job, figures }: TravellerPage): string {
  return `Sheet as measured${job.sizing === undefined ? '' : ' once sized'}, ${figures.named}`;
}

function sheetRemark({ job, figures }: TravellerPage): string {
  const { thickness, minus, plus } = job.stock;
  const [thin, thick] = [thinnestOf(thickness) - minus, thickestOf(thickness) + plus];
  const limits = `ask planning if a reading is outside ${figures.said(thin, { round: 'up' })} to ${figures.said(thick, { round: 'down' })}`;
  const { sizing } = job;
  return sizing === undefined
    ? `ordered ${sheetSaid(job.stock, figures)}; ${limits}`
    : `ordered ${sheetSaid(sizing.sheet, figures)}; ${limits}`;
}

function sheetBoxes({ pen, width }: TravellerPage, height: number): Block {
  const labels = [
    '1 lower left',
    '2 upper left',
    '3 middle',
    '4 lower right',
    '5 upper right',
    'gauge no.',
    'initials, date',
  ];
  return formBoxes(
    pen,
    labels.map((label) => ({ label, share: 1 })),
    { width, height },
  );
}

function couponTable({ pen, width, plan, job, figures }: TravellerPage, row: number): Block[] {
  const { named } = figures;
  const spare = QUESTIONED_SHARE;
  const factors = job.process.etchFactor.map(([, factor]) => factor);
  const [low, high] = [Math.min(...factors), Math.max(...factors)];
  const cut = low === high ? low.toFixed(2) : `${low.toFixed(2)} to ${high.toFixed(2)}, by depth`;
  const over = (value: number) => (Math.floor(value * 100 + SAME_COUNT) / 100).toFixed(2);
  const under = (value: number) => (Math.ceil(value * 100 - SAME_COUNT) / 100).toFixed(2);
  const blank = Array.from({ length: 9 }, () => '');
  return [
    framed(
      formTable(pen, {
        columns: [
          { share: 14, head: 'Coupon', isBold: true },
          { share: 17, head: `thick before, ${named}` },
          { share: 17, head: `thick after, ${named}` },
          { share: 15, head: 'minutes' },
          { share: 16, head: 'faces bare, 1 or 2' },
          { share: 27, head: `rate, ${named}/min: gone ÷ faces ÷ min` },
          { share: 18, head: `opening before, ${named}` },
          { share: 17, head: `width after, ${named}` },
          { share: 15, head: `depth, ${named}` },
          { share: 24, head: 'factor: wider ÷ 2 ÷ depth' },
        ],
        rows: [
          ['1', ...blank],
          ['2', ...blank],
          [
            {
              text: `Plan: ${figures.rate(plan.rate)}. **Ask planning under ${figures.rate(plan.rate * (1 - spare), 'up')} or over ${figures.rate(plan.rate * (1 + spare), 'down')}.**`,
              spans: 6,
            },
            {
              text: `Lines cut for ${cut}. **Ask under ${under(low * (1 - FACTOR_OFF))} or over ${over(high * (1 + FACTOR_OFF))}.**`,
              spans: 4,
            },
          ],
        ],
        width,
        row,
      }),
      width,
    ),
  ];
}

/** Free caustic for aluminium, free acid for the others. */
function bathBoxes(metal: string | undefined) {
  const strength = metal === 'aluminium' ? 'free caustic, g/L' : 'strength, g/L';
  return [
    'tank no.',
    'temperature, °C',
    'limits, °C',
    strength,
    'limits, g/L',
    'dissolved metal, g/L',
    'limit, g/L',
    'initials, date',
  ].map((label) => ({ label, share: 1 }));
}
