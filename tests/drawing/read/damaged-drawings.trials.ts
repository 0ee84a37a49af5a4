/**
 * Drawings damaged on their way: every kind of damage, to every tricky drawing there is. Reading each must end within five seconds of
 * processor time, throw nothing, chain its spans, and never give other curves, texts or another unit than before without a finding. `CASES` is how many
 * are damaged for each seed; `npm run trials` tries ten thousand.
 */
import { test } from 'vitest';
import type { Drawing } from '#drawing/drawing.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { TRICKY_BLOCKS } from '#fixtures/tricky-blocks.ts';
import { TRICKY_KINDS } from '#fixtures/tricky-kinds.ts';
import { TRICKY_PLATES } from '#fixtures/tricky-plates.ts';
import { TRICKY_POLYLINES } from '#fixtures/tricky-polylines.ts';
import { TRICKY_ROUNDS } from '#fixtures/tricky-rounds.ts';
import { TRICKY_SPLINES } from '#fixtures/tricky-splines.ts';
import { dxfFaults, isRightValue } from '#oracle/dxf-faults.ts';
import { brokenChains, measureDrawing } from '#support/drawings/measure-drawing.ts';
import { expectTrials, type TrialFailure, trialPlan } from '#support/seeds/trials.ts';

const MOST_SECONDS = 5;
/** Larger ones take their time undamaged, and are tried elsewhere. */
const MOST_BYTES = 100_000;

const WHOLE = [
  ...TRICKY_BLOCKS,
  ...TRICKY_KINDS,
  ...TRICKY_PLATES,
  ...TRICKY_POLYLINES,
  ...TRICKY_ROUNDS,
  ...TRICKY_SPLINES,
]
  .filter(({ bytes }) => bytes.length <= MOST_BYTES)
  .map(({ name, bytes }): Whole => {
    let drawing: Drawing | undefined;
    return {
      name,
      bytes,
      drawing: () => {
        drawing ??= readDrawing(bytes);
        return drawing;
      },
    };
  });

interface Whole {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** As it reads undamaged. */
  readonly drawing: () => Drawing;
}

test('damaged drawings end soon and with a finding', async () => {
  await expectTrials('damaged-drawings', trialPlan({ cases: 400 }), (seed, index) => {
    const random = randomFrom(seed * 1_000_003 + index);
    const whole = WHOLE[random(WHOLE.length)];
    if (whole === undefined) return [];
    const damage = DAMAGES[random(DAMAGES.length)];
    if (damage === undefined) return [];
    const bytes = damage.spoil(whole.bytes, random);
    return judge(`${damage.name} of "${whole.name}"`, bytes, whole);
  });
});

function judge(what: string, bytes: Uint8Array, whole: Whole): TrialFailure[] {
  const before = process.cpuUsage();
  let drawing: Drawing;
  try {
    drawing = readDrawing(bytes);
  } catch (fault) {
    return [{ what: `${what}: threw ${String(fault)}` }];
  }
  const { user, system } = process.cpuUsage(before);
  const seconds = (user + system) / 1e6;
  const failures: string[] = [];
  if (seconds > MOST_SECONDS) failures.push(`${seconds.toFixed(1)} s of processor time`);
  failures.push(...brokenChains(drawing));
  failures.push(...lostInSilence(drawing, bytes, whole));
  return failures.map((each) => ({ what: `${what}: ${each}` }));
}

/**
 * What reads otherwise than before the damage must have a finding that it did not have before, unless the damage made another drawing that
 * is right by the letter of the DXF reference: of a changed digit no reader can know.
 */
function lostInSilence(
  drawing: Drawing,
  bytes: Uint8Array,
  { bytes: before, drawing: own }: Whole,
): string[] {
  const differences = differencesOf(drawing, own());
  if (differences.length === 0 || hasNewFinding(drawing, own())) return [];
  const known = countsOf(dxfFaults(textOf(before)));
  const faults = [...countsOf(dxfFaults(textOf(bytes)))].flatMap(([fault, count]) =>
    count > (known.get(fault) ?? 0) ? [fault] : [],
  );
  if (faults.length === 0 || isOfRightValues(drawing, bytes, before)) return [];
  return [`${differences.join(', ')}, and no finding; by the reference: ${faults.slice(0, 3).join(', ')}`];
}

