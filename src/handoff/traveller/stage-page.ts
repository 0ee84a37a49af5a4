/**
 * A page a stage: what to peel, when to take it out to gauge, the picture, and the steps in the order of the hand. The sum uses metal
 * gone, so that a sheet off nominal can't spoil it; only the last stage aims at a thickness, where one is required.
 */
import { idRuns } from '#handoff/id-runs.ts';
import { flowText } from '#handoff/pdf/flow-text.ts';
import { type FormCell, formTable, framed } from '#handoff/pdf/form-table.ts';
import { FRAME_INK, RULE_INK, TYPE } from '#handoff/pdf/paper-type.ts';
import { drawMarkSample } from '#handoff/pdf/part-marks.ts';
import type { PageBox, Pen } from '#handoff/pdf/pen.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import { PICTURE_EDGE, stageKey, stagePicture } from '#handoff/pdf/stage-picture.ts';
import { stageWords } from '#handoff/stage-words.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { outerCount } from './cover-page.ts';
import { type GaugePoint, gaugedIn } from './gauge-points.ts';
import { turnOverWords } from './other-face.ts';
import { needsDesmut } from './shop-words.ts';
import { aimsAtThickness, type StageSum, stageSum, thicknessAround } from './stage-sum.ts';
import type { TravellerPage } from './traveller-page.ts';

/** mm */
const BAND = 18.5;
const GAP = 1;
const LEAST_PICTURE = 40;
/** Six readings and their steps; what a new coat adds, and lengths in two units. */
const BESIDE_PICTURE = { steps: 150, recoat: 20, secondUnit: 12 };
/** Sums of many heights are off by less. */
const SPARE = 0.1;
/** Step numbers go by tens, the stages after those up to the bath. */
const FIRST_STAGE = 120;
const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

export function stagePage(stage: number): number {
  return FIRST_STAGE + 10 * (stage - 1);
}

/** mm that the picture has beside full steps and readings; it takes all that shorter ones leave, and yields to longer ones. */
export function usualPictureHeight({
  height,
  isRemasked,
  isInBoth,
}: {
  readonly height: number;
  readonly isRemasked: boolean;
  readonly isInBoth: boolean;
}): number {
  const { steps, recoat, secondUnit } = BESIDE_PICTURE;
  const taken = steps + (isRemasked ? recoat : 0) + (isInBoth ? secondUnit : 0);
  return Math.max(LEAST_PICTURE, height - BAND - taken);
}

export function stageBlocks(page: TravellerPage, stage: Stage): Block[] {
  const { plan, width, height } = page;
  const points = gaugedIn(stage, plan, page.gauged);
  const key = stageKey(plan, stage, width, points.length > 0);
  const steps = stepRows(page, stage, points).map((blocks) => framed(blocks, width));
  const others = [key, ...steps].reduce((sum, block) => sum + block.height, BAND + 2 * GAP + PICTURE_EDGE);
  const most = Math.max(LEAST_PICTURE, height - others - SPARE);
  return [
    band(page, stage, points),
    gap(GAP),
    stagePicture(plan, stage, { width, height: most }, { points, unit: page.figures.units[0] }),
    key,
    gap(GAP),
    ...steps.slice(0, -2),
    // Where the steps do not fit, none stands alone on the next page.
    ...together(steps.slice(-2)),
  ];
}

function band(page: TravellerPage, stage: Stage, points: readonly GaugePoint[]): Block {
  const { plan, width, job, figures } = page;
  const { isByClock, outAt } = stageSum(stage, { process: job.process, points });
  const shares = [93, 29, 29, 29];
  const total = 180;
  const [wide = 0, cell = 0] = shares.map((share) => (share / total) * width);
  return {
    height: BAND,
    draw: (pen, { left, top }) => {
      const box = (at: number, size: number): PageBox => ({
        minX: left + at,
        maxX: left + at + size,
        minY: top - BAND,
        maxY: top,
      });
      const rule = { width: RULE_INK, color: INK };
      const title = { size: TYPE.figure, isBold: true };
      const heading = `Stage ${stage.number} of ${plan.stages.length}`;
      pen.text(heading, { x: left + 2, y: top - 7.4 }, title);
      const x = left + 4 + pen.textWidth(heading, title);
      if (stage.lines.length > 0 && x + 20 < left + wide) {
        drawMarkSample(
          pen,
          { minX: x, maxX: Math.min(x + 24, left + wide - 2), minY: top - 8.6, maxY: top - 1.4 },
          stage.number,
        );
      }
      const peel = flowText(pen, peelWords(page, stage), { width: wide - 4, size: TYPE.text });
      peel.draw(pen, { x: left + 2, y: top - 9.3 });
      const [etch, second] = figures.lengths(stage.etch, { isGiven: true });
      figureCell(pen, box(wide, cell), {
        label: 'Etch',
        figure: etch,
        unit: figures.units[0],
        below: second === undefined ? undefined : `${second} ${figures.units[1]}`,
      });
      figureCell(pen, box(wide + cell, cell), {
        label: 'Minutes as planned',
        figure: stage.minutes.toFixed(1),
        unit: 'min',
      });
      const out = box(wide + 2 * cell, cell);
      pen.rectangle(out, { fill: INK });
      figureCell(pen, out, {
        label: isByClock ? 'By the clock: out at' : 'Out to gauge at',
        figure: outAt.toFixed(1),
        unit: 'min',
        color: '#ffffff',
      });
      for (const each of [box(0, wide), box(wide, cell), box(wide + cell, cell)])
        pen.rectangle(each, { stroke: rule });
      pen.rectangle(box(0, width), { stroke: { width: FRAME_INK / 2, color: INK } });
    },
  };
}

