/** Steps from receiving the sheet to hanging it in the bath, coupons during the run, and how the part hangs. */
import { itemAt } from '#geometry/assert.ts';
import { programUnit } from '#handoff/machine-program.ts';
import { flowText } from '#handoff/pdf/flow-text.ts';
import { formTable } from '#handoff/pdf/form-table.ts';
import { sectionHead } from '#handoff/pdf/paper-book.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { type Block, gap } from '#handoff/pdf/sheet-book.ts';
import { stageWords } from '#handoff/stage-words.ts';
import { clearHeight, hangingPicture } from './hanging-picture.ts';
import { turnOverFirst } from './other-face.ts';
import { type PageRun, pageWords } from './page-run.ts';
import { sizingSteps } from './sizing-steps.ts';
import { stagePage } from './stage-page.ts';
import type { TravellerPage } from './traveller-page.ts';

export const STEP_COLUMNS = [
  { share: 12, head: 'Step', align: 'middle', isBold: true },
  { share: 24, head: 'Do', isBold: true },
  { share: 114, head: 'So that' },
  { share: 15, head: 'Initials' },
  { share: 15, head: 'Stamp' },
] as const;

/** Where in the book its parts stand. */
export interface BookPages {
  readonly cover: PageRun;
  readonly steps: PageRun;
  readonly stages: PageRun;
}

/** mm that rows and the picture are high: closer where something stands above them. */
interface Sizes {
  readonly step: number;
  readonly coupon: number;
  readonly picture: number;
  /** Of letters. */
  readonly text: number;
  /** Coupons that have a row. */
  readonly coupons: number;
}

const WIDE = { coupon: 8.4, picture: 50, text: TYPE.text, coupons: 3 };

const SIZES: readonly Sizes[] = [
  { step: 10.4, ...WIDE },
  { step: 9.2, ...WIDE },
  { step: 8.2, ...WIDE },
  { step: 7.6, coupon: 7.6, picture: 42, text: TYPE.text, coupons: 3 },
  { step: 7.2, coupon: 7.5, picture: 33.5, text: TYPE.note, coupons: 2 },
];

/** @param above mm that are taken already */
export function stepsBlocks(page: TravellerPage, pages: BookPages, above = 0): Block[] {
  const tried = SIZES.map((sizes) => stepsWith(page, pages, sizes));
  const fits = (blocks: readonly Block[]) =>
    above + blocks.reduce((sum, { height }) => sum + height, 0) <= page.height;
  return tried.find(fits) ?? itemAt(tried, 0);
}

function stepsWith(page: TravellerPage, pages: BookPages, sizes: Sizes): Block[] {
  const { pen, width, plan } = page;
  const last = plan.stages.length;
  const range = last === 1 ? String(stagePage(1)) : `${stagePage(1)}– ${stagePage(last)}`;
  const [first = [], ...others] = stepsOf(page, pages).map(([what, so], index) => [
    String(10 * (index + 1)),
    what,
    so,
    '',
    '',
  ]);
  const sizing = sizingSteps(page, pages.cover).map((step) => [...step, '', '']);
  // Numbers of the stages are fixed: what is left out before them leaves a gap.
  const rows = [
    first,
    ...sizing,
    ...others,
    [
      range,
      last === 1 ? 'Stage 1' : `Stages 1 to ${last}`,
      `${last === 1 ? 'Its page follows' : 'Their pages follow'}. A stage is not begun until the page before it is stamped.`,
      { text: pageWords(pages.stages), spans: 2 },
    ],
  ];
  return [
    ...formTable(pen, { columns: STEP_COLUMNS, rows, width, row: sizes.step, size: sizes.text }),
    gap(2),
    sectionHead(
      pen,
      'Coupon during the run',
      `hang one with the part; read it after ${last > 1 ? `stage ${Math.ceil(last / 2)}, and` : 'half the minutes, and'} whenever a page instructs to ask planning`,
      width,
    ),
    ...couponRows(page, sizes),
    gap(3),
    hanging(page, pages, sizes),
  ];
}

