/** What the job chooses to hand off beside plan.json and scribe.dxf: the `handoff` key of the job file, all of it optional. */

import * as z from 'zod/mini';
import { SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import { HANDOFF_FILES, MOST_NUMBERED } from '#job/handoff-list.ts';
import { ownChoice } from '#job/sources.ts';
import { program, scribe } from './cutting-fields.ts';
import { open, usually } from './field.ts';
import { optionalGroup } from './group.ts';
import { choice, date, length, point, raw, text } from './kinds.ts';
import { template } from './template-fields.ts';

/** More than a reviewer looks through, and as many as a file's name can count. */
export const MOST_SECTIONS = MOST_NUMBERED;

/** As much as the head of a sheet has room for. */
const words = text(40);

/** A cut through the finished part, in drawing coordinates. */
const section = z.strictObject({ from: point, to: point, name: z.optional(words.schema) });

/** Stands on papers and labels; a box to write in where it is left out. */
function headingText(label: string, what: string) {
  return open(words, {
    label,
    help: `${what}; printed on papers and labels`,
    usual: 'a box to write in',
  });
}

const distance = length({ least: SMALLEST_POSITIVE, shown: { least: 0.1, most: 1000 } });

export const handoff = optionalGroup(
  {
    files: open(raw(z.array(z.enum(HANDOFF_FILES))), {
      label: 'Files',
      help: `files to write beside \`plan.json\` and \`scribe.dxf\`: any of ${HANDOFF_FILES.map((file) => `\`"${file}"\``).join(', ')}, described in [files](files.md); not repeated in plan.json, because it does not change the plan`,
    }),
    hand: open(
      choice({
        'as-drawn': 'as drawn',
        opposite: 'the opposite hand',
        both: 'both hands',
      }),
      {
        label: 'Hand',
        help: 'which hand the files are for: `"as-drawn"`, `"opposite"`, the part mirrored about the vertical axis of the drawing, x = 0, or `"both"`; files of the opposite hand have `-opposite` in their names ([how](files.md#opposite-hand))',
        usual: '`"as-drawn"`',
      },
    ),
    paper: usually(choice({ a4: 'A4', letter: 'Letter', a3: 'A3' }), {
      label: 'Paper',
      help: '`"a4"`, `"letter"` or `"a3"`',
      usual: { value: 'a4' },
    }),
    units: usually(choice({ job: 'as the job', mm: 'millimetres', in: 'inches', both: 'both' }), {
      label: 'Units on papers',
      help: 'units of lengths on traveller, inspection sheets and labels: `"job"`, those of the job; `"mm"`; `"in"`; `"both"`, the job’s first',
      usual: { value: 'job' },
    }),
    heading: optionalGroup({
      part: headingText('Part number', 'number of the part'),
      drawing: headingText('Drawing number', 'number of its drawing'),
      revision: headingText('Revision', 'revision of the drawing'),
      serial: headingText('Serial', 'serial number of the part'),
      lot: headingText('Sheet lot', 'lot of the sheet'),
      quantity: headingText('Quantity', 'how many parts'),
      specification: headingText('Process specification', 'process specification that the run follows'),
      approvedBy: headingText('Approved by', 'who approves the plan'),
    }),
    date: open(date(), {
      label: 'Date',
      help: 'date printed on the sheets, such as `"2026-05-31"`',
    }),
    issue: optionalGroup({
      number: open(words, {
        label: 'Issue',
        help: 'number or name of this issue of the plan; printed on the sheets',
      }),
      by: open(words, { label: 'Planned by', help: 'who made the plan; printed on the sheets' }),
    }),
    inspection: optionalGroup({
      // As much as an ultrasonic probe is wide.
      margin: usually(distance, {
        label: 'Points clear of walls',
        help: 'how far inspection points stay clear of walls and fillets',
        quantity: 'inspection points clear of walls',
        usual: ownChoice(3),
      }),
      // A hand's length.
      spacing: usually(distance, {
        label: 'Points apart',
        help: 'approximate spacing of inspection points',
        quantity: 'inspection points apart',
        usual: ownChoice(150),
      }),
    }),
    sections: open(raw(z.array(section).check(z.maxLength(MOST_SECTIONS))), {
      label: 'Sections',
      help: `cuts through the finished part that the hand-off shows: a list of \`{ "from": [x, y], "to": [x, y], "name" }\`, at most ${MOST_SECTIONS}; names are A, B, C, … unless given`,
      usual: 'one through the deepest region, along the longer direction of the part',
    }),
    overrun: usually(length({ shown: { least: 0, most: 50 } }), {
      label: 'Lines past the edge',
      help: 'how far a line that ends at the sheet’s edge continues past it, in scribe drawings, programs and templates, so that the maskant is cut through there',
      usual: { value: 3 },
    }),
    scribe,
    program,
    template,
  },
  { isFilledIn: false },
);
