/** Which ways to say one thing an object of the file takes: `rate` or `coupon`, `coupon.opening` where any coupon has one. */
import { type Finding, finding } from '#findings/finding.ts';
import type { JsonPath, PlaceOf } from '#job/formats/read-json.ts';
import type { Member, Ways } from './field.ts';

/** Keys of more than one way, or of none where one is needed. Looks at the file as found: what has the wrong shape is left alone. */
export function checkWays(member: Member, found: unknown, placeOf: PlaceOf, path: JsonPath = []): Finding[] {
  if (member.is === 'list') {
    const items: readonly unknown[] = Array.isArray(found) ? found : [];
    return items.flatMap((each, index) => checkWays(member.item, each, placeOf, [...path, index]));
  }
  if (member.is === 'field' || !isHeld(found)) return [];
  const faults = member.ways.flatMap(({ keys, isOneNeeded }) => {
    const given = keys.filter((key) => isGiven(found, key));
    if (given.length === 1 || (given.length === 0 && !isOneNeeded)) return [];
    const at = isOneNeeded ? path : [...path, given.at(-1)?.split('.')[0] ?? ''];
    return [finding('job-choice-unclear', { given, choices: keys }, placeOf(at))];
  });
  const inner = Object.entries(member.members).flatMap(([key, each]) =>
    checkWays(each, found[key], placeOf, [...path, key]),
  );
  return [...faults, ...inner];
}

/** Keys that say the same as this one. */
export function rivalsOf(ways: readonly Ways[], key: string): string[] {
  return ways.flatMap(({ keys }) => (keys.includes(key) ? keys.filter((each) => each !== key) : []));
}

export function isGiven(held: Held, key: string): boolean {
  return isIn(held, key.split('.'));
}

function isIn(value: unknown, [step, ...rest]: readonly string[]): boolean {
  if (step === undefined) return value !== undefined;
  const objects: readonly unknown[] = Array.isArray(value) ? value : [value];
  return objects.some((each) => isHeld(each) && isIn(each[step], rest));
}

export type Held = Readonly<Record<string, unknown>>;

export function isHeld(value: unknown): value is Held {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