function stepsOf(page: TravellerPage, { cover }: BookPages): (readonly [string, string])[] {
  const { plan, templates, choices, job } = page;
  const isRemasked = plan.masking === 're-mask';
  const later = plan.stages.filter(({ number, lines }) => number > 1 && lines.length > 0);
  const clear = clearHeight(page.figures);
  const issue = choices.issue.number === undefined ? '' : `, issue ${choices.issue.number}`;
  const seal: (readonly [string, string])[] =
    isRemasked || later.length === 0
      ? []
      : [
          [
            'Seal',
            `Line sealer over every line of ${stageWords(later.map(({ number }) => number))}. **Stage 1 stays open.**`,
          ],
        ];
  return [
    [
      'Receive',
      job.sizing === undefined
        ? `Sheet, lot, thickness, drawing and template issue agree with ${pageWords(cover)}; its boxes filled in.`
        : `Sheet, lot, thickness, drawing and template issue agree with ${pageWords(cover)}; its boxes filled in, but for the sheet’s.`,
    ],
    ['Clean', 'Degrease, then clean by the process specification.'],
    [
      'Rinse',
      'The water film stays whole over every face and edge. **From here no bare hands on the metal.**',
    ],
    ['Mask', 'Coats _9_  h between _9_  cured _9_ h at _9_ °C. All faces, edges.'],
    ['Check the film', `Dry film, ${page.figures.units[0]}: _12_ _12_ _12_ _12_  Peel strip _14_ g/cm`],
    layStep(page, templates, issue),
    ['Cut the lines', cutWords(page, templates)],
    ['Count the lines', `${countWords(page)}${turnOverFirst(page)}`],
    ...seal,
    ['Touch up, check', 'Nicks, edges and pin holes coated; lamp over the whole face; dry before the bath.'],
    [
      'Hang',
      `**Pocket face out and upright.** Gas can leave every overhang. ${clear} clear under the part and ${clear} of bath over it.`,
    ],
  ];
}

function layStep(
  { choices }: TravellerPage,
  templates: number | undefined,
  issue: string,
): readonly [string, string] {
  if (templates !== undefined) {
    const count = templates === 1 ? 'Template 1 of 1' : `Templates 1 to ${templates}, one after the other`;
    return [
      'Lay the template',
      `${count}${issue}. THIS SIDE UP. All holes on their pins; part edge meets the drawn edge within _10_.`,
    ];
  }
  if (choices.files.includes('program')) {
    return [
      'Set the cutter',
      `Program of this plan${issue}, in ${programUnit(choices.program.post.unit)}. Datum found; trial line on scrap, depth through the maskant only.`,
    ];
  }
  return ['Lay out the lines', `From the scribe drawing of this plan${issue}, each layer a stage.`];
}

function cutWords({ choices, plan }: TravellerPage, templates: number | undefined): string {
  const only = plan.masking === 're-mask' ? 'Lines of stage 1 and no other. ' : '';
  const through = `${only}Through the maskant, metal not scored.`;
  if (templates === undefined) return through;
  const side = {
    middle: 'Knife in the middle of the slot.',
    peeled: 'Knife against the side of the slot that **stays masked**.',
    kept: 'Knife against the **pocket** side of the slot.',
  }[choices.template.knife.side];
  return `${through} ${side} Join across the bridges by hand.`;
}

function countWords({ plan }: TravellerPage): string {
  const { stages } = plan;
  if (plan.masking === 're-mask')
    return `Stage 1: ${stages[0]?.lines.length ?? 0}. Each line wears the marks of its stage.`;
  const each = [...new Set(stages.map(({ lines }) => lines.length))];
  const counts = each
    .map((count) => {
      const those = stages.filter(({ lines }) => lines.length === count).map(({ number }) => number);
      return `${stageWords(those)}: **${count}**${those.length > 1 ? ' each' : ''}`;
    })
    .join('; ')
    .replace(/^s/, 'S');
  const total = stages.reduce((sum, { lines }) => sum + lines.length, 0);
  return `${counts}; **in all ${total}.** Each line wears the marks of its stage.`;
}

function couponRows({ pen, width, figures }: TravellerPage, { coupon, coupons }: Sizes): Block[] {
  const { named } = figures;
  const heads = [
    'after stage',
    `thick before, ${named}`,
    `thick after, ${named}`,
    'minutes',
    `rate, ${named}/min`,
    `opening before, ${named}`,
    `width after, ${named}`,
    'factor',
    'initials',
  ];
  return formTable(pen, {
    columns: heads.map((head) => ({ share: 1, head })),
    rows: Array.from({ length: coupons }, () => heads.map(() => '')),
    width,
    row: coupon,
  });
}

function hanging(page: TravellerPage, { cover, steps }: BookPages, sizes: Sizes): Block {
  const { pen, width } = page;
  const picture = hangingPicture(page, { width: width * 0.36, height: sizes.picture });
  const left = width * 0.41;
  const words = [
    '**How it hangs**',
    'Pocket face upright, towards the middle of the tank, the upper edge of the pictures up: or by the site’s procedure: _40_',
    'Gas must not be caught under the upper lip of a pocket: turn or lift as each page instructs.',
    'Wires through tooling holes, not over a scribe line.',
    ...(sizes.text === TYPE.text ? [''] : []),
    '**Before the first dip**',
    `Boxes of ${pageWords(cover)} filled in, steps of ${pageWords(steps)} stamped to here. Coupons read. Bath inside the site’s limits. Extraction on. Second person there.`,
  ];
  const flow = flowText(pen, words.join('\n'), { width: width - left, size: sizes.text });
  return {
    height: Math.max(picture.height, flow.height),
    draw: (to, area) => {
      picture.draw(to, area);
      flow.draw(to, { x: area.left + left, y: area.top });
    },
  };
}
