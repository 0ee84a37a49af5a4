/**
 * The job file: what the engineer decides, as it stands on disk. Its lengths are in the job's `units`, rates in those units
 * a minute, points in drawing coordinates. The schema is strict: unknown keys are errors. `read-job.ts` reads it,
 * `resolve-job.ts` turns it into millimetres with defaults.
 */
import * as z from 'zod/mini';
import { figuresSchema, temperature } from '#bath/figures-file.ts';
import { LENGTH_UNITS } from '#units/length-unit.ts';
import { handoffSchema } from './handoff-schema.ts';

/**
 * No length or rate of a sheet comes near ten million of any unit; larger ones are slips and would only
 * overflow later. Below one millionth of a unit a thickness or a rate is a slip as well.
 */
const LARGEST = 1e7;
const SMALLEST_POSITIVE = 1e-6;
/** Survey frames have their origins thousands of kilometres away. */
const FARTHEST = 1e12;

const coordinate = z.number().check(z.gte(-FARTHEST), z.lte(FARTHEST));
const positive = z.number().check(z.gte(SMALLEST_POSITIVE), z.lte(LARGEST));
const notNegative = z.number().check(z.gte(0), z.lte(LARGEST));
const share = z.number().check(z.gte(0), z.lt(1));
const point = z.tuple([coordinate, coordinate]);
/** Longer than any drawing program allows a layer's name, and than any head of a sheet shows. */
const MOST_LETTERS = 300;
const name = z.string().check(z.minLength(1), z.maxLength(MOST_LETTERS));
/** Rows of a table, readings of a sheet, levels: more than anybody writes down. */
const MOST_ROWS = 1000;
const MOST_LEVELS = 200;
const names = z.array(name);

/** Of a plate; a perforated sheet has its holes on a layer. */
const MOST_HOLES = 1000;

const jobUnit = z.enum(['mm', 'in']);
const drawingUnit = z.enum(LENGTH_UNITS);

const depthTaper = z.strictObject({ from: point, to: point, depthFrom: notNegative, depthTo: notNegative });
const thicknessTaper = z.strictObject({
  from: point,
  to: point,
  thicknessFrom: positive,
  thicknessTo: positive,
});

/** A coupon of the same alloy, temper and thickness, etched just before the part: its thickness before and after. */
const coupon = z.strictObject({
  before: positive,
  after: positive,
  minutes: positive,
  faces: z.union([z.literal(1), z.literal(2)]),
  /** How far a reading may be off, ±. */
  gauge: z.optional(positive),
  /** An opening in its maskant: width before, width at the metal's surface after, depth etched there. */
  opening: z.optional(
    z.strictObject({ before: positive, after: positive, depth: positive, gauge: z.optional(positive) }),
  ),
});

/** Of the sheet before its first dip; on a tapered sheet with its place. */
const sheetReading = z.union([positive, z.strictObject({ at: z.optional(point), thickness: positive })]);

/** One for every depth, or rows [depth, factor]. */
const factor = z.union([
  positive,
  z.array(z.tuple([notNegative, positive])).check(z.minLength(1), z.maxLength(MOST_ROWS)),
]);

const requirement = z.strictObject({
  layer: z.optional(name),
  at: z.optional(point),
  depth: z.optional(notNegative),
  thickness: z.optional(positive),
  taper: z.optional(z.union([depthTaper, thicknessTaper])),
  plus: z.optional(notNegative),
  minus: z.optional(notNegative),
});

export const jobFileSchema = z.strictObject({
  format: z.literal('isobath-job'),
  version: z.literal(1),
  name: z.optional(z.string().check(z.maxLength(MOST_LETTERS))),
  /** Paths of the values that were filled in and not decided: plan.json lists them in the job that it shows. */
  assumed: z.optional(names),
  drawing: name,
  units: z.optional(jobUnit),
  drawingUnits: z.optional(drawingUnit),
  joinTolerance: z.optional(notNegative),
  /** What is taken of polylines that have a width. */
  wideLines: z.optional(z.enum(['centre', 'borders'])),
  layers: z.optional(
    z.strictObject({
      /** Layers; or, where all is on one layer, the outermost closed outline, or that around a point of the sheet. */
      outline: z.optional(z.union([names, z.literal('outermost'), z.strictObject({ at: point })])),
      regions: z.optional(names),
      ignore: z.optional(names),
      /** Points in holes through the sheet. */
      holes: z.optional(z.array(point).check(z.maxLength(MOST_HOLES))),
    }),
  ),
  /** The shop's own alloys and baths, or the file beside the job that holds them. */
  figures: z.optional(z.union([name, figuresSchema])),
  stock: z.strictObject({
    alloy: z.optional(name),
    /** g/cm³, whatever the job's units. */
    density: z.optional(positive),
    thickness: z.union([positive, thicknessTaper]),
    minus: z.optional(notNegative),
    plus: z.optional(notNegative),
    measured: z.optional(z.array(sheetReading).check(z.minLength(1), z.maxLength(MOST_ROWS))),
  }),
  process: z.strictObject({
    bath: z.optional(name),
    etchFactor: z.optional(factor),
    /** The other way up, as photochemical machining quotes it. */
    depthPerUndercut: z.optional(factor),
    rate: z.optional(positive),
    /** °C at which the rate was measured, and at which the bath is run. */
    rateAtC: z.optional(temperature),
    bathC: z.optional(temperature),
    coupon: z.optional(z.union([coupon, z.array(coupon).check(z.minLength(1), z.maxLength(MOST_ROWS))])),
    rateSpread: z.optional(share),
    /** Litres of bath; g/L of dissolved metal that it holds now, and may hold. */
    tank: z.optional(z.strictObject({ litres: positive, dissolved: notNegative, dissolvedLimit: positive })),
    /** Minutes. */
    timing: z.optional(notNegative),
    /** Lengths a minute. */
    hoist: z.optional(z.strictObject({ slowest: positive, fastest: positive })),
    edgeDatum: z.optional(z.enum(['shallow-edge', 'mid-wall', 'deep-foot'])),
    masking: z.optional(z.enum(['peel-next', 're-mask'])),
  }),
  requirements: z.array(requirement),
  rules: z.optional(
    z.strictObject({
      minWeb: z.optional(notNegative),
      minLineSpacing: z.optional(notNegative),
      minPieceWidth: z.optional(notNegative),
      minLandWidth: z.optional(notNegative),
    }),
  ),
  handoff: z.optional(handoffSchema),
  levels: z.optional(
    z.union([
      z.enum(['fewest', 'as-drawn']),
      z.array(positive).check(z.minLength(1), z.maxLength(MOST_LEVELS)),
    ]),
  ),
  lockedLevels: z.optional(z.array(positive).check(z.maxLength(MOST_LEVELS))),
});

export type JobFile = z.infer<typeof jobFileSchema>;
