/**
 * An interpreter of RS-274 words, written from the NIST RS274NGC interpreter report (NISTIR 6556, 2000): line format 3.3,
 * modal groups 3.4, motion 3.5.1 to 3.5.3, units 3.5.7, end 3.6.1. What a program of scribe lines has no need of is refused.
 */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A move in millimetres; an arc has a centre. */
export interface Move {
  readonly rapid: boolean;
  readonly from: Spot;
  readonly to: Spot;
  readonly center?: { readonly x: number; readonly y: number };
  readonly clockwise?: boolean;
  /** mm/min; 0 for a rapid move. */
  readonly feed: number;
}

/** 3.5.3.2: the two radii of an arc may differ by 0.002 mm or 0.0002 inch. */
const RADII_APART = { mm: 0.002, in: 0.0002 };

const MOTION = new Set([0, 1, 2, 3]);
const KNOWN_G = new Set([0, 1, 2, 3, 17, 20, 21, 90, 94]);
const KNOWN_M = new Set([2, 3, 4, 5, 8, 9, 30]);

export function interpretRs274(text: string): { readonly moves: readonly Move[]; readonly ended: boolean } {
  const moves: Move[] = [];
  const state: State = { at: { x: 0, y: 0, z: 0 }, feed: 0 };
  for (const line of text.split(/\r?\n/)) {
    const block = new Block(line);
    takeModes(block, state);
    const move = moveOf(block, state);
    if (move !== undefined) {
      moves.push(move);
      state.at = move.to;
    }
    if (block.codes('M').some((code) => code === 2 || code === 30)) return { moves, ended: true };
  }
  return { moves, ended: false };
}

interface State {
  at: Spot;
  feed: number;
  unit?: 'mm' | 'in';
  motion?: number;
}

/** One line of the program. */
class Block {
  readonly #words: readonly { readonly letter: string; readonly value: number }[];
  readonly line: string;

  constructor(line: string) {
    this.line = line;
    this.#words = wordsOf(line);
  }

  codes(letter: string): number[] {
    return this.#words.filter((word) => word.letter === letter).map(({ value }) => value);
  }

  /** A letter may stand once in a line (3.3.2). */
  only(letter: string): number | undefined {
    const found = this.codes(letter);
    if (found.length > 1) throw this.fault(`two ${letter}`);
    return found[0];
  }

  fault(what: string): Error {
    return new Error(`${what} in ${this.line}`);
  }
}

function takeModes(block: Block, state: State): void {
  for (const code of block.codes('G')) if (!KNOWN_G.has(code)) throw block.fault(`G${code}`);
  for (const code of block.codes('M')) if (!KNOWN_M.has(code)) throw block.fault(`M${code}`);
  if (block.codes('G').includes(20)) state.unit = 'in';
  if (block.codes('G').includes(21)) state.unit = 'mm';
  const motions = block.codes('G').filter((code) => MOTION.has(code));
  if (motions.length > 1) throw block.fault('two motions');
  if (motions[0] !== undefined) state.motion = motions[0];
  const feed = block.only('F');
  if (feed !== undefined) state.feed = feed * (state.unit === 'in' ? 25.4 : 1);
}

function moveOf(block: Block, { at, unit, motion, feed }: State): Move | undefined {
  const scale = unit === 'in' ? 25.4 : 1;
  const [x, y, z, i, j] = ['X', 'Y', 'Z', 'I', 'J'].map((letter) => {
    const value = block.only(letter);
    return value === undefined ? undefined : value * scale;
  });
  if (x === undefined && y === undefined && z === undefined) return undefined;
  if (unit === undefined || motion === undefined) throw block.fault('no unit or motion');
  if (motion !== 0 && feed <= 0) throw block.fault('no feed');
  const to = { x: x ?? at.x, y: y ?? at.y, z: z ?? at.z };
  const move = { rapid: motion === 0, from: at, to, feed: motion === 0 ? 0 : feed };
  if (motion < 2) return move;
  if (i === undefined && j === undefined) throw block.fault('no centre');
  const center = { x: at.x + (i ?? 0), y: at.y + (j ?? 0) };
  const apart = Math.abs(radius(center, at) - radius(center, to));
  if (apart > RADII_APART[unit] * scale) throw block.fault(`radii ${apart} mm apart`);
  return { ...move, center, clockwise: motion === 2 };
}

/** Points along a move, close enough for a comparison. */
export function pointsOfMove({ from, to, center, clockwise }: Move, count = 16): { x: number; y: number }[] {
  const shares = Array.from({ length: count + 1 }, (_, index) => index / count);
  if (center === undefined) {
    return shares.map((share) => ({
      x: from.x + (to.x - from.x) * share,
      y: from.y + (to.y - from.y) * share,
    }));
  }
  const first = Math.atan2(from.y - center.y, from.x - center.x);
  const last = Math.atan2(to.y - center.y, to.x - center.x);
  let turn = last - first;
  if (clockwise === true) while (turn >= 0) turn -= 2 * Math.PI;
  else while (turn <= 0) turn += 2 * Math.PI;
  const start = radius(center, from);
  const grown = radius(center, to) - start;
  return shares.map((share) => ({
    x: center.x + (start + grown * share) * Math.cos(first + turn * share),
    y: center.y + (start + grown * share) * Math.sin(first + turn * share),
  }));
}

function radius(center: { readonly x: number; readonly y: number }, spot: Spot): number {
  return Math.hypot(spot.x - center.x, spot.y - center.y);
}

/** Words of a line: comments and white space do not count, letters of either case (3.3). */
function wordsOf(line: string): { readonly letter: string; readonly value: number }[] {
  const bare = line
    .replace(/\([^()]*\)/g, '')
    .replace(/\s/g, '')
    .toUpperCase();
  if (bare === '' || bare === '%') return [];
  const words = [...bare.matchAll(/([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/g)];
  if (words.map(([all]) => all).join('') !== bare) throw new Error(`not words: ${line}`);
  return words.map(([, letter = '', value]) => ({ letter, value: Number(value) }));
}
