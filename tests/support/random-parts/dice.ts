/** Random figures that a seed and a number settle: the same ones on every machine, so that a failing case has a name. */

export interface Dice {
  /** At least 0, less than 1. */
  readonly share: () => number;
  /** Whole, both ends counted in. */
  readonly whole: (low: number, high: number) => number;
  readonly between: (low: number, high: number) => number;
  readonly chance: (share: number) => boolean;
  readonly oneOf: <Value>(values: readonly Value[]) => Value;
}

/** Each figure is a hash of seed, number and how many came before: the finaliser of MurmurHash3 (A. Appleby, public domain). */
export function diceOf(seed: number, number: number): Dice {
  const start = mixed(mixed(seed) ^ number);
  let count = 0;
  const share = (): number => mixed(start + Math.imul(++count, 0x9e3779b9)) / 2 ** 32;
  const whole = (low: number, high: number): number => low + Math.floor(share() * (high - low + 1));
  return {
    share,
    whole,
    between: (low, high) => low + share() * (high - low),
    chance: (part) => share() < part,
    oneOf: (values) => {
      const value = values[whole(0, values.length - 1)];
      if (value === undefined) throw new Error('there is something to choose from');
      return value;
    },
  };
}

function mixed(value: number): number {
  let bits = value | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}
