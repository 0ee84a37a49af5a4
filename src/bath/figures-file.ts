/**
 * Figures of alloys and baths as a file: format `isobath-figures`. The built-in ones are such a file, and a job brings the
 * shop's own as another, held to the same schema. Each value wears its unit, its source and its grade.
 */
import * as z from 'zod/mini';

/**
 * No length or rate of a sheet comes near ten million of any unit; larger ones are slips and would only
 * overflow later. Below one millionth of a unit a thickness or a rate is a slip as well.
 */
export const LARGEST_FIGURE = 1e7;
export const SMALLEST_POSITIVE = 1e-6;

const positive = z.number().check(z.gte(SMALLEST_POSITIVE), z.lte(LARGEST_FIGURE));
const words = z.string().check(z.minLength(1), z.maxLength(300));

/** What is a temperature of a bath at all, °C. */
export const temperature = z.number().check(z.gte(-50), z.lte(400));

export const DENSITY_UNITS = ['g/cm³', 'kg/m³', 'lb/in³'] as const;
export const RATE_UNITS = ['mm/min', 'µm/min', 'cm/h', 'in/min'] as const;
/** Chemical milling quotes the first, photochemical machining often the second: Allen, Horne, Stevens, Measurement of Etch Factor (1982). */
export const FACTOR_UNITS = ['undercut / depth', 'depth / undercut'] as const;
export const ENERGY_UNITS = ['kJ/mol'] as const;
export const WEB_UNITS = ['mm', 'in'] as const;

export const provenanceKind = z.enum(['published', 'common-practice', 'memory', 'user', 'measured']);

const given = { value: positive, source: words, kind: provenanceKind, plusMinus: z.optional(positive) };
/** Others say from … to. */
const range = { from: z.optional(positive), to: z.optional(positive) };

const alloySchema = z.strictObject({
  id: words,
  name: words,
  metal: words,
  density: z.strictObject({ ...given, unit: z.enum(DENSITY_UNITS) }),
  sheetGroup: z.optional(z.literal('EN 485-4 II')),
  thinnestWeb: z.optional(z.strictObject({ ...given, unit: z.enum(WEB_UNITS) })),
});

const bathSchema = z.strictObject({
  id: words,
  name: words,
  etches: words,
  etchFactor: z.optional(z.strictObject({ ...given, ...range, unit: z.enum(FACTOR_UNITS) })),
  rate: z.optional(
    z.strictObject({ ...given, ...range, unit: z.enum(RATE_UNITS), atC: z.optional(temperature) }),
  ),
  activationEnergy: z.optional(z.strictObject({ ...given, ...range, unit: z.enum(ENERGY_UNITS) })),
  reaction: z.optional(z.literal('aluminium in caustic soda')),
});

/** More alloys, or baths, than any shop has. */
export const MOST_ENTRIES = 1000;

export const figuresSchema = z.strictObject({
  format: z.literal('isobath-figures'),
  version: z.literal(1),
  alloys: z.optional(z.array(alloySchema).check(z.maxLength(MOST_ENTRIES))),
  baths: z.optional(z.array(bathSchema).check(z.maxLength(MOST_ENTRIES))),
});

export type FiguresFile = z.infer<typeof figuresSchema>;
export type AlloyGiven = z.infer<typeof alloySchema>;
export type BathGiven = z.infer<typeof bathSchema>;
