/**
 * A job with one to three things wrong in it, settled by seed and number: figures far too large or small or of another kind,
 * lists and texts far too long, keys lost, doubled or strange, characters of the file changed or cut off.
 */
import { type Dice, diceOf } from '#support/random-parts/dice.ts';

export function damagedJob(job: object, seed: number, index: number): string {
  const dice = diceOf(seed, index);
  let text = JSON.stringify(job);
  const count = 1 + Math.floor(dice.share() * 3);
  let damaged: unknown = structuredClone(job);
  for (let each = 0; each < count; each++) damaged = damagedValue(damaged, dice);
  text = JSON.stringify(damaged) ?? text;
  return dice.share() < 0.15 ? damagedText(text, dice) : text;
}

function pick<Item>(items: readonly [Item, ...Item[]], dice: Dice): Item {
  return items[Math.floor(dice.share() * items.length)] ?? items[0];
}

/** A place in the value, each as likely as any other. */
function damagedValue(value: unknown, dice: Dice): unknown {
  if (typeof value !== 'object' || value === null) return otherValue(value, dice);
  const keys = Object.keys(value);
  if (keys.length === 0 || dice.share() < 0.08) return damagedHolder(value, dice);
  const key = keys[Math.floor(dice.share() * keys.length)] ?? '';
  const inner: unknown = Reflect.get(value, key);
  if (Array.isArray(value))
    return value.map((item, at) => (String(at) === key ? damagedValue(inner, dice) : item));
  return { ...value, [key]: damagedValue(inner, dice) };
}

/** A list or an object that has lost something, or has far too much of it. */
function damagedHolder(value: object, dice: Dice): unknown {
  if (Array.isArray(value)) {
    return pick<() => unknown>(
      [
        () => [],
        () => value.slice(1),
        () => [...value, ...value],
        () => Array.from({ length: 3000 }, (_, at): unknown => value[at % Math.max(1, value.length)]),
        () => Array.from({ length: 3000 }, (_, at) => 0.001 + at * 0.001),
        () => [[value]],
      ],
      dice,
    )();
  }
  const keys = Object.keys(value);
  const lost = keys[Math.floor(dice.share() * keys.length)] ?? '';
  return pick<() => unknown>(
    [
      () => Object.fromEntries(Object.entries(value).filter(([key]) => key !== lost)),
      () => ({ ...value, [`${lost}s`]: 1 }),
      () => ({ ...value, ...STRANGE }),
      () => [value],
    ],
    dice,
  )();
}

const STRANGE = { __proto__: { a: 1 }, constructor: 1, 'a\nb': [] };

const NUMBERS: readonly [number, ...number[]] = [
  0,
  -1,
  1,
  1e-6,
  1e-9,
  1e-300,
  3e-3,
  1e-3,
  0.02,
  7.3,
  99,
  1e3,
  9.9e6,
  1e7,
  1e9,
  1e300,
  -1e7,
  0.1 + 0.2,
];

function otherValue(value: unknown, dice: Dice): unknown {
  if (typeof value === 'number' && dice.share() < 0.8) {
    return pick<() => unknown>(
      [
        () => pick(NUMBERS, dice),
        () => value * 10 ** Math.round((dice.share() - 0.5) * 14),
        () => value * (0.5 + dice.share()),
        () => -value,
      ],
      dice,
    )();
  }
  if (typeof value === 'string' && dice.share() < 0.7) {
    return pick<() => unknown>(
      [
        () => '',
        () => value.repeat(2000),
        () => 'n'.repeat(20_000),
        () => `${value}x`,
        () => '../../../etc/passwd',
        () => '\u0000\u202e<script>&"\'\ud800',
        () => pick(WORDS, dice),
      ],
      dice,
    )();
  }
  return pick([null, true, 'word', 3, [], {}, [value], { value }], dice);
}

const WORDS: readonly [string, ...string[]] = [
  'in',
  'mm',
  'fewest',
  'as-drawn',
  're-mask',
  'peel-next',
  'caustic-aluminium',
  'acid-nickel',
  'mid-wall',
  'deep-foot',
];

function damagedText(text: string, dice: Dice): string {
  const at = Math.floor(dice.share() * text.length);
  return pick<() => string>(
    [
      () => text.slice(0, at),
      () => `${text.slice(0, at)}${text.slice(at + 1)}`,
      () => `${text.slice(0, at)}}${text.slice(at)}`,
      () => `${text.slice(0, at)}1e999${text.slice(at)}`,
      () => `${'['.repeat(20_000)}${text}`,
      () => text + text,
    ],
    dice,
  )();
}
