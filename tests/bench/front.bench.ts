/** Speed of the front on 800 nested pockets: depths, volumes, relief, section, and against a grid that would be as exact. Prints; judges nothing. */
import { test } from 'vitest';
import { builtModule } from '#support/process/built-module.ts';

type Work = typeof import('./front-work.ts');

const POINTS = 1_000_000;
const ROUNDS = 3;

/** mm; the relief's default tolerance. A pixel's middle is up to half its diagonal off: as exact a grid has this pixel. */
const TOLERANCE = 0.02;
const PIXEL = TOLERANCE * Math.SQRT2;
/** Pixels to a side of the window that is really transformed; the sheet is calculated from it, since time goes with pixels. */
const WINDOW = 2000;

test('the front of 800 nested pockets', async () => {
  const { frontWork: work } = await builtModule<Work>('tests/bench/front-work.ts');
  const front = work.gridFront();
  const index = work.indexFront(front);
  const kit = work.makeContourKit(index);
  const xs = front.sheet.flat().map(({ start }) => start.x);
  const ys = front.sheet.flat().map(({ start }) => start.y);
  const box = { x: Math.min(...xs), y: Math.min(...ys), width: 0, height: 0 };
  box.width = Math.max(...xs) - box.x;
  box.height = Math.max(...ys) - box.y;
  const points = scatter(box);
  const middle = box.y + box.height / 2 + 20;
  const across = () => work.sectionAlong(index, { x: box.x, y: middle }, { x: box.x + box.width, y: middle });
  let triangles = 0;
  let places = 0;
  const rows = [
    ['index and clusters', rounds(() => work.makeContourKit(work.indexFront(front)))],
    ['a million depths', rounds(() => work.depthsAt(index, points)), 'under 2 s asked'],
    ['volumes of all stages', rounds(() => work.stageVolumes(kit))],
    [
      'relief',
      rounds(() => {
        triangles = work.reliefMesh(kit).indices.length / 3;
      }),
      'under 3 s asked',
    ],
    [
      'section across the sheet',
      // A dragged line asks for one after another: the mean of ten.
      rounds(() => {
        for (let i = 0; i < 10; i++) places = across().length;
      }).map((seconds) => seconds / 10),
      'under 0.02 s asked',
    ],
  ] as const;
  const mask = new Uint8Array(WINDOW * WINDOW);
  for (let i = 0; i < mask.length; i++) mask[i] = i % WINDOW > 700 && i % WINDOW < 1300 ? 1 : 0;
  const transform = rounds(() => work.squaredDistanceTransform(mask, WINDOW, WINDOW));
  const pixels = (box.width / PIXEL) * (box.height / PIXEL);
  const grid = (median(transform) * pixels * front.stages.length) / mask.length;
  const relief = median(rows[0][1]) + median(rows[3][1]);
  console.log(
    [
      ...rows.map(([name, times, asked]) => `${name.padEnd(26)} ${show(times)} ${asked ?? ''}`),
      `relief has ${triangles} triangles (under 3 000 000 asked), the section ${places} places`,
      `distance transform of the same sheet with pixels of ${PIXEL.toFixed(4)} mm: ${grid.toFixed(0)} s calculated from ${show(transform)} for ${WINDOW}² pixels`,
      `ratio: the grid takes ${(grid / relief).toFixed(0)} times as long as index and relief`,
    ].join('\n'),
  );
});

function rounds(work: () => unknown): number[] {
  return Array.from({ length: ROUNDS }, () => {
    globalThis.gc?.();
    const start = performance.now();
    work();
    return (performance.now() - start) / 1000;
  });
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function show(times: readonly number[]): string {
  return `${median(times).toFixed(3)} s (${times.map((each) => each.toFixed(3)).join(', ')})`;
}

/** Evenly spread places without a pattern: Park and Miller's generator (Communications of the ACM 31 (1988)). */
function scatter(box: { x: number; y: number; width: number; height: number }): Float64Array {
  const points = new Float64Array(2 * POINTS);
  let seed = 20_270_401;
  for (let i = 0; i < points.length; i++) {
    seed = (seed * 16_807) % 2_147_483_647;
    const share = seed / 2_147_483_647;
    points[i] = i % 2 === 0 ? box.x + share * box.width : box.y + share * box.height;
  }
  return points;
}
