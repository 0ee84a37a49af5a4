/** Leaves out those points of a section that nobody sees: without them no line that is drawn through the others moves by more than so many pixels. */
import { itemAt } from '#geometry/assert.ts';
import { type SectionPoints, shownFronts } from '#handoff/section-shapes.ts';

/** px */
const UNSEEN = 0.1;

export interface SectionScale {
  /** px a mm along the cut, and a mm of depth. */
  readonly along: number;
  readonly down: number;
}

type Point = SectionPoints[number];

/** Each point is a place in as many dimensions as lines run through it; a chord that passes it closely there does so in each of them. */
export function thinRun(run: readonly Point[], { along, down }: SectionScale): Point[] {
  const places = run.map((point) => {
    const { near, far, sheet } = shownFronts(point);
    const depths = [near.depth, ...near.bands, far.depth, ...far.bands, sheet];
    return [point.distance * along, ...depths.map((depth) => depth * down)];
  });
  const isKept = new Uint8Array(run.length);
  const open: [number, number][] = [[0, run.length - 1]];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [first, last] = next;
    isKept[first] = 1;
    isKept[last] = 1;
    const farthest = farthestFrom(places, first, last);
    if (farthest !== undefined) open.push([first, farthest], [farthest, last]);
  }
  return run.filter((_, index) => isKept[index] === 1);
}

/** The place between two that lies farthest off their chord; undefined where none can be seen to. */
function farthestFrom(places: readonly number[][], first: number, last: number): number | undefined {
  const [from, to] = [itemAt(places, first), itemAt(places, last)];
  const chord = from.map((value, index) => itemAt(to, index) - value);
  const length = chord.reduce((sum, each) => sum + each * each, 0);
  let farthest: number | undefined;
  let most = UNSEEN * UNSEEN;
  for (let at = first + 1; at < last; at++) {
    const off = itemAt(places, at).map((value, index) => value - itemAt(from, index));
    const dot = off.reduce((sum, each, index) => sum + each * itemAt(chord, index), 0);
    const share = length > 0 ? Math.min(1, Math.max(0, dot / length)) : 0;
    let squared = 0;
    off.forEach((each, index) => {
      squared += (each - share * itemAt(chord, index)) ** 2;
    });
    if (squared <= most) continue;
    most = squared;
    farthest = at;
  }
  return farthest;
}
