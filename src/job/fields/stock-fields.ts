/** The sheet before its first dip. */

import * as z from 'zod/mini';
import { SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import type { Alloy } from '#bath/known-figures.ts';
import type { Sourced } from '#bath/provenance.ts';
import { sheetTolerance } from '#bath/sheet-tolerance.ts';
import { drawnPoint, givenFigure, jobMillimetres } from '#job/job-figures.ts';
import { measuredSheet, type SheetReading } from '#job/measured-sheet.ts';
import { thickestOf } from '#job/sheet-at.ts';
import { fitSurvey, type SurveyReading } from '#job/sheet-survey.ts';
import { MOST_READINGS } from '#job/survey-csv.ts';
import { type SurveyedSheet, surveyedSheet } from '#job/surveyed-sheet.ts';
import { resolveTaper, type Taper, thicknessTaper } from '#job/taper.ts';
import {
  type AskedOf,
  always,
  type FollowSetting,
  type Kind,
  needed,
  open,
  type ValuesOf,
  withParts,
} from './field.ts';
import { atMostOneOf, group } from './group.ts';
import {
  byHand,
  coordinate,
  length,
  name,
  nameSchema,
  number,
  point,
  positive,
  rows,
  shownLength,
  written,
} from './kinds.ts';

const thickness = z.union([positive, thicknessTaper]);

/** mm: no sheet that is etched is thinner or thicker. */
const SHEET = shownLength({ least: 0.1, most: 100 });

/** A reading beyond it, of a sheet ordered so thick, is a slip of the pen. */
export function mostRead(ordered: number): number {
  return 2 * ordered;
}

const lengthOrTaper: Kind<typeof thickness, number | Taper> = {
  ...byHand(written(thickness), SHEET),
  unit: 'mm',
  read: (given, units) =>
    typeof given === 'number' ? jobMillimetres(given, units.job) : resolveTaper(given, units),
};

const sheetReadings = rows(
  z.union([positive, z.strictObject({ at: z.optional(point), thickness: positive })]),
);

const readings: Kind<typeof sheetReadings, readonly SheetReading[]> = {
  ...written(sheetReadings),
  unit: 'mm',
  read: (given, { job, drawing }) =>
    given.map((each) => {
      const { at, thickness } = typeof each === 'number' ? { at: undefined, thickness: each } : each;
      return { at: at && drawnPoint(at, drawing), thickness: jobMillimetres(thickness, job) };
    }),
};

const surveyRows = z
  .array(z.tuple([coordinate, coordinate, positive]))
  .check(z.minLength(1), z.maxLength(MOST_READINGS));
const survey = z.union([nameSchema, surveyRows]);

/** A name is the file's, which is taken into the job before the job is resolved. */
const surveyReadings: Kind<typeof survey, readonly SurveyReading[]> = {
  ...written(survey),
  unit: 'mm',
  read: (given, { job, drawing }) =>
    typeof given === 'string'
      ? []
      : given.map(([x, y, thickness]) => ({
          at: drawnPoint([x, y], drawing),
          thickness: jobMillimetres(thickness, job),
        })),
};

const sides = {
  usual:
    'what readings leave open; else EN 485-4 (1994) by the width, where the alloy is of its group II and up to 50 mm thick; else 0, and a note says so',
};
const sideLength = length({ shown: { least: 0, most: 10 } });

const members = {
  alloy: open(name(), { label: 'Alloy', help: 'alloy by id, listed below' }),
  density: open(number('g/cm³', { schema: positive, least: 0.1, most: 30 }), {
    label: 'Density',
    help: "g/cm³, whatever the job's units",
    quantity: 'density',
    usual: "the alloy's",
  }),
  thickness: withParts(
    needed(lengthOrTaper, {
      label: 'Thickness',
      help: 'nominal or measured thickness, or a taper `{ "from", "to", "thicknessFrom", "thicknessTo" }`',
    }),
    {
      from: { label: 'Taper starts at', control: { as: 'own' } },
      to: { label: 'Taper ends at', control: { as: 'own' } },
      thicknessFrom: { label: 'Thickness at the start', control: SHEET },
      thicknessTo: { label: 'Thickness at the end', control: SHEET },
    },
  ),
  width: open(length({ least: SMALLEST_POSITIVE, shown: { least: 1, most: 4000 } }), {
    label: 'Rolled width',
    help: 'width that the sheet was rolled to: the tolerance of the standard depends on it',
    usual: 'tolerance of sheets to 2000 mm wide',
  }),
  minus: always(sideLength, {
    ...sides,
    label: 'Thinner by',
    help: 'how much thinner the sheet may be',
    quantity: 'sheet tolerance, minus',
  }),
  plus: always(sideLength, {
    ...sides,
    label: 'Thicker by',
    help: 'how much thicker the sheet may be',
    quantity: 'sheet tolerance, plus',
  }),
  measured: withParts(
    open(readings, {
      label: 'Sheet readings',
      help: 'readings of the sheet before its first dip: thicknesses, or `{ "at": [x, y], "thickness" }`; on a tapered sheet each with its place. Their mean replaces the nominal thickness (a tapered sheet is shifted as a whole), and their spread replaces minus and plus if those are not given',
    }),
    {
      reading: { label: 'Sheet reading', control: SHEET },
      placed: { label: 'Readings at places', control: { as: 'own' } },
    },
  ),
  survey: open(surveyReadings, {
    label: 'Survey of the sheet',
    help: 'readings of this very sheet from place to place, `[[x, y, thickness], …]`, or the name of a CSV beside the job with columns x, y, thickness: see [below](#survey-of-the-sheet)',
  }),
};

type Asked = Pick<AskedOf<typeof members>, 'alloy' | 'thickness' | 'measured' | 'survey' | 'width'>;

export const stock = group(members, {
  ways: [atMostOneOf('measured', 'survey')],
  order: { filled: ['density', 'minus', 'plus'], provenance: ['minus', 'plus'] },
  follow: {
    density: (asked, setting) => alloyOf(asked, setting)?.density,
    minus: (asked, setting) => sheetOf(asked, setting).minus ?? { value: 0 },
    plus: (asked, setting) => sheetOf(asked, setting).plus ?? { value: 0 },
  },
});

export type StockValues = ValuesOf<typeof members>;

/** Undefined where none is named, or none of that name is known. */
export function alloyOf(
  { alloy }: Pick<Asked, 'alloy'>,
  { figures }: Pick<FollowSetting, 'figures'>,
): Alloy | undefined {
  return figures.alloys.find(({ id }) => id === alloy);
}

interface Sheet {
  readonly thickness: number | Taper;
  /** Of its thickest place. */
  readonly thickest: Sourced;
  /** Where the job gives none; undefined where nothing does. */
  readonly minus: Sourced | undefined;
  readonly plus: Sourced | undefined;
  readonly surveyed?: SurveyedSheet;
}

/** As ordered, with the standard's tolerance for its alloy; or as its readings say. */
export function sheetOf(asked: Asked, setting: Pick<FollowSetting, 'figures'>): Sheet {
  const { thickness, measured, survey = [] } = asked;
  if (survey.length > 0) return sheetBySurvey(survey);
  if (measured === undefined) {
    const standard = sheetTolerance(alloyOf(asked, setting), thickestOf(thickness), asked.width);
    const thickest = givenFigure(thickestOf(thickness), 'stock.thickness');
    return { thickness, thickest, minus: standard, plus: standard };
  }
  const sheet = measuredSheet(thickness, measured);
  const many = measured.length === 1 ? 'one reading' : `${measured.length} readings`;
  const read = (value: number, what: string): Sourced => ({
    value,
    source: `job file, stock.measured: ${what} of ${many}`,
    kind: 'measured',
  });
  return {
    thickness: sheet.thickness,
    thickest: read(thickestOf(sheet.thickness), 'mean'),
    minus: read(sheet.minus, 'farthest below the mean'),
    plus: read(sheet.plus, 'farthest above the mean'),
  };
}

/** M8.1: what is left open of the fit takes the place of minus and plus. */
function sheetBySurvey(readings: readonly SurveyReading[]): Sheet {
  const surveyed = surveyedSheet(fitSurvey(readings));
  const { thickness, doubt, survey } = surveyed;
  const source = `job file, stock.survey: ${survey.model} through ${readings.length} readings`;
  const read = (value: number): Sourced => ({ value, source, kind: 'measured' });
  return {
    thickness,
    thickest: read(thickestOf(thickness)),
    minus: read(doubt),
    plus: read(doubt),
    surveyed,
  };
}
