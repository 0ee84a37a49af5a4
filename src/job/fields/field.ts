/**
 * What a job can say, declared once: a field is a kind of value, what it is called, and what counts where it is left out.
 * Schema, reading, filling in, provenance, the table of docs/job-file.md, the JSON Schema and the control in the workbench
 * are derived from it. A field's key in its group is its key in the file.
 */
import * as z from 'zod/mini';
import type { Alloy, KnownFigures } from '#bath/known-figures.ts';
import type { ProvenanceKind } from '#bath/provenance.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';

export interface ResolveUnits {
  readonly job: LengthUnit;
  readonly drawing: LengthUnit;
}

/** A value with where it comes from; a plain choice has neither source nor grade, and no row in the provenance. */
export interface Found<Value> {
  readonly value: Value;
  /** In its place in jobs in inches, mm: the round figure that the trade states there. */
  readonly inInches?: Value;
  readonly source?: string;
  readonly kind?: ProvenanceKind;
  readonly plusMinus?: number;
}

export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** How the workbench shows it. */
export type ShownAs =
  /** mm */
  | ({ readonly as: 'length' } & Limits)
  /** mm/min, in so many digits */
  | ({ readonly as: 'speed'; readonly digits: number } & Limits)
  | ({ readonly as: 'number' } & NumberControl)
  | { readonly as: 'text'; readonly most: number }
  | { readonly as: 'date' }
  | { readonly as: 'choice'; readonly words: Readonly<Record<string, string>> }
  /** In a form that no other field has; figures in it may be declared as parts. */
  | { readonly as: 'own' };

/** By hand: a component of its own shows it, within these limits and under this name. */
export type Control = ShownAs & { readonly isByHand?: boolean };

/** Limits as shown; the upper one itself is allowed where `isClosed`. */
export interface NumberControl extends Limits {
  readonly unit: string;
  /** Shown as so many times what the file holds: 100 for a share in per cent. */
  readonly times: number;
  readonly isClosed: boolean;
  readonly isWhole?: boolean;
}

/** A kind of value: as the file holds it, and in millimetres and minutes. All conversion of units is here. */
export interface Kind<Schema extends z.ZodMiniType, Value> {
  /** Its limits are in it. */
  readonly schema: Schema;
  /** Of the value, for the provenance. */
  readonly unit: string;
  readonly control: Control;
  read(given: z.output<Schema>, units: ResolveUnits): Value;
  write(value: Value, units: ResolveUnits): z.output<Schema>;
}

export interface Words {
  /** On the control. */
  readonly label: string;
  /** What it says, for the page and the JSON Schema. */
  readonly help: string;
  /** Its name in the plan's provenance; left out where the plan records none. */
  readonly quantity?: string;
}

/** `Value` once defaults count, `Asked` as the file says it. */
export interface Field<Schema extends z.ZodMiniType, Value, Asked> extends Words {
  readonly is: 'field';
  readonly schema: Schema;
  readonly unit: string;
  readonly control: Control;
  /** Undefined: there is none, or it follows from other fields (`Follow`). */
  readonly usual: Found<Value> | undefined;
  /** For the page: what counts where it is left out. */
  readonly usualWords: string;
  read(given: unknown, units: ResolveUnits): Asked;
  write(value: unknown, units: ResolveUnits): unknown;
}

export type AnyField = Field<z.ZodMiniType, unknown, unknown>;
export type Member = AnyField | Group<Members> | List<Members>;
export interface Members {
  readonly [key: string]: Member;
}

/** Ways to say one thing: at most one of these keys, or exactly one. `coupon.opening`: given where any coupon has one. */
export interface Ways {
  readonly keys: readonly string[];
  readonly isOneNeeded: boolean;
}

/** Where keys stand that are filled in, first of all or after those given, and which rows come first; others follow as declared. */
export interface Order<Key extends string = string> {
  readonly first?: readonly Key[];
  readonly filled?: readonly Key[];
  readonly provenance?: readonly Key[];
}

/** Keys of an object of the file. Its schema is strict: an unknown key is a fault. */
export interface Group<
  Of extends Members,
  Schema extends z.ZodMiniType = z.ZodMiniType,
  Absence extends undefined = undefined,
> {
  readonly is: 'group';
  readonly members: Of;
  readonly schema: Schema;
  /** It has values also where the file leaves it out whole: those of its defaults. */
  readonly isAlways: boolean;
  /** Left out with its defaults: what shapes files only is no part of the plan. */
  readonly isFilledIn: boolean;
  readonly ways: readonly Ways[];
  readonly order: Order;
  readonly follow: Readonly<Record<string, FollowOne | undefined>>;
  /** What its values are where the file leaves it out. */
  readonly absence?: Absence;
}

/** A method's type: groups of all forms stand in one tree. */
type FollowOne = { follow(asked: object, setting: FollowSetting): Found<unknown> | undefined }['follow'];

export interface FollowSetting {
  readonly figures: KnownFigures;
  /** Of the sheet, once it is read. */
  readonly alloy?: Alloy | undefined;
  readonly units: ResolveUnits;
}