/** Whether those of the changed values alone that are right for their codes make the same drawing: the rest of the damage took nothing. */
function isOfRightValues(drawing: Drawing, bytes: Uint8Array, before: Uint8Array): boolean {
  const [now, own] = [textOf(bytes).split('\n'), textOf(before).split('\n')];
  if (now.length !== own.length) return false;
  const right = own.map((line, n) => {
    const [changed = '', code = ''] = [now[n], own[n - 1]];
    const isValue = n % 2 === 1 && code === now[n - 1];
    return isValue && isRightValue(Number(code), changed) ? changed : line;
  });
  return differencesOf(drawing, readDrawing(bytesOf(right.join('\n')))).length === 0;
}

function differencesOf(now: Drawing, before: Drawing): string[] {
  const [own, other] = [measureDrawing(now), measureDrawing(before)];
  const texts = ({ notes }: Drawing) => notes.map(({ text }) => text).join('\n');
  const differences: string[] = [];
  if (own.curves !== other.curves) differences.push(`${own.curves} curves for ${other.curves}`);
  if (own.closed !== other.closed) differences.push(`${own.closed} closed for ${other.closed}`);
  if (Math.abs(own.length - other.length) > 1e-9 * other.length) {
    differences.push(`length ${own.length} for ${other.length}`);
  }
  if (now.unit !== before.unit) differences.push(`unit ${now.unit} for ${before.unit}`);
  if (texts(now) !== texts(before)) differences.push('other texts');
  return differences;
}

function hasNewFinding(now: Drawing, before: Drawing): boolean {
  const said = ({ findings }: Drawing) =>
    countsOf(findings.map(({ code, facts }) => JSON.stringify([code, facts])));
  const known = said(before);
  return [...said(now)].some(([finding, count]) => count > (known.get(finding) ?? 0));
}

function countsOf(words: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}

type Random = (below: number) => number;

interface Damage {
  readonly name: string;
  readonly spoil: (bytes: Uint8Array, random: Random) => Uint8Array;
}

const DAMAGES: readonly Damage[] = [
  { name: 'cut', spoil: (bytes, random) => bytes.subarray(0, random(bytes.length)) },
  {
    name: 'bytes changed',
    spoil: (bytes, random) => {
      const spoilt = Uint8Array.from(bytes);
      for (let n = random(12); n >= 0; n--) spoilt[random(spoilt.length)] = random(256);
      return spoilt;
    },
  },
  {
    name: 'a stretch lost',
    spoil: (bytes, random) => {
      const from = random(bytes.length);
      return joined(bytes.subarray(0, from), bytes.subarray(from + random(200)));
    },
  },
  {
    name: 'a stretch repeated',
    spoil: (bytes, random) => {
      const from = random(bytes.length);
      return joined(bytes.subarray(0, from + random(400)), bytes.subarray(from));
    },
  },
  {
    name: 'line ends lost',
    spoil: (bytes, random) => bytes.filter((byte) => byte !== 10 || random(40) > 0),
  },
  { name: 'numbers made absurd', spoil: (bytes, random) => changedNumbers(bytes, random, ABSURD) },
  { name: 'counts and flags changed', spoil: (bytes, random) => changedNumbers(bytes, random, SMALL) },
  { name: 'lines swapped', spoil: swappedLines },
];

const ABSURD = ['1e300', '-1e300', 'nan', '0', '1e-300', '4294967296', '-1', '1,5', '1e9', '', '2e6'];
const SMALL = ['0', '1', '2', '3', '7', '16', '64', '128', '1000000', '-3'];

function changedNumbers(bytes: Uint8Array, random: Random, values: readonly string[]): Uint8Array {
  const lines = textOf(bytes).split('\n');
  const numbers = lines.flatMap((line, at) => (at % 2 === 1 && /^\s*[-\d.]+\s*$/.test(line) ? [at] : []));
  for (let n = random(4); n >= 0 && numbers.length > 0; n--) {
    lines[numbers[random(numbers.length)] ?? 0] = values[random(values.length)] ?? '';
  }
  return bytesOf(lines.join('\n'));
}

function swappedLines(bytes: Uint8Array, random: Random): Uint8Array {
  const lines = textOf(bytes).split('\n');
  const [a, b] = [random(lines.length), random(lines.length)];
  const kept = lines[a] ?? '';
  lines[a] = lines[b] ?? '';
  lines[b] = kept;
  return bytesOf(lines.join('\n'));
}

function textOf(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 255);
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Whole numbers below a bound, from a seed: a linear congruential generator (Numerical Recipes, section 7.1), its high bits. */
function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state;
  };
  for (let n = 0; n < 4; n++) next();
  return (below) => Math.floor((next() / 4_294_967_296) * below);
}
