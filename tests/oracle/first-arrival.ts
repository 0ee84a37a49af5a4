/**
 * First arrival on a grid by fast marching, second order: the eikonal equation |∇T| = 1 solved node by node in the order
 * of arrival (J. A. Sethian, Level Set Methods and Fast Marching Methods, 2nd ed., Cambridge 1999, ch. 8 and its
 * higher-accuracy form). Knows nothing of openings, contours or closed forms: it is given seeds and lets them spread, past
 * nodes that are blocked.
 */

export interface ArrivalGrid {
  /** Nodes along x, y and down. */
  readonly size: readonly [number, number, number];
  readonly spacing: number;
  /** By node: x fastest, then y, then down. Infinite where nothing arrives before `until`. */
  readonly times: Float64Array;
}

/** What is known of a node before the march: when it is reached at the latest, infinite when nothing is known. */
export type Seed = (x: number, y: number, down: number) => number;

export function firstArrival(
  grid: { size: readonly [number, number, number]; spacing: number; until: number },
  seed: Seed,
  isBlocked: (node: number) => boolean = () => false,
): ArrivalGrid {
  const { size, spacing, until } = grid;
  const [nx, ny, nz] = size;
  const count = nx * ny * nz;
  const times = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const isSettled = new Uint8Array(count);
  const isSeeded = new Uint8Array(count);
  const queue = makeQueue(times);
  const march = {
    times,
    isSettled,
    spacing,
    size,
    strides: [1, nx, nx * ny] as const,
    terms: new Float64Array(9),
  };
  for (let node = 0; node < count; node++) {
    if (isBlocked(node)) continue;
    const x = node % nx;
    const y = Math.floor(node / nx) % ny;
    const time = seed(x * spacing, y * spacing, Math.floor(node / (nx * ny)) * spacing);
    if (time > until) continue;
    isSeeded[node] = 1;
    queue.lower(node, time);
  }
  for (let node = queue.pop(); node >= 0; node = queue.pop()) {
    if (at(times, node) > until) break;
    isSettled[node] = 1;
    eachNeighbour(march, node, (neighbour) => {
      if (isSettled[neighbour] === 1 || isBlocked(neighbour)) return;
      const time = solveNode(march, neighbour);
      // A seed gives way only to what comes clearly sooner: less than half a spacing is the scheme's own error.
      if (time < at(times, neighbour) - (isSeeded[neighbour] === 1 ? spacing / 2 : 0)) {
        isSeeded[neighbour] = 0;
        queue.lower(neighbour, time);
      }
    });
  }
  return { size, spacing, times };
}

interface March {
  readonly times: Float64Array;
  readonly isSettled: Uint8Array;
  readonly spacing: number;
  readonly size: readonly [number, number, number];
  readonly strides: readonly [number, number, number];
  /** Working space for one node: three values an axis. */
  readonly terms: Float64Array;
}

function at(values: Float64Array, i: number): number {
  return values[i] ?? Number.POSITIVE_INFINITY;
}

function placeOn(march: March, node: number, axis: 0 | 1 | 2): number {
  return Math.floor(node / march.strides[axis]) % march.size[axis];
}

const AXES = [0, 1, 2] as const;

function eachNeighbour(march: March, node: number, visit: (neighbour: number) => void): void {
  for (const axis of AXES) {
    const place = placeOn(march, node, axis);
    if (place > 0) visit(node - march.strides[axis]);
    if (place < march.size[axis] - 1) visit(node + march.strides[axis]);
  }
}

/**
 * Solves Σ over axes of (∂T)² = 1 at a node from its settled neighbours, each axis as (weight · T − known)²: second order
 * where two settled nodes rise towards this one, else first. While the answer is earlier than one of the neighbours that it
 * came from, the latest of them cannot have fed this node and is left out.
 */
function solveNode(march: March, node: number): number {
  const { terms } = march;
  let used = 0;
  for (const axis of AXES) {
    if (gatherTerm(march, node, axis, used)) used++;
  }
  for (; used > 0; used--) {
    let latest = 0;
    for (let i = 1; i < used; i++) if (at(terms, 3 * i + 2) > at(terms, 3 * latest + 2)) latest = i;
    const time = solveTerms(terms, used);
    if (time >= at(terms, 3 * latest + 2)) return time;
    for (let k = 0; k < 3; k++) terms[3 * latest + k] = at(terms, 3 * (used - 1) + k);
  }
  return Number.POSITIVE_INFINITY;
}

