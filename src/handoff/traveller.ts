/**
 * traveller.pdf: what the operator holds at the tank. Steps in order with their checks, a page a stage with what to peel and what
 * stays sealed or, with a coat a stage, what to coat and scribe anew, minutes, what must be measured, and boxes to write in. Every page carries the plan's hash.
 */
import { loopArea } from '#geometry/span.ts';
import type { Job, Masking } from '#job/job.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { cautionsFor } from './cautions.ts';
import { idRuns } from './id-runs.ts';
import type { PictureRoom } from './pdf/part-frame.ts';
import { makePdfPen } from './pdf/pdf-pen.ts';
import type { Paper, Pen } from './pdf/pen.ts';
import { type Block, drawBook, gap, heading, pageRoom, paragraph } from './pdf/sheet-book.ts';
import { stageKey, stagePicture } from './pdf/stage-picture.ts';
import { fields, table } from './pdf/table.ts';
import { sealedWords, stageWords } from './stage-words.ts';

export interface TravellerInput {
  readonly plan: EtchPlan;
  readonly job: Job;
  readonly planHash: string;
  readonly paper: Paper;
  readonly date: string | undefined;
  readonly issue?: string | undefined;
}

export async function traveller(input: TravellerInput): Promise<Uint8Array> {
  const { plan, job, planHash, paper, date, issue } = input;
  const title = 'Traveller: chemical milling';
  const pen = await makePdfPen({ title: `${title}, ${job.name}`, date });
  const page: Page = { ...input, pen, width: pageRoom(paper).width };
  const blocks = [
    ...opening(page),
    ...plan.stages.flatMap((stage) => stagePage(page, stage)),
    ...closing(page),
  ];
  drawBook(pen, { paper, head: { title, name: job.name, planHash, date, issue }, blocks });
  return pen.finish();
}

interface Page extends TravellerInput {
  readonly pen: Pen;
  /** mm */
  readonly width: number;
}

const say = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width });
const tick = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width, hasBox: true });
const head = ({ pen, width }: Page, text: string): Block => heading(pen, text, width);
const mm = (value: number): string => `${value.toFixed(3)} mm`;

function opening(page: Page): Block[] {
  const { job, plan, width, pen } = page;
  const { thickness, alloy, minus, plus } = job.stock;
  const sheet =
    typeof thickness === 'number'
      ? mm(thickness)
      : `tapered, ${thickness.fromValue.toFixed(3)} to ${mm(thickness.toValue)}`;
  const minutes = plan.stages.reduce((sum, stage) => sum + stage.minutes, 0);
  return [
    ...fields(
      pen,
      [
        ['Part', job.name, 'Part no. / serial', ''],
        [
          'Sheet',
          `${alloy ?? 'alloy not named'}, ${sheet} +${plus.toFixed(3)} −${minus.toFixed(3)}`,
          'Sheet as measured',
          '',
        ],
        ['Bath', job.process.bath ?? 'not named', 'Bath no. / checked', ''],
        ['Rate planned', `${plan.rate.toFixed(4)} mm/min`, 'Operator', ''],
        ['Run', `${counted(plan.stages.length, 'stage')}, ${minutes.toFixed(1)} min in the bath`, 'Date', ''],
      ],
      { shares: [1.1, 3, 1.4, 2], width, row: 7, labels: [0, 2] },
    ),
    gap(4),
    head(page, 'What can hurt'),
    ...cautionsFor(job.process).map((caution) => say(page, `! ${caution}`)),
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
    ...scribing(page),
    gap(3),
    ...table(
      pen,
      ['1  Clean', '2  Mask', '3  Scribe'].map((step) => [step, '', '', '']),
      {
        head: ['Step', 'Done by', 'Date and time', 'Checked by'],
        shares: [1.2, 2, 2, 2],
        width,
        row: 9,
        labels: [0],
      },
    ),
    gap(3),
    head(page, '4  Etch'),
    tick(
      page,
      'Coupon of the same alloy, temper and thickness etched just before; rate written on the page of each stage.',
    ),
    say(page, 'The stages follow, a page each, in the order of the run.'),
  ];
}

/**
 * Stages that have lines to seal over: one whose piece ends on earlier lines all round has none of its own, and with a coat
 * a stage no later line is cut yet.
 */
function laterWithLines(plan: EtchPlan, after: number): number[] {
  if (plan.masking === 're-mask') return [];
  return plan.stages
    .filter(({ number, lines }) => number > after && lines.length > 0)
    .map(({ number }) => number);
}

function scribing(page: Page): Block[] {
  if (page.plan.masking === 're-mask') {
    const first = page.plan.stages[0]?.lines.length ?? 0;
    return [
      tick(page, ONLY_THIS_STAGE.replace('this stage', 'stage 1')),
      tick(page, `Lines counted against the picture of stage 1: ${first}.`),
      tick(page, 'Each later stage has a coat of its own: coated and scribed as its page says, not before.'),
    ];
  }
  const later = laterWithLines(page.plan, 1);
  const count = 'Lines counted against the picture of each stage:';
  const counts = page.plan.stages.map(({ number, lines }) => `stage ${number}: ${lines.length}`).join(', ');
  return [
    tick(
      page,
      'Every line of every stage cut before the first dip, right through the maskant, metal not scored.',
    ),
    tick(page, `${count} ${counts}.`),
    ...(later.length === 0 ? [] : [tick(page, `Lines of ${stageWords(later)} sealed over.`)]),
  ];
}