interface FigureCell {
  readonly label: string;
  readonly figure: string;
  readonly unit: string;
  readonly below?: string | undefined;
  readonly color?: string;
}

function figureCell(
  pen: Pen,
  { minX, maxY }: PageBox,
  { label, figure, unit, below, color = INK }: FigureCell,
): void {
  pen.text(label, { x: minX + 1.4, y: maxY - 3.2 }, { size: TYPE.label, color });
  const style = { size: TYPE.figure, isBold: true, color };
  pen.text(figure, { x: minX + 1.4, y: maxY - 10 }, style);
  pen.text(unit, { x: minX + 2.4 + pen.textWidth(figure, style), y: maxY - 10 }, { size: TYPE.note, color });
  if (below !== undefined)
    pen.text(below, { x: minX + 1.4, y: maxY - 14 }, { size: TYPE.text, isBold: true, color });
}

function peelWords({ plan }: TravellerPage, { regions, piece, number, lines }: Stage): string {
  const count = outerCount(piece);
  if (count === 0) return 'Nothing is peeled on this face.';
  // Where an earlier stage lies all around, its lines are cut already.
  const ticks =
    lines.length === 0
      ? 'no line of its own'
      : `lines with **${NUMBERS[number] ?? number} ${number === 1 ? 'tick' : 'ticks'}**`;
  const what = plan.masking === 're-mask' ? 'Peel the window over' : 'Peel';
  const ids = idRuns(regions);
  const names = ids.length > 60 ? `${regions.length} floors` : ids;
  return `${what} **${names}**: ${count === 1 ? '1 piece' : `${count} pieces`}, ${ticks}.`;
}

/** The rows of steps, each with its letter; what belongs together stands on one page. */
function stepRows(page: TravellerPage, stage: Stage, points: readonly GaugePoint[]): Block[][] {
  const { plan, job, pen, width } = page;
  const sum = stageSum(stage, { process: job.process, points });
  const steps: (readonly [text: string] | 'gauge')[] = [];
  if (plan.masking === 're-mask' && stage.number > 1) {
    steps.push([
      '**Recoat.** Old maskant off; rinsed, desmutted and dry; water film whole. New maskant on all faces and edges, walls and floors too; dry film _14_ _14_; cured.',
    ]);
    steps.push([
      `**Cut** the lines of this stage and no other, ${stage.lines.length} in all, through the maskant, metal not scored.`,
    ]);
  }
  steps.push([`**Peel.** A second person looks: ${checkWords(page, stage, points)}`]);
  for (const words of turnOverWords(page, stage)) steps.push([words]);
  const dip = 'In [17] out [17] minutes [16] bath [13] °C';
  if (sum.isByClock) {
    steps.push([
      `**One dip, by the clock, ${stage.minutes.toFixed(1)} min.** ${dipRule(points.length > 0)}\n${dip}`,
    ]);
  } else {
    steps.push([
      `**First dip, ${sum.outAt.toFixed(1)} min.** ${dip}\nIn: part fully under. Out: first rinse water on it. Turn or lift every _8_ min. 0.1 min is 6 s.`,
    ]);
    steps.push('gauge');
    steps.push([minutesLeftWords(page, stage, { ...sum, points })]);
    steps.push(['**Second dip, for the minutes left.** In [21] out [21] minutes [19]']);
  }
  steps.push([endWords(page, stage, { ...sum, points })]);
  const columns = [
    { share: 9, isBold: true, align: 'middle' },
    { share: 141 },
    { share: 15 },
    { share: 15 },
  ] as const;
  return steps.map((step, index) => {
    const letter = String.fromCharCode(97 + index);
    if (step === 'gauge') return gaugeTable(page, stage, { points, letter });
    const heads = index === 0 ? ['', 'In this order', 'Initials', 'Stamp'] : undefined;
    return formTable(pen, {
      columns: columns.map((column, place) => ({
        ...column,
        ...(heads === undefined ? {} : { head: heads[place] ?? '' }),
      })),
      rows: [[letter, step[0], '', '']],
      width,
      row: 9,
    });
  });
}

function checkWords({ plan }: TravellerPage, stage: Stage, points: readonly GaugePoint[]): string {
  const count = outerCount(stage.piece);
  const these =
    count === 0
      ? 'nothing more on this face'
      : count === 1
        ? 'this piece and no other'
        : `these ${NUMBERS[count] ?? count} pieces and no others`;
  const later = plan.stages.filter(({ number, lines }) => number > stage.number && lines.length > 0);
  if (plan.masking === 're-mask') return `${these} bare; all else coated; edges down.`;
  const open = later.length === 0 ? '' : `; no line of ${stageWords(later.map(({ number }) => number))} open`;
  const gauge = points.length === 0 ? '' : ' Gauge the new floors and write column 1.';
  return `${these}${open}; edges down.${gauge}`;
}