/** A list of objects of one form. */
export interface List<Of extends Members, Schema extends z.ZodMiniType = z.ZodMiniType> {
  readonly is: 'list';
  readonly item: Group<Of>;
  readonly schema: Schema;
}

/** What a group comes to: millimetres and minutes, defaults in their places. */
export type ValuesOf<Of extends Members> = {
  readonly [Key in keyof Of]: Of[Key] extends Field<z.ZodMiniType, infer Value, unknown>
    ? Value
    : Of[Key] extends Group<infer Inner, z.ZodMiniType, infer Absence>
      ? ValuesOf<Inner> | Absence
      : Of[Key] extends List<infer Inner>
        ? readonly ValuesOf<Inner>[]
        : never;
};

/** The same before what follows from other fields has been looked up. */
export type AskedOf<Of extends Members> = {
  readonly [Key in keyof Of]: Of[Key] extends Field<z.ZodMiniType, unknown, infer Asked>
    ? Asked
    : ValuesOf<Of>[Key];
};

/** Defaults that follow from other fields of the group, by key. */
export type Follow<Of extends Members> = {
  readonly [Key in keyof Of]?: (
    asked: AskedOf<Of>,
    setting: FollowSetting,
  ) => Found<Exclude<ValuesOf<Of>[Key], undefined>> | undefined;
};

/** One figure of a field that holds several, as a control shows it. A field is shown in the same way. */
export interface Part {
  readonly label: string;
  readonly control: Control;
}

/** A field with the figures in it that its control shows each for itself. */
export function withParts<Of extends AnyField, const Parts extends Readonly<Record<string, Part>>>(
  field: Of,
  parts: Parts,
): Of & { readonly parts: Parts } {
  return { ...field, parts };
}

type Plain<Schema extends z.ZodMiniType, Value> = Field<Schema, Value, Value>;
type Open<Schema extends z.ZodMiniType> = z.ZodMiniOptional<Schema>;

export function needed<Schema extends z.ZodMiniType, Value>(
  kind: Kind<Schema, Value>,
  words: Words,
): Plain<Schema, Value> {
  // A copy of its own: what is said of the field must not be said of every value of its kind.
  return { ...faceOf(kind), ...words, schema: z.clone(kind.schema), usual: undefined, usualWords: 'needed' };
}

/** What is left out stays undefined, unless its group's `follow` gives a default; `usual` says on the page what then counts. */
export function open<Schema extends z.ZodMiniType, Value>(
  kind: Kind<Schema, Value>,
  { usual = 'none', ...words }: Words & { readonly usual?: string },
): Plain<Open<Schema>, Value | undefined> {
  const schema = z.optional(kind.schema);
  return { ...faceOf(kind), ...words, schema, usual: undefined, usualWords: usual };
}

/** With a default that is always the same. `words` say it on the page where its value and grade are not enough. */
export function usually<Schema extends z.ZodMiniType, Value>(
  kind: Kind<Schema, Value>,
  {
    usual,
    usualWords,
    ...words
  }: Words & { readonly usual: Found<NoInfer<Value>>; readonly usualWords?: string },
): Plain<Open<Schema>, Value> & { readonly usual: Found<Value> } {
  const schema = z.optional(kind.schema);
  return { ...faceOf(kind), ...words, schema, usual, usualWords: usualWords ?? wordsOf(usual, kind.unit) };
}

/** With a default that its group's `follow` always gives. */
export function always<Schema extends z.ZodMiniType, Value>(
  kind: Kind<Schema, Value>,
  { usual, ...words }: Words & { readonly usual: string },
): Field<Open<Schema>, Value, Value | undefined> {
  const schema = z.optional(kind.schema);
  return { ...faceOf(kind), ...words, schema, usual: undefined, usualWords: usual };
}

/** What the file holds has been parsed by the kind's own schema. */
function faceOf<Schema extends z.ZodMiniType, Value>(kind: Kind<Schema, Value>) {
  const { unit, control } = kind;
  return {
    is: 'field',
    unit,
    control,
    read: (given: unknown, units: ResolveUnits) => kind.read(given as z.output<Schema>, units),
    write: (value: unknown, units: ResolveUnits): unknown => kind.write(value as Value, units),
  } as const;
}

/** The default that counts in a job in these units. */
export function usualIn<Value>(
  { inInches, ...usual }: Found<Value>,
  { job }: Pick<ResolveUnits, 'job'>,
): Found<Value> {
  return job === 'in' && inInches !== undefined ? { ...usual, value: inInches } : usual;
}

function wordsOf({ value, inInches, kind, source }: Found<unknown>, unit: string): string {
  const inches =
    typeof inInches === 'number'
      ? `; ${toMillionth(inInches / millimetresIn('in'))} in in jobs in inches`
      : '';
  const shown =
    typeof value === 'number'
      ? `${value}${unit === '±' ? '' : ` ${unit}`}${inches}`
      : `\`${JSON.stringify(value)}\``;
  if (kind === undefined) return shown;
  return `${shown}, ${kind === 'memory' ? source : kind.replace('-', ' ')}`;
}
