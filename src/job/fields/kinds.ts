/** Kinds of value that a job holds: each with its schema, its way to millimetres and minutes and back, and its control. */
import * as z from 'zod/mini';
import { LARGEST_FIGURE, SMALLEST_POSITIVE, temperature as temperatureSchema } from '#bath/figures-file.ts';
import type { Point } from '#geometry/point.ts';
import { drawnPoint, jobLength, jobMillimetres } from '#job/job-figures.ts';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { Control, Kind, Limits, NumberControl } from './field.ts';

/** Longer than any drawing program allows a layer's name, and than any head of a sheet shows. */
const MOST_LETTERS = 300;
/** Rows of a table, readings of a sheet: more than anybody writes down. */
const MOST_ROWS = 1000;

const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
export const positive = between(SMALLEST_POSITIVE, LARGEST_FIGURE);
export const notNegative = between(0, LARGEST_FIGURE);
export const coordinate = between(-FARTHEST_PLACE, FARTHEST_PLACE);
export const point = z.tuple([coordinate, coordinate]);
export const nameSchema = z.string().check(z.minLength(1), z.maxLength(MOST_LETTERS));

export function rows<Schema extends z.ZodMiniType>(row: Schema) {
  return z.array(row).check(z.minLength(1), z.maxLength(MOST_ROWS));
}

interface LengthLimits {
  /** As the file holds it, in its units. */
  readonly least?: number;
  readonly most?: number;
  /** The control's, mm. */
  readonly shown?: Limits;
}

export function length(limits: LengthLimits = {}): Kind<z.ZodMiniNumber, number> {
  const { least = 0, most = LARGEST_FIGURE, shown = { least: 0, most: 1000 } } = limits;
  return {
    schema: between(least, most),
    unit: 'mm',
    control: { as: 'length', ...shown },
    read: (given, { job }) => jobMillimetres(given, job),
    write: (value, { job }) => jobLength(value, job),
  };
}

/** A length a minute: not rounded, for a rate has few digits but small ones. `shown` in mm/min. */
export function rate(shown: Limits & { readonly digits: number }): Kind<z.ZodMiniNumber, number> {
  return {
    schema: positive,
    unit: 'mm/min',
    control: { as: 'speed', isByHand: true, ...shown },
    read: (given, { job }) => given * millimetresIn(job),
    write: (value, { job }) => jobLength(value, job),
  };
}

type NumberLimits = Limits & Pick<NumberControl, 'isWhole'>;

/** A number in a unit of its own, whatever the job's. */
export function number(
  unit: string,
  { schema, ...shown }: { readonly schema: z.ZodMiniNumber } & NumberLimits,
): Kind<z.ZodMiniNumber, number> {
  return { ...raw(schema), unit, control: shownNumber(unit, shown) };
}

export function shownNumber(unit: string, limits: NumberLimits): Control {
  return { as: 'number', unit, times: 1, isClosed: true, ...limits };
}

/** Limits in mm. */
export function shownLength(limits: Limits): Control {
  return { as: 'length', ...limits };
}

/** Of a form that has a control for all, but needs one of its own here. */
export function byHand<Of extends { readonly control: Control }>(
  kind: Of,
  shown: Control = kind.control,
): Omit<Of, 'control'> & { readonly control: Control } {
  return { ...kind, control: { ...shown, isByHand: true } };
}

/** Words that stand on papers, as many letters as have room. */
export function text(most: number): Kind<z.ZodMiniString, string> {
  return { ...raw(z.string().check(z.minLength(1), z.maxLength(most))), control: { as: 'text', most } };
}

export function date(): Kind<z.ZodMiniISODate, string> {
  return { ...raw(z.iso.date()), control: { as: 'date' } };
}

export function temperature(): Kind<z.ZodMiniNumber, number> {
  const shown = { least: -50, most: 400, isClosed: true };
  return { ...raw(temperatureSchema), unit: '°C', control: { as: 'number', unit: '°C', times: 1, ...shown } };
}

/** Either way, less than all. */
export function share(): Kind<z.ZodMiniNumber, number> {
  const shown = { least: 0, most: 100, isClosed: false };
  const control = { as: 'number', unit: '% either way', times: 100, ...shown } as const;
  return { ...raw(z.number().check(z.gte(0), z.lt(1))), unit: '±', control };
}

export function name(): Kind<z.ZodMiniString, string> {
  return raw(nameSchema);
}

export function names(): Kind<z.ZodMiniArray<z.ZodMiniString>, string[]> {
  return raw(z.array(nameSchema));
}

/** Words by what the file says. */
export function choice<const Words extends Readonly<Record<string, string>>>(
  words: Words,
): Kind<z.ZodMiniEnum<{ [Key in keyof Words & string]: Key }>, keyof Words & string> {
  const keys = Object.keys(words) as (keyof Words & string)[];
  return { ...raw(z.enum(keys)), control: { as: 'choice', words } };
}

/** A point of the drawing, in its own unit. */
export function place(): Kind<typeof point, Point> {
  return { ...written(point), unit: 'mm', read: (given, { drawing }) => drawnPoint(given, drawing) };
}

export function places(most: number): Kind<z.ZodMiniArray<typeof point>, readonly Point[]> {
  return {
    ...written(z.array(point).check(z.maxLength(most))),
    unit: 'mm',
    read: (given, { drawing }) => given.map((each) => drawnPoint(each, drawing)),
  };
}

/** As the file holds it, units and all: what has no form of its own, or takes others to be turned into one. */
export function raw<Schema extends z.ZodMiniType>(schema: Schema): Kind<Schema, z.output<Schema>> {
  return { schema, unit: '', control: { as: 'own' }, read: (given) => given, write: (value) => value };
}

/** Read with the schema, and never filled in. */
export function written<Schema extends z.ZodMiniType>(schema: Schema) {
  const write = (): never => {
    throw new Error('a value without a default is never filled in');
  };
  return { schema, unit: '', control: { as: 'own' }, write } as const;
}