/** Room for a stage's picture; with a coat a stage the boxes for it stand on the same page. */
export function travellerRoom(masking: Masking, width: number): PictureRoom {
  return masking === 're-mask' ? { width, height: 0.42 * width } : { width };
}

const ONLY_THIS_STAGE =
  'Lines of this stage cut, and of no other, right through the maskant, metal not scored.';

/** Before a later stage of a run with a coat a stage. */
function recoating(page: Page, { lines }: Stage): Block[] {
  return [
    tick(page, 'Old maskant off; rinsed, desmutted and dry; water film unbroken.'),
    tick(
      page,
      'New maskant on all that has been etched, walls and floors too, and on all faces and edges; dry and cured.',
    ),
    tick(page, ONLY_THIS_STAGE),
    tick(page, `Lines counted against the picture: ${lines.length}.`),
    gap(2),
  ];
}

function stagePage(page: Page, stage: Stage): Block[] {
  const { plan, width, pen } = page;
  const isRemasked = plan.masking === 're-mask';
  const sealed = laterWithLines(plan, stage.number);
  const stays = isRemasked ? 'all else stays coated' : sealedWords(sealed);
  const ticks = counted(stage.number, 'tick');
  const pieces = stage.piece.filter((loop) => loopArea(loop) > 0).length;
  const piece = pieces === 1 ? 'the piece' : `the ${pieces} pieces`;
  const title = `Stage ${stage.number} of ${plan.stages.length}: ${isRemasked ? 'coat, scribe, peel' : 'peel'}, then ${stage.minutes.toFixed(1)} minutes`;
  return [
    { ...head(page, title), startsPage: true },
    ...(isRemasked && stage.number > 1 ? recoating(page, stage) : []),
    say(
      page,
      `Peel ${piece} hatched close and nothing else; ${stays}. Mark of this stage: ${ticks} across its line in each repeat. Etch ${mm(stage.etch)} at ${plan.rate.toFixed(4)} mm/min; at the coupon’s rate: minutes = ${stage.etch.toFixed(3)} / rate.`,
    ),
    stagePicture(plan, stage, travellerRoom(plan.masking, width)),
    stageKey(plan, stage, width),
    gap(1),
    ...table(pen, floorRows(page, stage), {
      head: ['Stage', 'Regions', 'depth mm', 'thickness mm', 'read', 'read', 'read'],
      shares: [0.7, 3, 1.2, 1.4, 1.4, 1.4, 1.4],
      width,
      row: 7,
    }),
    gap(3),
    ...table(pen, [['', '', '', '', '', '', '', '']], {
      head: ['Coupon before', 'after', 'minutes', 'rate', 'Minutes to go', 'Time in', 'Time out', 'Bath °C'],
      shares: [1.4, 1, 1, 1, 1.3, 1, 1, 1],
      width,
      row: 8,
    }),
    gap(2),
    tick(
      page,
      `Peeled as shown and nothing else; edges of the maskant down${isRemasked ? '' : '; no line of a later stage open'}.`,
    ),
    tick(
      page,
      isRemasked
        ? 'Rinsed, looked over, gauged while this coat is on: floors that end with this stage get no more etch. Minutes of the next stage corrected by the readings.'
        : 'Rinsed, looked over, gauged; minutes of the next stage corrected by the readings.',
    ),
    ...fields(pen, [['Done by', '', 'Checked by', '']], {
      shares: [1, 3, 1, 3],
      width,
      row: 9,
      labels: [0, 2],
    }),
  ];
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** Every floor that has been bare so far, with what it should have come to at the end of this stage. */
function floorRows({ plan, job }: Page, stage: Stage): string[][] {
  const next = plan.stages.find(({ number }) => number === stage.number + 1)?.level ?? 0;
  const isRemasked = plan.masking === 're-mask';
  return plan.stages
    .filter(({ number }) => isRemasked || number <= stage.number)
    .map(({ number, level, regions }) => {
      const depth = isRemasked ? Math.min(level, stage.level) : level - next;
      const left = leftWords(plan, job, { regions, depth });
      return [String(number), idRuns(regions), depth.toFixed(3), left, '', '', ''];
    });
}

/** What is left below the floors: of a tapered sheet from where it is thinnest to where it is thickest. */
function leftWords(
  plan: EtchPlan,
  { stock }: Job,
  { regions, depth }: { readonly regions: readonly string[]; readonly depth: number },
): string {
  const loops = plan.regions.filter(({ id }) => regions.includes(id)).flatMap((region) => region.loops);
  const { least, most } = thicknessOver(stock.thickness, loops);
  const [thin, thick] = [least - depth, most - depth].map((left) => left.toFixed(3));
  return thin === thick ? String(thin) : `${thin} to ${thick}`;
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
      page.pen,
      ['Operator', 'Inspector', 'Released by'].map((who) => [who, '', '', '']),
      {
        head: ['', 'Name', 'Signature', 'Date'],
        shares: [1, 2, 2, 1],
        width: page.width,
        row: 10,
        labels: [0],
      },
    ),
  ];
}