/** Puts weight, known and the nearest neighbour's time of one axis into the working space; false when nothing is settled there. */
function gatherTerm(march: March, node: number, axis: 0 | 1 | 2, into: number): boolean {
  const { times, isSettled, spacing, size, strides, terms } = march;
  const place = placeOn(march, node, axis);
  let best = Number.POSITIVE_INFINITY;
  for (let way = -1; way <= 1; way += 2) {
    const first = node + way * strides[axis];
    if (place + way < 0 || place + way >= size[axis] || isSettled[first] !== 1) continue;
    const nearest = at(times, first);
    if (best <= nearest) continue;
    best = nearest;
    const second = first + way * strides[axis];
    const hasSecond = place + 2 * way >= 0 && place + 2 * way < size[axis] && isSettled[second] === 1;
    const isSecondOrder = hasSecond && at(times, second) <= nearest;
    terms[3 * into] = (isSecondOrder ? 1.5 : 1) / spacing;
    terms[3 * into + 1] = (isSecondOrder ? 2 * nearest - 0.5 * at(times, second) : nearest) / spacing;
    terms[3 * into + 2] = nearest;
  }
  return Number.isFinite(best);
}

/** The later root; NaN when there is none, which no comparison accepts. */
function solveTerms(terms: Float64Array, used: number): number {
  let a = 0;
  let b = 0;
  let c = -1;
  for (let i = 0; i < used; i++) {
    const weight = at(terms, 3 * i);
    const known = at(terms, 3 * i + 1);
    a += weight * weight;
    b -= 2 * weight * known;
    c += known * known;
  }
  return (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
}

interface Queue {
  /** Gives a node an earlier time. */
  readonly lower: (node: number, time: number) => void;
  /** The earliest node; -1 when there is none. */
  readonly pop: () => number;
}

/** A binary heap of nodes by time that knows where each node stands. */
function makeQueue(times: Float64Array): Queue {
  const heap: number[] = [];
  const places = new Int32Array(times.length).fill(-1);
  const put = (place: number, node: number): void => {
    heap[place] = node;
    places[node] = place;
  };
  const timeAt = (place: number): number => at(times, heap[place] ?? -1);
  const rise = (from: number, node: number): void => {
    let place = from;
    while (place > 0) {
      const parent = (place - 1) >> 1;
      if (timeAt(parent) <= at(times, node)) break;
      put(place, heap[parent] ?? -1);
      place = parent;
    }
    put(place, node);
  };
  const sink = (node: number): void => {
    let place = 0;
    for (;;) {
      let child = 2 * place + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && timeAt(child + 1) < timeAt(child)) child++;
      if (timeAt(child) >= at(times, node)) break;
      put(place, heap[child] ?? -1);
      place = child;
    }
    put(place, node);
  };
  return {
    lower: (node, time) => {
      if (time >= at(times, node)) return;
      times[node] = time;
      const place = places[node] ?? -1;
      rise(place < 0 ? heap.length : place, node);
    },
    pop: () => {
      const first = heap[0];
      if (first === undefined) return -1;
      const last = heap.pop();
      places[first] = -2;
      if (heap.length > 0 && last !== undefined) sink(last);
      return first;
    },
  };
}

/** How deep everything above has been reached at a time, under each surface node: x fastest. Linear between nodes. */
export function depthsReached({ size, spacing, times }: ArrivalGrid, time: number): Float64Array {
  const [nx, ny, nz] = size;
  const depths = new Float64Array(nx * ny);
  for (let column = 0; column < nx * ny; column++) {
    let down = 0;
    while (down < nz && at(times, column + down * nx * ny) <= time) down++;
    if (down === 0) continue;
    const above = at(times, column + (down - 1) * nx * ny);
    const below = at(times, column + down * nx * ny);
    const share = Number.isFinite(below) ? (time - above) / (below - above) : 0;
    depths[column] = (down - 1 + share) * spacing;
  }
  return depths;
}
