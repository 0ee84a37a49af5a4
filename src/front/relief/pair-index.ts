/** Which number stands for a pair of whole numbers: a hash table of plain arrays, for a hundred thousand pairs and more at once. */

/** Entries to a place of the table, at most: half. */
const FIRST_ROOM = 1024;

export class PairIndex {
  #count = 0;
  #slots = new Int32Array(2 * FIRST_ROOM).fill(-1);
  #firsts = new Int32Array(FIRST_ROOM);
  #seconds = new Int32Array(FIRST_ROOM);

  /** Pairs are numbered from 0 in the order in which they came. */
  get count(): number {
    return this.#count;
  }

  /** The number of a pair, -1 where it is not known. */
  find(first: number, second: number): number {
    const mask = this.#slots.length - 1;
    for (let slot = hashOf(first, second) & mask; ; slot = (slot + 1) & mask) {
      const at = this.#slots[slot] as number;
      if (at < 0 || (this.#firsts[at] === first && this.#seconds[at] === second)) return at;
    }
  }

  /** Adds a pair that is not known; gives its number. */
  add(first: number, second: number): number {
    const at = this.#count++;
    if (at === this.#firsts.length) this.#grow();
    this.#firsts[at] = first;
    this.#seconds[at] = second;
    this.#place(at);
    return at;
  }

  #place(at: number): void {
    const mask = this.#slots.length - 1;
    let slot = hashOf(this.#firsts[at] as number, this.#seconds[at] as number) & mask;
    while ((this.#slots[slot] as number) >= 0) slot = (slot + 1) & mask;
    this.#slots[slot] = at;
  }

  #grow(): void {
    const count = this.#firsts.length;
    const [firsts, seconds] = [new Int32Array(2 * count), new Int32Array(2 * count)];
    firsts.set(this.#firsts);
    seconds.set(this.#seconds);
    [this.#firsts, this.#seconds] = [firsts, seconds];
    this.#slots = new Int32Array(4 * count).fill(-1);
    for (let at = 0; at < count; at++) this.#place(at);
  }
}

/** Multiplications by odd numbers about the golden ratio's, which spread neighbours (D. E. Knuth, The Art of Computer Programming 3, 6.4). */
function hashOf(first: number, second: number): number {
  const mixed = Math.imul(first, 0x9e3779b1) ^ Math.imul(second, 0x85ebca77);
  return mixed ^ (mixed >>> 15);
}
