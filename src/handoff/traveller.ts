/**
 * traveller.pdf: what the operator holds at the tank. Steps in order with their checks, a page a stage with what to peel and what
 * stays sealed, minutes, what must be measured, and boxes to write in. Every page carries the plan's hash.
 */
import type { Job } from '#part/job.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { CAUTIONS } from './cautions.ts';
import { makePdfPen } from './pdf/pdf-pen.ts';
import type { Paper, Pen } from './pdf/pen.ts';
import { type Block, drawBook, pageWidth, paragraph, table } from './pdf/sheet-book.ts';
import { stagePicture } from './pdf/stage-picture.ts';

export interface TravellerInput {
  readonly plan: EtchPlan;
  readonly job: Job;
  readonly planHash: string;
  readonly paper: Paper;
  readonly date: string | undefined;
}

export async function traveller(input: TravellerInput): Promise<Uint8Array> {
  const { plan, job, planHash, paper, date } = input;
  const title = 'Traveller: chemical milling';
  const pen = await makePdfPen({ title: `${title}, ${job.name}`, date });
  const page: Page = { ...input, pen, width: pageWidth(paper) };
  const blocks = [
    ...opening(page),
    ...plan.stages.flatMap((stage) => stagePage(page, stage)),
    ...closing(page),
  ];
  drawBook(pen, { paper, head: { title, name: job.name, planHash, date }, blocks });
  return pen.finish();
}

interface Page extends TravellerInput {
  readonly pen: Pen;
  /** mm */
  readonly width: number;
}

const say = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width });
const tick = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width, hasBox: true });
const head = ({ pen, width }: Page, text: string): Block =>
  paragraph(pen, text, { width, size: 4, isBold: true });
const gap = (height: number): Block => ({ height, draw: () => undefined });
const mm = (value: number): string => `${value.toFixed(3)} mm`;

function opening(page: Page): Block[] {
  const { job, plan, width } = page;
  const { thickness, alloy, minus, plus } = job.stock;
  const sheet = typeof thickness === 'number' ? mm(thickness) : 'tapered, see the plan';
  const minutes = plan.stages.reduce((sum, stage) => sum + stage.minutes, 0);
  return [
    ...table(
      [
        [
          'Sheet',
          `${alloy ?? 'alloy not named'}, ${sheet} +${plus.toFixed(3)} −${minus.toFixed(3)}`,
          'Part no. / serial',
          '',
        ],
        ['Bath', job.process.bath ?? 'not named', 'Sheet as measured', ''],
        ['Rate planned', `${plan.rate.toFixed(4)} mm/min`, 'Operator', ''],
        ['Run', `${plan.stages.length} stages, ${minutes.toFixed(1)} min in the bath`, 'Date', ''],
      ],
      { shares: [1.1, 3, 1.4, 2], width, row: 7 },
    ),
    gap(4),
    head(page, 'What can hurt'),
    ...CAUTIONS.map((caution) => say(page, `! ${caution}`)),
    gap(3),
    head(page, '1  Clean'),
    tick(page, 'Degreased, deoxidised and rinsed by the process specification; water film unbroken.'),
    tick(page, 'From here on no bare hands on the surface.'),
    head(page, '2  Mask'),
    tick(
      page,
      'Maskant on all faces and edges, dry and cured; film thickness and peel adhesion checked on a trial strip.',
    ),
    head(page, '3  Scribe'),
    tick(
      page,
      'Every line of every stage cut before the first dip, right through the maskant, metal not scored.',
    ),
    tick(
      page,
      `Lines of stage ${plan.stages.length > 1 ? '2 and later' : '2, if any,'} sealed over; lines counted against the picture of each stage.`,
    ),
    head(page, '4  Etch'),
    tick(
      page,
      'Coupon of the same alloy, temper and thickness etched just before; rate written on the page of each stage.',
    ),
  ];
}

function stagePage(page: Page, stage: Stage): Block[] {
  const { plan, width } = page;
  const later = plan.stages.filter(({ number }) => number > stage.number).map(({ number }) => number);
  const sealed = later.length === 0 ? 'nothing is sealed any more' : `stage ${later.join(', ')} stays sealed`;
  const [first, ...rest] = table(
    [
      ['Coupon before', 'after', 'minutes', 'rate', 'Time in', 'Time out', 'Bath °C'],
      ['', '', '', '', '', '', ''],
    ],
    { shares: [1.3, 1, 1, 1, 1, 1, 1], width, row: 7 },
  );
  return [
    {
      ...head(
        page,
        `Stage ${stage.number} of ${plan.stages.length}: peel, then ${stage.minutes.toFixed(1)} minutes`,
      ),
      startsPage: true,
    },
    say(
      page,
      `Peel what is hatched close; hatched wide is bare already; dashed lines are sealed: ${sealed}. Mark of this stage: ${stage.number} ${stage.number === 1 ? 'tick' : 'ticks'} across its line in each repeat. Etch ${mm(stage.etch)}, at ${plan.rate.toFixed(4)} mm/min; with another rate: minutes = ${stage.etch.toFixed(3)} / rate.`,
    ),
    stagePicture(plan, stage, width),
    ...table(floorRows(page, stage), { shares: [0.7, 3, 1.2, 1.4, 1.4, 1.4, 1.4], width, row: 7 }),
    gap(3),
    ...(first === undefined ? [] : [first, ...rest]),
    gap(2),
    tick(page, 'Peeled as shown and nothing else; edges of the maskant down; no line of a later stage open.'),
    tick(page, 'Rinsed, looked over, gauged; minutes of the next stage corrected by the readings.'),
    ...table([['Done by', '', 'Checked by', '']], { shares: [1, 3, 1, 3], width, row: 9 }),
  ];
}

/** Every floor that is bare so far, with what it should have come to at the end of this stage. */
function floorRows({ plan, job }: Page, stage: Stage): string[][] {
  const { thickness } = job.stock;
  const next = plan.stages.find(({ number }) => number === stage.number + 1)?.level ?? 0;
  const rows = plan.stages
    .filter(({ number }) => number <= stage.number)
    .map(({ number, level, regions }) => {
      const depth = level - next;
      const left = typeof thickness === 'number' ? (thickness - depth).toFixed(3) : 'sheet − depth';
      const names =
        regions.length > 8 ? `${regions.slice(0, 6).join(' ')} … (${regions.length})` : regions.join(' ');
      return [String(number), names, depth.toFixed(3), left, '', '', ''];
    });
  return [['Stage', 'Regions', 'depth mm', 'thickness mm', 'read', 'read', 'read'], ...rows];
}

function closing(page: Page): Block[] {
  return [
    { ...head(page, '5  Demask'), startsPage: true },
    tick(page, 'Rinsed and desmutted by the process specification; all maskant and sealer off; no residue.'),
    tick(page, 'Bake against hydrogen, if the material specification asks for one.'),
    head(page, '6  Inspect'),
    tick(page, 'Gauged at the inspection points; thickness, line position and floor roughness written down.'),
    tick(page, 'Edges of steps free of notches and of etch under the maskant; no pits.'),
    tick(page, 'Spent bath and rinse water handed over as regulated waste.'),
    gap(4),
    ...table(
      [
        ['', 'Name', 'Signature', 'Date'],
        ['Operator', '', '', ''],
        ['Inspector', '', '', ''],
        ['Released by', '', '', ''],
      ],
      { shares: [1, 2, 2, 1], width: page.width, row: 10 },
    ),
  ];
}
