/**
 * A group of a job in millimetres and minutes: the values of its fields, given or by default, and where each figure comes from;
 * and the group as the file holds it, with its defaults filled in.
 */
import type { Provenance } from '#bath/provenance.ts';
import {
  type AnyField,
  type AskedOf,
  type FollowSetting,
  type Found,
  type Group,
  type Member,
  type Members,
  type ResolveUnits,
  usualIn,
  type ValuesOf,
} from './field.ts';
import { type Held, isGiven, isHeld, rivalsOf } from './given-ways.ts';

export interface GroupReading<Of extends Members> {
  readonly values: ValuesOf<Of>;
  /** Before what follows from other fields is looked up. */
  readonly asked: AskedOf<Of>;
  /** A row for each figure that has a name, as declared; of lists none. */
  readonly provenance: readonly Provenance[];
}

interface Setting extends FollowSetting {
  /** Of the group in the file, with its dot; empty for the job itself. */
  readonly path: string;
}

/** What follows from others is looked up once all others of its group are known, and only where no rival way is taken. */
export function readGroup<Of extends Members>(
  { members, ways, order, follow }: Group<Of, Group<Of>['schema'], undefined>,
  given: unknown,
  setting: Setting,
): GroupReading<Of> {
  const held: Held = isHeld(given) ? given : {};
  const read = Object.entries(members).map(
    ([key, member]) =>
      [key, readMember(member, held[key], { ...setting, path: setting.path + key })] as const,
  );
  const asked = valuesOf(read);
  const whole = read.map(([key, reading]) => {
    const member = members[key];
    const isOpen = held[key] === undefined && !rivalsOf(ways, key).some((rival) => isGiven(held, rival));
    if (member?.is !== 'field' || !isOpen || follow[key] === undefined) return [key, reading] as const;
    return [key, foundIn(member, follow[key](asked, setting), setting.path + key)] as const;
  });
  return {
    values: valuesOf(whole) as ValuesOf<Of>,
    asked: asked as AskedOf<Of>,
    provenance: inOrder(order.provenance, new Map(whole)).flatMap(([, { provenance }]) => provenance),
  };
}

/** Typed by whoever declared the members: the compiler can't follow a mapped object that is built key by key. */
function valuesOf(read: readonly (readonly [string, MemberReading])[]): object {
  return Object.fromEntries(read.map(([key, { value }]) => [key, value]));
}

interface MemberReading {
  readonly value: unknown;
  readonly provenance: readonly Provenance[];
}

function readMember(member: Member, given: unknown, setting: Setting): MemberReading {
  const { path, units } = setting;
  if (member.is === 'list') {
    const items: readonly unknown[] = Array.isArray(given) ? given : [];
    const value = items.map(
      (each, index) => readGroup(member.item, each, { ...setting, path: `${path}[${index}].` }).values,
    );
    return { value, provenance: [] };
  }
  if (member.is === 'group') {
    if (given === undefined && !member.isAlways) return { value: undefined, provenance: [] };
    const { values, provenance } = readGroup(member, given, { ...setting, path: `${path}.` });
    return { value: values, provenance };
  }
  if (given === undefined) return foundIn(member, member.usual && usualIn(member.usual, units), path);
  const found = { value: member.read(given, units), source: `job file, ${path}`, kind: 'user' } as const;
  return foundIn(member, found, path);
}

function foundIn(
  { quantity, unit }: AnyField,
  found: Found<unknown> | undefined,
  field: string,
): MemberReading {
  if (found === undefined) return { value: undefined, provenance: [] };
  const { value, source, kind, ...doubt } = found;
  if (quantity === undefined || typeof value !== 'number' || source === undefined || kind === undefined) {
    return { value, provenance: [] };
  }
  return { value, provenance: [{ quantity, value, unit, source, kind, ...doubt, field }] };
}

/** What is given stands as given, in its order; what was left out is added where the group says. Undefined: nothing to hold. */
export function fillGroup<Of extends Members>(
  group: Group<Of, Group<Of>['schema'], undefined>,
  given: unknown,
  { values, units }: { readonly values: Partial<ValuesOf<Of>>; readonly units: ResolveUnits },
): Held | undefined {
  const { members, order, isAlways, isFilledIn } = group;
  const held: Held = isHeld(given) ? given : {};
  if (!isFilledIn || (given === undefined && !isAlways)) return given === undefined ? undefined : held;
  const known: Held = values;
  const filled = new Map(
    Object.entries(members).map(([key, member]) => {
      const canFill = member.is !== 'field' || member.usual !== undefined || group.follow[key] !== undefined;
      const value = canFill ? fillMember(member, held[key], { value: known[key], units }) : held[key];
      return [key, value] as const;
    }),
  );
  const first = [...(order.first ?? []), ...Object.keys(held), ...(order.filled ?? [])];
  const there = inOrder(first, filled);
  return there.length === 0 && given === undefined ? undefined : Object.fromEntries(there);
}

/** These keys first, the others as they come. */
function inOrder<Value>(first: readonly string[] | undefined, held: ReadonlyMap<string, Value>) {
  const keys = new Set([...(first ?? []), ...held.keys()]);
  return [...keys].flatMap((key) => {
    const value = held.get(key);
    return value === undefined ? [] : [[key, value] as const];
  });
}

function fillMember(
  member: Member,
  given: unknown,
  { value, units }: { readonly value: unknown; readonly units: ResolveUnits },
): unknown {
  if (member.is === 'field') {
    return given !== undefined || value === undefined ? given : member.write(value, units);
  }
  if (member.is === 'group') return fillGroup(member, given, { values: value as ValuesOf<Members>, units });
  if (!Array.isArray(given) || !Array.isArray(value)) return given;
  return given.map((each, index) => fillGroup(member.item, each, { values: value[index], units }));
}
