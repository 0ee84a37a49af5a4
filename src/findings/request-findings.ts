/** Findings about what was asked of a plan: options of a command, a cut, a list of points. */
import { mm } from './shown-figures.ts';
import { stop, warn } from './words.ts';

/** Headings quoted at most. */
const MOST_NAMES = 8;

export const requestWords = {
  'option-value-wrong': stop<{
    option: string;
    found: string;
    /** What would be taken, with an example. */
    expected: string;
  }>({
    title: 'Option with a wrong value',
    say: ({ option, found, expected }) => ({
      reason: `${option} was given "${found}".`,
      remedy: `Give ${expected}.`,
    }),
  }),
  'cut-without-length': stop<{ at: readonly [number, number] }>({
    title: 'Cut without length',
    say: ({ at }, show) => ({
      reason: [`The cut starts and ends at ${at[0]}, ${at[1]}:`, `a point shows no section.`],
      remedy: `Give two different points, or use ${show.code('isobath depth')} for one point.`,
    }),
  }),
  'cut-misses-sheet': stop<{ length: number }>({
    title: 'Cut misses the sheet',
    say: ({ length }, show) => ({
      reason: `The cut of ${mm(length, show)} lies entirely off the sheet, so there is no metal to show.`,
      remedy: `Give points in drawing coordinates, in the unit of the drawing; ${show.code('isobath inspect')} lists some.`,
    }),
  }),
  'points-column-missing': stop<{ file: string; column: string; found: readonly string[] }>({
    title: 'Column missing',
    say: ({ file, column, found }) => ({
      reason: `${file} has no column ${column} in its first line${found.length === 0 ? '' : `, but ${found.slice(0, MOST_NAMES).join(', ')}`}.`,
      remedy: 'Name the columns of the points x and y in the first line: "x,y".',
    }),
  }),
  'points-value-wrong': stop<{
    file: string;
    column: string;
    found: string;
    /** How many figures of the file cannot be used; the place is the first one's. */
    bad: number;
  }>({
    title: 'Coordinate is not a number',
    say: ({ file, column, found, bad }) => ({
      reason: `${file} has ${found === '' ? 'nothing' : `"${found}"`} for ${column}${bad === 1 ? '' : `, and ${bad - 1} more that ${bad === 2 ? 'is not a number' : 'are not numbers'}`}.`,
      remedy: 'Give each point as two numbers with a decimal point: 130.5,42.',
      value: bad,
      limit: 0,
    }),
  }),
  'points-missing': stop<{ file: string }>({
    title: 'No points',
    say: ({ file }) => ({
      reason: `${file} names its columns but lists no points.`,
      remedy: 'List one point per line.',
    }),
  }),
  'points-outside-sheet': warn<{ outside: number; points: number }>({
    title: 'Points off the sheet',
    say: ({ outside, points }) => ({
      reason: [
        `${outside} of ${points} points ${outside === 1 ? 'lies' : 'lie'} off the sheet, where there is no metal:`,
        `depth and thickness are 0 there, and the target is empty.`,
      ],
      remedy: 'Give points in drawing coordinates, in the unit of the drawing.',
      value: outside,
      limit: 0,
    }),
  }),
};
