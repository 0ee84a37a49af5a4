import { test } from 'vitest';
import type { Loop } from '#geometry/span.ts';
import { growRings, type Rings } from '#oracle/buffered-openings.ts';
import type { Part } from '#part/part.ts';
import { allowance } from '#plan/allowance.ts';
import { tessellate } from '#support/geometry/tessellate.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { pocketGrid } from '#support/parts/pocket-grid.ts';
import { builtModule } from '#support/process/built-module.ts';
import type { RunWork } from './run-work.ts';

/** Chords of the comparison, mm: what the contract allows a line to be off. */
const SAGITTA = 0.005;

test('all openings of 800 nested pockets, arcs put back, against JSTS growing each shallower region alone', async () => {
  const { makePlan, createClusterMemory } = (await builtModule<RunWork>('tests/bench/run-work.ts')).runWork;
  const grid = pocketGrid(40, 20);
  const part = partOf(grid);
  const asked = askedAt(part, grid.depths);
  const job = plainJob();
  const growings = growingsOf(part, asked);
  const rounds = Array.from({ length: 5 }, () => ({
    ours: timed(() => makePlan({ part, asked, job })),
    theirs: timed(() => {
      for (const { rings, by } of growings) growRings(rings, by, quadrantsFor(by));
    }),
  }));
  const memory = createClusterMemory();
  const whole = timed(() => makePlan({ part, asked, job, memory }));
  const changed = new Map(asked);
  const [first] = [...asked].find(([, each]) => each.depth === 3) ?? [''];
  changed.set(first, { depth: 2.2, plus: 0.05, minus: 0.05 });
  const again = timed(() => makePlan({ part, asked: changed, job, memory }));
  const ratios = rounds.map(({ ours, theirs }) => ours / theirs).sort((a, b) => a - b);
  console.log(
    `openings of ${part.regions.length} regions: ${round(median(rounds.map(({ ours }) => ours)))} ms; ` +
      `JSTS, ${growings.length} growings: ${round(median(rounds.map(({ theirs }) => theirs)))} ms; ` +
      `ratio ${round(median(ratios))} (${ratios.map(round).join(' ')})`,
  );
  console.log(`one depth changed: ${round(again)} ms of ${round(whole)} ms, 1/${Math.round(whole / again)}`);
});

/** Every shallower region with every allowance that a deeper neighbour asks of it; land grows into its holes. */
function growingsOf(
  part: Part,
  asked: ReadonlyMap<string, { depth: number }>,
): { rings: Rings; by: number }[] {
  const undercut = { etchFactor: plainJob().process.etchFactor, edgeDatum: 'shallow-edge' } as const;
  const depthOf = (id: string) => asked.get(id)?.depth ?? 0;
  const plain = (loop: Loop) => tessellate(loop, SAGITTA);
  return part.regions
    .filter(({ id }) => depthOf(id) > 0)
    .flatMap((region) => {
      const depth = depthOf(region.id);
      const outer = plain(region.loops[0] ?? []);
      // Land can't be grown region by region: the pocket's outline is shrunk by the same allowance instead.
      const land = depth === 1 ? [1] : [];
      const inner = part.regions.filter(({ id }) => depthOf(id) > depth && isNested(region.loops, id, part));
      return [
        ...land.map((level) => ({ rings: [outer], by: -allowance(undercut, { level, depth: 0 }) })),
        ...inner.map(({ id }) => ({
          rings: region.loops.map(plain),
          by: allowance(undercut, { level: depthOf(id), depth }),
        })),
        ...inner.map(({ id }) => ({
          rings: [outer],
          by: -allowance(undercut, { level: depthOf(id), depth: 0 }),
        })),
      ];
    });
}

/** Whether the region fills a hole of these loops: the hole runs through the region's own first point. */
function isNested(loops: readonly Loop[], id: string, part: Part): boolean {
  const start = part.regions.find((each) => each.id === id)?.loops[0]?.[0]?.start;
  return loops.slice(1).some((hole) => hole.some(({ end }) => end.x === start?.x && end.y === start.y));
}

/** Chords of a quarter circle that keep within the sagitta. */
function quadrantsFor(by: number): number {
  return Math.ceil(Math.PI / 4 / Math.acos(1 - SAGITTA / Math.abs(by)));
}

/** Milliseconds of processor time, which other work on the machine does not count into. */
function timed(work: () => void): number {
  globalThis.gc?.();
  const start = process.cpuUsage();
  work();
  return process.cpuUsage(start).user / 1000;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
