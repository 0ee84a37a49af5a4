/** The heading of a paper: part, drawing, material, lot, specification, who planned and who approves; empty boxes for what is not given. */
import { aspectOf, isDrawnMirrored } from '#job/aspect-of.ts';
import type { Job } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import { fileNameOf } from '#units/file-name-of.ts';
import type { PaperFigures } from './paper-figures.ts';
import { formBoxes, framed } from './pdf/form-table.ts';
import type { PaperOwner } from './pdf/paper-book.ts';
import type { Pen } from './pdf/pen.ts';
import type { Block } from './pdf/sheet-book.ts';

export interface HeadingInput {
  readonly job: Job;
  readonly choices: Pick<HandoffChoices, 'heading' | 'issue' | 'date'>;
}

/** On every page, so that no part is taken for another, nor for its other hand. */
export function paperOwner({ job, choices }: HeadingInput): PaperOwner {
  const { heading, issue } = choices;
  const { part, face, isOpposite = false } = aspectOf(job);
  return {
    part: heading.part ?? part,
    isNumber: heading.part !== undefined,
    hand: isOpposite ? OPPOSITE_HAND : 'as drawn',
    face: face === 'far' ? 'FAR' : face,
    issue: issue.number,
    serial: heading.serial,
  };
}

const OPPOSITE_HAND = 'OPPOSITE';
const ROW = 9.2;

export function headingBlock(
  { job, choices }: HeadingInput,
  { pen, width }: { readonly pen: Pen; readonly width: number },
): Block {
  const { heading, issue, date } = choices;
  const aspect = aspectOf(job);
  const { hand, face } = paperOwner({ job, choices });
  const mirrored = isDrawnMirrored(aspect) ? ', mirrored about x = 0' : '';
  const rows = [
    [
      { label: 'Part', value: nameAndNumber(aspect.part, heading.part), share: 60 },
      {
        label: 'Drawing and revision',
        value: `${drawingWords(choices.heading, job.drawing)}${mirrored}`,
        share: 46,
      },
      {
        label: face === undefined ? 'Hand' : 'Hand and face',
        value: joined([hand, face && `${face} face`]),
        share: 26,
      },
      { label: 'Quantity', value: heading.quantity, share: 16 },
      { label: 'Issue and date', value: joined([issue.number, date]), share: 32 },
    ],
    [
      { label: 'Material and temper', value: job.stock.material?.name, share: 68 },
      { label: 'Material specification', share: 40 },
      { label: 'Sheet lot', value: heading.lot, share: 36 },
      { label: 'Serial', value: heading.serial, share: 36 },
    ],
    [
      { label: 'Process specification', value: heading.specification, share: 60 },
      { label: 'Planned by', value: issue.by, share: 32 },
      { label: 'Approved by (sign)', value: heading.approvedBy, share: 52 },
      { label: 'Date approved', share: 36 },
    ],
  ];
  return framed(
    rows.map((boxes) => formBoxes(pen, boxes, { width, height: ROW })),
    width,
  );
}

function nameAndNumber(name: string, number: string | undefined): string {
  return number === undefined ? name : `${number}  ${name}`;
}

/** The number where one is given, else the file. */
export function drawingWords({ drawing, revision }: HandoffChoices['heading'], file: string): string {
  const name = drawing ?? fileNameOf(file);
  return revision === undefined ? name : `${name} rev ${revision}`;
}

/** How thick the sheet comes, with its tolerance. */
export function sheetSaid(
  { thickness, plus, minus }: Pick<Job['stock'], 'thickness' | 'plus' | 'minus'>,
  figures: PaperFigures,
): string {
  const thick =
    typeof thickness === 'number'
      ? figures.said(thickness, { isGiven: true })
      : `tapered, ${figures.said(thickness.fromValue)} to ${figures.said(thickness.toValue)}`;
  const off =
    plus === minus
      ? `± ${figures.toleranceSaid(plus)}`
      : `+${figures.toleranceSaid(plus)} −${figures.toleranceSaid(minus)}`;
  return `${thick} ${off}`;
}

function joined(parts: readonly (string | undefined)[]): string {
  return parts.filter((each) => each !== undefined).join(', ');
}
