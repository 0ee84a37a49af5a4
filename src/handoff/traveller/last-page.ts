/** From the last dip to the accepted part: final thickness with the maskant still on, then what follows, and what went wrong. */
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import { formBoxes, formTable } from '#handoff/pdf/form-table.ts';
import { framedText, pageCount, remark, sectionHead } from '#handoff/pdf/paper-book.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { usualIn } from '#job/fields/field.ts';
import { DEPTH_TOLERANCE } from '#job/fields/requirement-fields.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { BESIDE } from './cover-page.ts';
import { takesUpHydrogen } from './shop-words.ts';
import { stagePage } from './stage-page.ts';
import { STEP_COLUMNS } from './steps-page.ts';
import type { TravellerPage } from './traveller-page.ts';

/** More are the inspection sheet's. */
const MOST_POINTS = 90;

/** mm that rows are high at least. */
interface Rows {
  readonly point: number;
  readonly step: number;
  readonly wrong: number;
}

const USUAL: Rows = { point: 8, step: 9.4, wrong: 11 };
/** Of many floors: no lower than a line of handwriting. */
const CLOSE: Rows = { point: 6.6, step: 8.2, wrong: 9 };

/** Closer where that saves a page. */
export function lastBlocks(page: TravellerPage): Block[] {
  const pagesOf = (blocks: readonly Block[]) => pageCount(page.choices.paper, blocks);
  const [usual, close] = [lastWith(page, USUAL), lastWith(page, CLOSE)];
  return pagesOf(close) < pagesOf(usual) ? close : usual;
}

function lastWith(page: TravellerPage, rows: Rows): Block[] {
  const { pen, width, plan } = page;
  const first = stagePage(plan.stages.length) + 10;
  const steps = stepsOf(page).map(([what, so], index) => [
    String(first + 10 * (index + 1)),
    what,
    so,
    '',
    '',
  ]);
  return [
    sectionHead(
      pen,
      `Step ${first}. Final thickness, maskant still on`,
      'a thick floor can still go back; after stripping it can’t',
      width,
    ),
    ...finalTable(page, rows.point),
    gap(3),
    // What went wrong stands below the steps that it went wrong in, and alone on no page.
    ...together([
      ...formTable(pen, { columns: STEP_COLUMNS, rows: steps, width, row: rows.step }),
      gap(2),
      sectionHead(
        pen,
        'What went wrong, and who decided',
        'a word here is worth more than a clean page',
        width,
      ),
      ...wrongTable(page, rows.wrong),
      gap(3),
      formBoxes(
        pen,
        ['Run by', 'Inspected by', 'Released by'].map((who) => ({
          label: `${who} (name, sign, date)`,
          share: 1,
        })),
        { width, height: 9.5 },
      ),
    ]),
  ];
}

function wrongTable({ pen, width }: TravellerPage, row: number): Block[] {
  return formTable(pen, {
    columns: [
      { share: 20, head: 'Step, point' },
      { share: 70, head: 'What was seen' },
      { share: 50, head: 'What was decided' },
      { share: 40, head: 'By whom, date' },
    ],
    rows: Array.from({ length: 3 }, () => ['', '', '', '']),
    width,
    row,
  });
}

function finalTable(page: TravellerPage, row: number): Block[] {
  const { pen, width, figures, plan } = page;
  const floors = page.final.filter(({ stage }) => stage > 0);
  const asDepth = depthsOf(plan);
  const shown = floors.slice(0, MOST_POINTS);
  const rows = shown.map(({ region, thickness, isToleranceUsual }, index) => {
    const { nominal, plus, minus } = thickness;
    const tolerance = Math.min(plus, minus);
    return [
      `F${index + 1}`,
      `${region}${asDepth.has(region) ? ' *' : ''}${isToleranceUsual === true ? ' †' : ''}`,
      figures.lengths(nominal, { tolerance, isGiven: true }).join(BESIDE),
      figures.lengths(nominal - minus, { tolerance, round: 'up' }).join(BESIDE),
      figures.lengths(nominal + plus, { tolerance, round: 'down' }).join(BESIDE),
      '',
      '',
      '',
      '',
    ];
  });
  // What is written by hand shares what the printed figures leave.
  const figured = figures.units.length > 1 ? 27 : 18;
  const table = formTable(pen, {
    columns: [
      { share: 12, head: 'Point', isBold: true },
      { share: 22, head: 'Floor' },
      { share: figured, head: `Aim, ${figures.named}`, align: 'right', isBold: true },
      { share: figured, head: 'Least', align: 'right' },
      { share: figured, head: 'Most', align: 'right' },
      ...[`Read, ${figures.units[0]}`, 'Over aim', 'Minutes more', 'Read again'].map((head) => ({
        share: (146 - 3 * figured) / 4,
        head,
      })),
    ],
    rows,
    width,
    row,
  });
  if (shown.length === 0) {
    const none = 'No floor has room for a gauge: edges and cut-outs are inspected once the maskant is off.';
    return [remark(pen, none, width)];
  }
  return [
    ...table,
    ...remarksOn(page, floors).map((words) => remark(pen, words, width)),
    framedText(
      pen,
      [
        '**Under “least”: stop.** Write it below and call planning. Over “most”: cover every floor that is within limits, then back in for **minutes more = over aim ÷ last rate**, or less: no bare floor may go under its “least”. Gauge again.',
      ],
      { width },
    ),
  ];
}

function remarksOn({ plan, figures }: TravellerPage, floors: readonly InspectionPoint[]): string[] {
  const shown = floors.slice(0, MOST_POINTS);
  const asDepth = depthsOf(plan);
  return [
    ...(shown.some(({ region }) => asDepth.has(region))
      ? [
          '* A depth is required: aim, least and most are of a sheet of nominal thickness. Add what the sheet measured over it there, or subtract what it measured under.',
        ]
      : []),
    ...(shown.some(({ isToleranceUsual }) => isToleranceUsual)
      ? [
          `† The job gives no tolerance: ± ${figures.toleranceSaid(usualIn(DEPTH_TOLERANCE, figures).value)} stands in (common practice).`,
        ]
      : []),
    ...(floors.length > MOST_POINTS
      ? [
          `${floors.length - MOST_POINTS} more floors stand on the inspection sheet: gauge them all before anything is stripped.`,
        ]
      : []),
  ];
}

/** Regions of which a depth is required, and no thickness. */
function depthsOf({ regions }: EtchPlan): ReadonlySet<string> {
  return new Set(
    regions.filter(({ level, asked }) => level > 0 && asked.asThickness !== true).map(({ id }) => id),
  );
}

function stepsOf({ job, choices }: TravellerPage): (readonly [string, string])[] {
  const hydrogen: (readonly [string, string])[] = takesUpHydrogen(job)
    ? [
        [
          'Hydrogen',
          'What the material specification asks of metal that may have taken up hydrogen. Not a bake by habit.',
        ],
      ]
    : [];
  const isListed = choices.files.includes('inspection');
  return [
    [
      'Bought off, mask on',
      'Every floor between “least” and “most”. Quality signs before anything is stripped.',
    ],
    ['Strip', 'Sealer and maskant off; no metal tool on the part.'],
    ['Deoxidise, rinse, dry', 'By the process specification; faces even, no smut, no stain.'],
    ...hydrogen,
    [
      'Final inspection',
      isListed
        ? 'Inspection sheet of this plan, filled in and stapled to this page. No pits; edges without notches.'
        : 'Thickness, edges and lands by the drawing. No pits; edges without notches.',
    ],
    ['Protect', 'Dry, wrapped, floors padded. Bath and rinse water booked as waste.'],
  ];
}
