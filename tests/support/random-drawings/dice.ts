/** Random numbers that a seed fixes, the same on every engine: a 32-bit mixing generator (mulberry32, public domain). */
export interface Dice {
  /** From 0, less than 1. */
  readonly next: () => number;
  readonly between: (least: number, most: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (least: number, most: number) => number;
  readonly pick: <Item>(items: readonly Item[]) => Item;
  readonly chance: (share: number) => boolean;
}

export function rollDice(seed: number, index: number): Dice {
  let state = (Math.imul(seed, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 0x1_0000_0000;
  };
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    whole,
    between: (least, most) => least + next() * (most - least),
    pick: (items) => {
      const item = items[whole(0, items.length - 1)];
      if (item === undefined) throw new Error('there is something to pick from');
      return item;
    },
    chance: (share) => next() < share,
  };
}
