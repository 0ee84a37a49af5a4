/** Every tricky drawing gives exactly its findings and its measures, in time, and without a word on the console. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { TRICKY_BLOCKS } from '#fixtures/tricky-blocks.ts';
import { TRICKY_CONTAINERS } from '#fixtures/tricky-containers.ts';
import type { TrickyDrawing } from '#fixtures/tricky-drawing.ts';
import { TRICKY_KINDS } from '#fixtures/tricky-kinds.ts';
import { TRICKY_PLATES } from '#fixtures/tricky-plates.ts';
import { TRICKY_POLYLINES } from '#fixtures/tricky-polylines.ts';
import { TRICKY_ROUNDS } from '#fixtures/tricky-rounds.ts';
import { TRICKY_SPLINES } from '#fixtures/tricky-splines.ts';
import { brokenChains, measureDrawing } from '#support/drawings/measure-drawing.ts';

const consoles = (['log', 'info', 'warn', 'error', 'debug'] as const).map((name) => ({ name, calls: 0 }));

beforeEach(() => {
  for (const each of consoles) {
    vi.spyOn(console, each.name).mockImplementation(() => {
      each.calls += 1;
    });
  }
});

afterEach(() => {
  vi.restoreAllMocks();
  for (const { name, calls } of consoles) expect(calls, `console.${name}`).toBe(0);
});

const SETS = [
  ['polylines', TRICKY_POLYLINES],
  ['rounds', TRICKY_ROUNDS],
  ['splines', TRICKY_SPLINES],
  ['containers', TRICKY_CONTAINERS],
  ['blocks', TRICKY_BLOCKS],
  ['kinds and layers', TRICKY_KINDS],
  ['plates', TRICKY_PLATES],
] as const;

describe.each(SETS)('tricky %s', (_, fixtures) => {
  for (const fixture of fixtures) {
    test(titleOf(fixture), { tags: fixture.isLong ? ['long'] : [] }, () => expectAsStated(fixture));
  }
});

function expectAsStated({ bytes, unit, wideLines, codes, measure, within = 1e-6 }: TrickyDrawing): void {
  const drawing = readDrawing(bytes, { unit, wideLines });
  expect(drawing.findings.map(({ code }) => code).sort()).toEqual(codes);
  expect(brokenChains(drawing)).toEqual([]);
  const { box, ...figures } = measureDrawing(drawing);
  for (const [name, wanted] of Object.entries(measure)) {
    if (name === 'box') continue;
    const found = figures[name as keyof typeof figures];
    expect(Math.abs(found - (wanted as number)), `${name} ${found}, wanted ${wanted}`).toBeLessThanOrEqual(
      within,
    );
  }
  for (const side of ['minX', 'minY', 'maxX', 'maxY'] as const) {
    if (measure.box === undefined) continue;
    expect(Math.abs(box[side] - measure.box[side]), `${side} ${box[side]}`).toBeLessThanOrEqual(within);
  }
  for (const found of drawing.findings)
    expect(sayFinding(found).reason).not.toMatch(/undefined|NaN|\[object/);
}

test('there are at least 70 of them', () => {
  const all = SETS.flatMap(([, fixtures]) => fixtures);
  expect(all.length).toBeGreaterThanOrEqual(70);
  expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
});

/** Trouble and codes, so that a search for a code finds its tests. */
function titleOf({ name, codes }: TrickyDrawing): string {
  const unique = [...new Set(codes)];
  return unique.length === 0 ? name : `${name} (${unique.join(', ')})`;
}
