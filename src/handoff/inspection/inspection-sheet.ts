/**
 * inspection-sheet.pdf: what the finished part must measure, ballooned on its picture and listed with least and most, so that nobody does
 * sums; the same figures in inspection-points.csv. A part that is etched on both faces has pages of each, the far one as seen from it.
 */

import type { Point } from '#geometry/point.ts';
import { mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import type { PaperFigures } from '#handoff/paper-figures.ts';
import { drawingWords, paperOwner } from '#handoff/paper-heading.ts';
import { formBoxes, formTable, framed } from '#handoff/pdf/form-table.ts';
import type { SheetFonts } from '#handoff/pdf/load-fonts.ts';
import { drawPapers, pageCount, paperRoom, remark } from '#handoff/pdf/paper-book.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { usualIn } from '#job/fields/field.ts';
import { DEPTH_TOLERANCE } from '#job/fields/requirement-fields.ts';
import type { Job } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { mirrorPlan } from '#plan/mirror-plan.ts';
import { type Balloon, type BalloonedFace, balloonPicture } from './balloon-picture.ts';
import type { InspectionItem } from './inspection-items.ts';
import type { InspectionPoint } from './inspection-points.ts';

export interface InspectionSheetInput {
  readonly plan: EtchPlan;
  readonly job: Job;
  readonly planHash: string;
  readonly choices: Pick<HandoffChoices, 'paper' | 'date' | 'heading' | 'issue'>;
  readonly figures: PaperFigures;
  /** The roomiest of each region, etched ones alone. */
  readonly floors: readonly InspectionPoint[];
  readonly items: readonly InspectionItem[];
  /** Those of all sheets of the hand-off. */
  readonly fonts?: SheetFonts | undefined;
}

/** mm */
const MOST_PICTURE = 90;
/** Shares of it. */
const SMALLER = 0.85;
const SMALLEST = 0.7;

const KINDS = { edge: 'Edge', land: 'Land', fillet: 'Fillet' } as const;

export async function inspectionSheet(input: InspectionSheetInput): Promise<Uint8Array> {
  const { plan, job, planHash, choices, fonts } = input;
  const { paper, date } = choices;
  const pen = await makePdfPen({ title: `Inspection, ${job.name}`, date, fonts });
  const [near, far] = facesOf(input);
  const width = paperRoom(paper).width;
  const head = framed(
    headRows(input).map((boxes) => formBoxes(pen, boxes, { width, height: 9 })),
    width,
  );
  drawPapers(pen, {
    paper,
    head: {
      title: 'Inspection sheet',
      ...paperOwner(input),
      planHash,
    },
    parts: [
      {
        subtitle: plan.far === undefined ? LISTED : `Near face: ${lowered(LISTED)}`,
        blocks: faceBlocks(pen, near, input, [head, gap(2)]),
      },
      ...(far === undefined
        ? []
        : [
            {
              subtitle: `Far face, seen from it: ${lowered(LISTED)}`,
              blocks: faceBlocks(pen, far, input),
            },
          ]),
    ],
  });
  return pen.finish();
}

const LISTED = 'Thickness, edges, lands, fillets';

function lowered(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What is measured on a face, with its numbers in the list, which runs on over both. */
interface InspectedFace extends Omit<BalloonedFace, 'balloons'> {
  readonly floors: readonly InspectionPoint[];
  readonly items: readonly InspectionItem[];
  readonly first: number;
}

function facesOf({ plan, floors, items }: InspectionSheetInput): [InspectedFace, InspectedFace?] {
  const of = (side: 'far' | undefined) => ({
    floors: floors.filter(({ face }) => face === side),
    items: items.filter(({ face }) => face === side),
  });
  const near = { plan, datum: 'left' as const, first: 1, ...of(undefined) };
  if (plan.far === undefined) return [near];
  const { floors: gauged, items: measured } = of('far');
  const seen = (at: Point): Point => mirrorPoint(at, 0);
  return [
    near,
    {
      plan: mirrorPlan(plan.far, 0),
      datum: 'right',
      first: 1 + near.floors.length + near.items.length,
      floors: gauged.map((each) => ({ ...each, at: seen(each.at) })),
      items: measured.map((each) => ({ ...each, from: seen(each.from), to: seen(each.to) })),
    },
  ];
}

function faceBlocks(
  pen: Pen,
  face: InspectedFace,
  { choices: { paper }, figures }: InspectionSheetInput,
  above: readonly Block[] = [],
): readonly Block[] {
  const { plan, floors, items, first } = face;
  const { width, height } = paperRoom(paper);
  const rows = rowsOf(face, figures);
  const balloons = [
    ...floors.map(({ at }) => ({ at, kind: 'point' as const })),
    ...items.map(({ from, to, kind }) => ({ at: to, from, kind })),
  ].map((each, index): Balloon => ({ ...each, number: first + index }));
  const ask = plan.regions.some(({ level, asked }) => level > 0 && asked.asThickness !== true);
  const below = [
    ...formTable(pen, {
      columns: [
        { share: 11, head: 'No.', align: 'middle', isBold: true },
        { share: 20, head: 'Kind' },
        { share: 47, head: 'What' },
        { share: 19, head: `Nominal, ${figures.named}`, align: 'right', isBold: true },
        { share: 16, head: '±', align: 'right' },
        { share: 17, head: 'Least', align: 'right' },
        { share: 17, head: 'Most', align: 'right' },
        { share: 20, head: `Read, ${figures.units[0]}` },
        { share: 13, head: 'In / out' },
      ],
      rows,
      width,
      row: 6.2,
    }),
    ...together([
      remark(
        pen,
        `± of thickness: ${thicknessWords(floors, figures)}. ± of edges and lands: the drawing’s where it gives one, else what the run is expected to hold (root-sum-square of the line budget, each stage gauged); of fillets a tenth of the depth. Edges are read where the wall meets the higher floor.${ask ? ' Thickness of floors that a depth is asked of is for a sheet of nominal thickness: add what the sheet measured over it.' : ''}`,
        width,
      ),
      gap(1),
      formBoxes(
        pen,
        [
          { label: 'Inspected by (name, stamp)', share: 60 },
          { label: 'Date', share: 30 },
          { label: 'Out of limits: number, and who decided what', share: 90 },
        ],
        { width, height: 9.5 },
      ),
    ]),
  ];
  const blocksWith = (pictureHeight: number): Block[] => [
    ...above,
    balloonPicture({ ...face, balloons }, { width, height: pictureHeight }, figures.units[0]),
    gap(2),
    ...below,
  ];
  const usual = Math.min(MOST_PICTURE, height * 0.36);
  const pagesWith = (share: number) => pageCount(paper, blocksWith(usual * share));
  // A smaller picture, where that saves a page.
  const most = pagesWith(1);
  const share = [SMALLER, SMALLEST].find((each) => pagesWith(each) < most) ?? 1;
  return blocksWith(usual * share);
}

function headRows({ job, choices: { heading } }: InspectionSheetInput) {
  return [
    [
      {
        label: 'Part',
        value: heading.part === undefined ? job.name : `${heading.part}  ${job.name}`,
        share: 90,
      },
      { label: 'Drawing and revision', value: drawingWords(heading, job.drawing), share: 50 },
      { label: 'Sheet lot', value: heading.lot, share: 40 },
    ],
    [
      { label: 'Thickness gauge no.', share: 45 },
      { label: 'Checked on block', share: 45 },
      { label: 'Rule, scope or CMM no.', share: 50 },
      { label: 'Part temperature, °C', share: 40 },
    ],
  ];
}

/** Whose the ± of floors is: nobody may take the usual figure for the drawing’s. */
function thicknessWords(floors: readonly InspectionPoint[], figures: PaperFigures): string {
  return floors.some(({ isToleranceUsual }) => isToleranceUsual)
    ? `the drawing’s; where it says “usual” the job gives none, and ± ${figures.toleranceSaid(usualIn(DEPTH_TOLERANCE, figures).value)} stands in (common practice)`
    : 'the drawing’s';
}

function rowsOf({ floors, items, first }: InspectedFace, figures: PaperFigures): string[][] {
  const listed: Listed[] = [
    ...floors.map(({ region, thickness, isToleranceUsual }) => ({
      kind: 'Thickness',
      what: `floor of ${region}`,
      ...thickness,
      isToleranceUsual,
    })),
    ...items.map(({ kind, what, nominal, tolerance }) => ({
      kind: KINDS[kind],
      what,
      nominal,
      plus: tolerance,
      minus: tolerance,
    })),
  ];
  // One column, one number of places: those of the finest tolerance in it.
  const tolerance = Math.min(...listed.flatMap(({ plus, minus }) => [plus, minus]));
  return listed.map((each, index) => [String(first + index), ...rowOf(each, figures, tolerance), '', '']);
}

interface Listed {
  readonly kind: string;
  readonly what: string;
  readonly nominal: number;
  readonly plus: number;
  readonly minus: number;
  readonly isToleranceUsual?: boolean | undefined;
}

function rowOf(
  { kind, what, nominal, plus, minus, isToleranceUsual }: Listed,
  figures: PaperFigures,
  tolerance: number,
): string[] {
  const least = figures.length(nominal - minus, { tolerance, round: 'up' });
  const most = figures.length(nominal + plus, { tolerance, round: 'down' });
  const [down, up] = [minus, plus].map((each) => figures.lengths(each, { tolerance, round: 'down' }));
  const off = (up ?? [])
    .map((each, unit) => (plus === minus ? each : `+${each}\n−${down?.[unit]}`))
    .join('\n');
  return [
    kind,
    what,
    figures.length(nominal, { tolerance }),
    isToleranceUsual === true ? `${off}\nusual` : off,
    least,
    most,
  ];
}
