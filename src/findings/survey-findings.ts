/** Findings about the survey of the sheet. Lengths in mm. */
import { counted } from './counted.ts';
import { mm } from './shown-figures.ts';
import { stop, warn } from './words.ts';

export interface SurveyUnclear {
  readonly column: string;
  readonly found: string;
  /** The column is one of a file with readings of floors. */
  readonly isAfterADip?: true;
}

export const surveyWords = {
  'survey-unclear': stop<SurveyUnclear>({
    title: 'Survey of the sheet is unclear',
    say: ({ column, found, isAfterADip }, show) => ({
      reason:
        isAfterADip === true
          ? `With a column ${show.code(column)} these are readings of floors, not of the sheet before its first dip.`
          : `${show.code(column)} of the survey is ${found === '' ? 'empty' : show.code(found)}.`,
      remedy:
        "Name the columns x, y and thickness in the first line, and give three figures a line: places in the drawing's unit, thickness in the job's.",
    }),
  }),
  'survey-too-few': warn<{
    readonly readings: number;
    /** mm, ±, about their mean. */
    readonly spread: number;
    /** Readings that a plane takes besides. */
    readonly more: number;
    readonly areInLine: boolean;
  }>({
    title: 'Too few readings to follow the sheet',
    say: ({ readings, spread, more, areInLine }, show) => ({
      reason: [
        `${counted(readings, 'reading')} up to ${mm(spread, show)} off their mean are taken as one thickness with that spread:`,
        'a slope takes at least six that do not lie in one line.',
      ],
      remedy: `${more === 0 ? 'Take more readings' : `Take at least ${counted(more, 'more reading')}`}${areInLine ? ' beside the line of these' : ''}: levels can then follow the slope of the sheet.`,
    }),
  }),
  'survey-does-not-reach': warn<{ readonly doubt: number; readonly among: number }>({
    title: 'Region beyond the survey of the sheet',
    say: ({ doubt, among }, show) => ({
      reason: `The sheet may be off its fit by ± ${mm(doubt, show)} here, where it is known to ± ${mm(among, show)} among the readings.`,
      remedy: 'Take readings around this region too.',
      value: doubt,
      limit: among,
    }),
  }),
  'survey-bends-too-much': warn<{ readonly bend: number; readonly tolerance: number }>({
    title: 'Sheet bends by more than the tolerance',
    say: ({ bend, tolerance }, show) => ({
      reason: [
        `Over this region the sheet bends by ${mm(bend, show)} beside its slope, where plus and minus together are ${mm(tolerance, show)}:`,
        `no level leaves the thickness asked everywhere.`,
      ],
      remedy:
        'Divide the region on the drawing, or ask for a wider tolerance: sizing leaves the bend in the sheet.',
      value: bend,
      limit: tolerance,
    }),
  }),
};
