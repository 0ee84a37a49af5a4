/** Fields put together: a group is an object of the file, whose keys are its members'. */
import * as z from 'zod/mini';
import type { Follow, Group, List, Members, Order, Ways } from './field.ts';

type ShapeOf<Of extends Members> = { [Key in keyof Of]: Of[Key]['schema'] };
type ObjectOf<Of extends Members> = z.ZodMiniObject<ShapeOf<Of>, z.core.$strict>;

interface Choices<Of extends Members> {
  readonly ways?: readonly Ways[];
  readonly order?: Order<keyof Of & string>;
  readonly follow?: Follow<Of>;
  readonly isFilledIn?: false;
}

/** A key that the file must hold. */
export function group<const Of extends Members>(
  members: Of,
  choices: Choices<Of> = {},
): Group<Of, ObjectOf<Of>, never> {
  return { ...groupOf(members, choices), schema: objectOf(members), isAlways: true };
}

/** A key that may be left out whole: all of its members have defaults, or are open. */
export function optionalGroup<const Of extends Members>(
  members: Of,
  choices: Choices<Of> = {},
): Group<Of, z.ZodMiniOptional<ObjectOf<Of>>, never> {
  return { ...groupOf(members, choices), schema: z.optional(objectOf(members)), isAlways: true };
}

/** A key that says nothing at all where it is left out: defaults of its members count only where it is there. */
export function groupIfGiven<const Of extends Members>(
  members: Of,
  choices: Choices<Of> = {},
): Group<Of, z.ZodMiniOptional<ObjectOf<Of>>, undefined> {
  return { ...groupOf(members, choices), schema: z.optional(objectOf(members)), isAlways: false };
}

export function list<const Of extends Members>(
  item: Group<Of, ObjectOf<Of>, never>,
): List<Of, z.ZodMiniArray<ObjectOf<Of>>> {
  return { is: 'list', item, schema: z.array(item.schema) };
}

export function atMostOneOf(...keys: readonly string[]): Ways {
  return { keys, isOneNeeded: false };
}

export function oneOf(...keys: readonly string[]): Ways {
  return { keys, isOneNeeded: true };
}

function groupOf<Of extends Members>(members: Of, choices: Choices<Of>) {
  const { ways = [], order = {}, follow = {}, isFilledIn = true } = choices;
  return { is: 'group', members, ways, order, follow, isFilledIn } as const;
}

/** Typed by its return: the compiler can't follow a mapped object that is built key by key. */
function objectOf<Of extends Members>(members: Of): ObjectOf<Of> {
  const shape = Object.fromEntries(Object.entries(members).map(([key, { schema }]) => [key, schema]));
  return z.strictObject(shape as ShapeOf<Of>);
}