function dipRule(isGauged: boolean): string {
  const why = isGauged
    ? 'So thin a stage can’t be corrected by a gauge.'
    : 'No floor is wide enough to gauge.';
  return `${why} In: part fully under. Out: first rinse water on it.`;
}

function minutesLeftWords(
  page: TravellerPage,
  stage: Stage,
  { gone, outAt, points }: StageSum & { readonly points: readonly GaugePoint[] },
): string {
  const { figures } = page;
  const limits = `**Under ${figures.said(gone.least, { round: 'up' })} or over ${figures.said(gone.most, { round: 'down' })} gone: the part stays out, ask planning.**`;
  const planned = `Planned: ${(stage.minutes - outAt).toFixed(1)} min left. Under half a minute: don’t go back in.`;
  if (aimsAtThickness(page, stage, points)) {
    return `**Minutes left** = minutes in [16] × over aim [15] ÷ gone [15] = [17]\nOver aim and gone: the middle of each column; expect ${figures.said(gone.expected)} gone. ${limits} ${planned}`;
  }
  const [etch] = figures.lengths(stage.etch, { isGiven: true });
  return `**Minutes left** = minutes in [17] × (${etch} − [15]) ÷ [15] = [19]\nBoth small boxes: the middle of “gone”${figures.units.length > 1 ? `, in ${figures.units[0]}` : ''}; expect ${figures.said(gone.expected)}. ${limits} ${planned}`;
}

function endWords(
  page: TravellerPage,
  stage: Stage,
  { isByClock, points }: StageSum & { readonly points: readonly GaugePoint[] },
): string {
  const desmut = needsDesmut(page.job) ? '**Rinse, desmut, rinse.**' : '**Rinse.**';
  const isLast = stage.number === page.plan.stages.length;
  const gauge =
    points.length === 0 ? '' : isByClock ? ' Gauge.' : ' Gauge at the same points; write column 3.';
  const cover =
    page.plan.masking === 're-mask'
      ? 'Floors that end with this stage get no more etch.'
      : isLast
        ? 'Maskant stays on until the final thickness is bought off.'
        : 'Edges of the maskant down; sealer whole.';
  return `${desmut}${gauge} ${cover} Next page only when this one is stamped.`;
}

function gaugeTable(
  page: TravellerPage,
  stage: Stage,
  { points, letter }: { readonly points: readonly GaugePoint[]; readonly letter: string },
): Block[] {
  const { pen, width, figures } = page;
  const { gone, oneOff } = stageSum(stage, { process: page.job.process, points });
  const { plus, minus } = page.job.stock;
  const isAimed = aimsAtThickness(page, stage, points);
  const rows = points.map((point): FormCell[] => {
    const { before, after } = thicknessAround(point, stage, page);
    const should = before - gone.expected;
    // A sheet within its tolerance is none to ask about.
    const [low, high] = [should - oneOff - minus, should + oneOff + plus];
    const outside = `${figures.length(low, { round: 'up' })}–${figures.length(high, { round: 'down' })}`;
    const aim = isAimed ? point.thickness.nominal : after;
    return [
      '',
      point.name,
      point.region,
      '',
      figures.length(should),
      twoUnits(outside, figures.length(low, { round: 'up' }), figures.length(high, { round: 'down' })),
      '',
      '',
      ...(isAimed ? [point.isAskedAsThickness ? figures.length(aim) : '–', ''] : [figures.length(after)]),
      '',
    ];
  });
  const end = isAimed
    ? ([
        { share: 17, head: 'aim', align: 'right', isBold: true },
        { share: 17, head: 'over aim:\n2 − aim' },
        { share: 18, head: '3 read at end' },
      ] as const)
    : ([
        { share: 17, head: '3 should be', align: 'right', isBold: true },
        { share: 28, head: '3 read at end; take to next page' },
      ] as const);
  return formTable(pen, {
    columns: [
      { share: 9, head: letter, align: 'middle', isBold: true },
      { share: 11, head: 'Gauge', isBold: true },
      { share: 13, head: 'Floor' },
      { share: isAimed ? 20 : 22, head: '1 last reading' },
      { share: 17, head: '2 should be', align: 'right', isBold: true },
      { share: 24, head: 'ask if outside', align: 'middle' },
      { share: isAimed ? 18 : 21, head: '2 read now' },
      { share: isAimed ? 16 : 18, head: 'gone:\n1 − 2' },
      ...end,
    ],
    rows,
    width,
    row: rows.length > 4 ? 7.6 : 8.8,
  });
}

/** Ranges line by line: both limits of a unit stand on one line. */
function twoUnits(one: string, low: string, high: string): string {
  const [lows, highs] = [low.split('\n'), high.split('\n')];
  return lows.length < 2 ? one : lows.map((each, i) => `${each}–${highs[i]}`).join('\n');
}
