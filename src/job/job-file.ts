/**
 * The job file: what the engineer decides, as it stands on disk. Its lengths are in the job's `units`, rates in those units
 * a minute, points in drawing coordinates. Each key is declared once, here and in `*-fields.ts`.
 */

import * as z from 'zod/mini';
import { figuresSchema } from '#bath/figures-file.ts';
import { far } from '#job/fields/far-fields.ts';
import { always, type Kind, needed, open, usually, type ValuesOf, withParts } from '#job/fields/field.ts';
import { group } from '#job/fields/group.ts';
import { handoff } from '#job/fields/handoff-fields.ts';
import { LENGTH_UNITS } from '#units/length-unit.ts';
import {
  byHand,
  choice,
  length,
  name,
  nameSchema,
  names,
  positive,
  raw,
  shownLength,
  written,
} from './fields/kinds.ts';
import { layers } from './fields/layer-fields.ts';
import { process } from './fields/process-fields.ts';
import { requirements } from './fields/requirement-fields.ts';
import { rules } from './fields/rule-fields.ts';
import { stock } from './fields/stock-fields.ts';
import { jobMillimetres } from './job-figures.ts';
import { fromMemory } from './sources.ts';

/** mm: a level as thin as this is none. */
export const LEAST_LEVEL = 0.01;
const LEVEL = shownLength({ least: LEAST_LEVEL, most: 1000 });

const MOST_LEVELS = 200;
const levelList = z.array(positive).check(z.maxLength(MOST_LEVELS));
const levelChoice = z.union([
  z.enum(['fewest', 'as-drawn']),
  z.array(positive).check(z.minLength(1), z.maxLength(MOST_LEVELS)),
]);

const levels: Kind<typeof levelChoice, 'fewest' | 'as-drawn' | readonly number[]> = {
  schema: levelChoice,
  unit: '',
  control: {
    as: 'choice',
    isByHand: true,
    words: {
      'as-drawn': 'every depth required',
      fewest: 'the fewest within tolerance',
      list: 'as listed',
    },
  },
  read: (given, { job }) =>
    typeof given === 'string' ? given : given.map((each) => jobMillimetres(each, job)),
  write: (value) => (typeof value === 'string' ? value : [...value]),
};

const locked: Kind<typeof levelList, readonly number[]> = {
  ...written(levelList),
  read: (given, { job }) => given.map((each) => jobMillimetres(each, job)),
};

export const JOB = group(
  {
    $schema: open(raw(z.string()), {
      label: 'Schema',
      help: 'location of the [schema](schemas/job.schema.json) with which an editor completes and checks the file; otherwise ignored',
    }),
    format: needed(raw(z.literal('isobath-job')), { label: 'Format', help: '`"isobath-job"`' }),
    version: needed(raw(z.literal(1)), { label: 'Version', help: '`1`' }),
    name: always(raw(z.string().check(z.maxLength(300))), {
      label: 'Name',
      help: 'name of the job',
      usual: "the drawing's file name without its ending",
    }),
    assumed: open(names(), {
      label: 'Assumed',
      help: 'paths of values that were filled in as defaults, as plan.json lists them',
    }),
    drawing: needed(name(), { label: 'Drawing', help: 'the DXF file, beside the job file' }),
    units: usually(byHand(choice({ mm: 'millimetres', in: 'inches' })), {
      label: 'Unit of the job',
      help: '`"mm"` or `"in"`: the unit of every length in the job',
      usual: { value: 'mm' },
    }),
    drawingUnits: open(raw(z.enum(LENGTH_UNITS)), {
      label: 'Drawn in',
      help: 'unit of the drawing, if the file states none or a wrong one: `mm`, `in`, or any other unit that `$INSUNITS` names',
      usual: "the drawing's own",
    }),
    // What rounding in exchanged drawings leaves; a gap meant as a gap is wider.
    joinTolerance: usually(length({ shown: { least: 0, most: 10 } }), {
      label: 'Join gaps up to',
      help: 'gaps in the linework up to this width are joined, and reported',
      quantity: 'gap that is joined',
      usual: fromMemory(0.05),
    }),
    wideLines: open(choice({ centre: 'the line along its middle', borders: 'its two borders' }), {
      label: 'A wide polyline is',
      help: 'how a polyline with a width is read: `"centre"`, its centre line, or `"borders"`, its two borders, mitred at corners, if the width is constant',
      usual: '`"centre"`, and a finding says so',
    }),
    layers,
    far,
    figures: open(raw(z.union([nameSchema, figuresSchema])), {
      label: 'Figures',
      help: 'your own alloys and baths: [see below](#figures-of-your-own), or the name of a file beside the job',
    }),
    stock,
    process,
    requirements,
    rules,
    handoff,
    // As drawn, so that a job that names none is planned the same by every later version.
    levels: withParts(
      usually(levels, {
        label: 'Levels',
        help: '`"as-drawn"`: every required depth is a level; `"fewest"`: as few as meet every tolerance; or a list of depths',
        usual: { value: 'as-drawn' },
      }),
      { level: { label: 'Level', control: LEVEL } },
    ),
    lockedLevels: withParts(
      open(locked, {
        label: 'Locked levels',
        help: 'with `"fewest"`: depths that must be among the levels, whatever else is chosen; with a warning if no region uses one',
      }),
      { level: { label: 'Locked level', control: LEVEL } },
    ),
  },
  {
    order: { filled: ['name', 'units', 'joinTolerance', 'layers', 'rules', 'levels'] },
    follow: { name: ({ drawing }) => ({ value: stemOf(drawing) }) },
  },
);

export type JobFile = z.infer<typeof JOB.schema>;
export type JobValues = ValuesOf<typeof JOB.members>;

/** A file's name without its folders and its ending. */
function stemOf(path: string): string {
  const file = path.split(/[\\/]/).at(-1) ?? path;
  return file.replace(/\.dxf$/i, '');
}
