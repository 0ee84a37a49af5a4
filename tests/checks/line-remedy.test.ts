/**
 * M6.6: what helps most against a line that comes out off its place. A remedy's sum is held against the budget of a job in which the change
 * has been made. Bays of 20 mm side by side, the last one beside land; φ = 1.3, 0.02 mm/min.
 */
import { describe, expect, test } from 'vitest';
import { checkLines } from '#checks/check-lines.ts';
import { type LineBudget, lineBudgets, lineOverBy, worseLineSide } from '#checks/line-budget.ts';
import { type LineSum, lineSum } from '#checks/line-sum.ts';
import type { Job } from '#job/job.ts';
import type { Asked } from '#part/part.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

interface Change {
  readonly process?: Partial<Job['process']>;
  readonly scribing?: Partial<Job['process']['scribing']>;
  readonly tolerance?: number;
  /** By bay. */
  readonly asked?: readonly Partial<Asked>[];
}

function bays(depths: readonly number[], { process, scribing, tolerance, asked = [] }: Change) {
  const part = partOf({ outlines: depths.map((_, i) => rectangle(20 * i, 0, 20 * i + 20, 60)) });
  const plain = plainJob({ etchFactor: [[0, 1.3]], levels: 'as-drawn' });
  const still = { cut: 0, template: undefined, laying: undefined, stretch: undefined };
  const job: Job = {
    ...plain,
    process: {
      ...plain.process,
      ...{ rate: 0.02, rateSpread: 0, timing: 0, factorSpread: 0 },
      ...process,
      scribing: { ...still, ...scribing },
    },
    rules: { ...plain.rules, lineTolerance: tolerance },
  };
  const depthAt = (i: number) => depths[i] ?? 0;
  const of = askedAt(
    part,
    depths.map((depth, i) => [20 * i + 10, 30, depth] as const),
    { plus: 0.16, minus: 0.24 },
  );
  const changed = part.regions.map(({ id, label }): [string, Asked] => {
    const bay = Math.floor(label.x / 20);
    return [id, { depth: depthAt(bay), plus: 0.16, minus: 0.24, ...of.get(id), ...asked[bay] }];
  });
  const plan = makePlan({ part, asked: new Map(changed), job });
  return { plan, job, budgets: lineBudgets(plan, job) };
}

function at(depths: readonly number[], change: Change, step = 0): LineBudget {
  const [level, beside] = [depths[step], depths[step + 1] ?? 0];
  const found = bays(depths, change).budgets.find((each) => each.level === level && each.beside === beside);
  if (found === undefined) throw new Error(`no edge of ${level} beside ${beside}`);
  return found;
}

describe('what helps, one by one', () => {
  const template = { slot: 2, blade: 0.6 };

  test('a blade that fills its slot: what is left is the cut', () => {
    const { remedy } = at([1], { scribing: { cut: 0.1, template }, tolerance: 0.2 });
    expect(remedy.changes).toEqual(['fill-slot']);
    expect(remedy.sum.parts).toEqual({ scribing: expect.closeTo(0.1, 12) });
    expect(remedy.sum).toEqual(at([1], { scribing: { cut: 0.1 }, tolerance: 0.2 }).byClock);
  });

  test('a cut half as far off, and a template laid half as far off', () => {
    const cut = at([1], { scribing: { cut: 0.5, laying: 0.02 }, tolerance: 0.3 }).remedy;
    expect(cut.changes).toEqual(['cut-closer']);
    expect(cut.sum.parts).toEqual({ scribing: expect.closeTo(0.25, 12), laying: expect.closeTo(0.02, 12) });
    const laid = at([1], { scribing: { cut: 0.02, laying: 0.5 }, tolerance: 0.3 }).remedy;
    expect(laid.changes).toEqual(['lay-closer']);
    expect(laid.sum.parts).toEqual({ scribing: expect.closeTo(0.02, 12), laying: expect.closeTo(0.25, 12) });
    expect(laid.sum.outward.likely).toBeCloseTo(Math.hypot(0.02, 0.25), 12);
  });

  test('a coupon etched to that depth: 1.96 of its gauges, φ times that of the depth', () => {
    const { changes, sum } = at([2.4], { process: { factorSpread: 0.3 }, tolerance: 0.4 }).remedy;
    expect(changes).toEqual(['coupon-at-depth']);
    const u = Math.hypot((Math.SQRT2 * 0.02) / Math.sqrt(3) / 4.8, (1.3 * 0.005) / Math.sqrt(3) / 2.4);
    expect(sum.outward.worst).toBeCloseTo(1.96 * u * 2.4, 4);
    // Where the factor is known better than a coupon gives, it helps nothing.
    const sure = at([2.4], { process: { factorSpread: 0.004 }, tolerance: 0.001 }).remedy;
    expect(sure.changes).toEqual(['edge-at-foot']);
  });

  test('stages gauged on the way', () => {
    const change = { process: { rateSpread: 0.1 }, tolerance: 0.15 };
    const { remedy, gauged } = at([2, 1], change, 1);
    expect(remedy.changes).toEqual(['gauge-run']);
    expect(remedy.sum).toEqual(gauged);
  });

  test('a new coat for each stage', () => {
    const timed = { timing: 4 };
    const { remedy } = at([3, 2.9], { process: timed, tolerance: 0.16 });
    expect(remedy.changes).toEqual(['re-mask']);
    const remasked = at([3, 2.9], { process: { ...timed, masking: 're-mask' }, tolerance: 0.16 });
    expect(remedy.sum).toEqual(remasked.byClock);
    // By then later stages move nothing: what is left is the dip of its own stage.
    expect(remasked.byClock.parts).toEqual({ depth: expect.closeTo(1.3 * 0.08, 9) });
    expect(remasked.amplification).toBeCloseTo(1, 6);
  });

  test('levels further apart, by half of the narrowest tolerance of each: 3 to 3.08 and 1 to 0.88', () => {
    const process = { rateSpread: 0.05, factorSpread: 0.1, edgeDatum: 'mid-wall' } as const;
    const change: Change = { process, tolerance: 0.02, asked: [{}, {}, {}, { plus: 0.3, minus: 0.02 }] };
    const { remedy } = at([3, 1, 2, 3], change);
    expect(remedy.changes).toEqual(expect.arrayContaining(['re-mask', 'levels-apart', 'coupon-at-depth']));
    expect(remedy.changes).toHaveLength(3);
    // A coupon to 3.08 mm.
    const u = Math.hypot((Math.SQRT2 * 0.02) / Math.sqrt(3) / 6.16, (1.3 * 0.005) / Math.sqrt(3) / 3.08);
    const moved = at([3.08, 0.88, 2, 3.08], {
      process: { ...process, masking: 're-mask', factorSpread: 1.96 * u },
      tolerance: 0.02,
    });
    expect(remedy.sum.outward.worst).toBeCloseTo(moved.byClock.outward.worst, 5);
    expect(remedy.sum.inward.worst).toBeCloseTo(moved.byClock.inward.worst, 5);
    expect(remedy.sum.outward.likely).toBeCloseTo(moved.byClock.outward.likely, 5);
  });

  test('another datum last, and only where something is asked that else is not held', () => {
    const tight = at([2], { scribing: { cut: 0.03 }, process: { factorSpread: 0.1 }, tolerance: 0.016 });
    expect(tight.remedy.changes).toEqual(['coupon-at-depth', 'cut-closer', 'edge-at-foot']);
    expect(tight.remedy.sum.outward.worst).toBeCloseTo(0.015, 9);
    const foot = at([2], {
      scribing: { cut: 0.03 },
      process: { factorSpread: 0.1, edgeDatum: 'deep-foot' },
      tolerance: 0.01,
    });
    expect(foot.remedy.changes).toEqual(['cut-closer']);
    const through = at([2], {
      scribing: { cut: 0.03 },
      process: { factorSpread: 0.1 },
      tolerance: 0.016,
      asked: [{ wall: 1.5 }],
    });
    expect(through.remedy.changes).not.toContain('edge-at-foot');
  });
});

describe('how far remedies go', () => {
  test('one after the other, until the edge is held', () => {
    const off = { cut: 0.4, laying: 0.3 };
    const held = at([1], { scribing: off, process: { timing: 0.5 }, tolerance: 0.26 }).remedy;
    expect(held.changes).toEqual(['cut-closer', 'lay-closer']);
    expect(held.sum.outward.likely).toBeCloseTo(Math.hypot(0.2, 0.15, 0.013), 9);
    expect(at([1], { scribing: off, tolerance: 0.37 }).remedy.changes).toEqual(['cut-closer']);
  });

  test('until nothing helps by 0.005 mm', () => {
    expect(at([1], { scribing: { cut: 0.0098 }, tolerance: 0.001 }).remedy.changes).toEqual(
      ['edge-at-foot'].slice(1),
    );
    expect(at([1], { scribing: { cut: 0.0102 }, tolerance: 0.001 }).remedy.changes).toEqual(['cut-closer']);
  });

  test('only one where nothing is asked', () => {
    expect(at([1], { scribing: { cut: 0.4, laying: 0.3 } }).remedy.changes).toEqual(['cut-closer']);
    expect(at([1], { scribing: { cut: 0.3, laying: 0.4 } }).remedy.changes).toEqual(['lay-closer']);
  });

  test('an edge that only everything at once takes too far is held against that', () => {
    const scribing = { cut: 0.2, laying: 0.16, template: { slot: 1, blade: 0.76 } };
    // √(0.2² + 0.16² + 0.12²) = 0.283 is held by 0.3; 0.48 is not, nor 0.36 without the play, but 0.26 is.
    const { byClock, remedy } = at([1], { scribing, tolerance: 0.3 });
    expect(byClock.outward.likely).toBeLessThan(0.3);
    expect(byClock.outward.worst).toBeCloseTo(0.48, 9);
    expect(remedy.changes).toEqual(['fill-slot', 'cut-closer']);
    expect(remedy.sum.outward.worst).toBeCloseTo(0.26, 9);
  });

  test('a region’s own tolerance, less on one side', () => {
    const asked = [{ edge: { plus: 0.31, minus: 0.14 } }];
    const { byClock, remedy } = at([1], { scribing: { cut: 0.2 }, asked });
    expect([byClock.outward.allowed, byClock.inward.allowed]).toEqual([0.31, 0.14]);
    expect(lineOverBy(byClock, 'worst')).toBeCloseTo(0.06, 9);
    expect(worseLineSide(byClock)).toBe('inward');
    expect(remedy.changes).toEqual(['cut-closer']);
  });
});

describe('which side is worse', () => {
  const sum = (outward: number, inward: number, allowed?: readonly [number, number]): LineSum => ({
    parts: {},
    outward: { worst: outward, likely: outward / 2, allowed: allowed?.[0] },
    inward: { worst: inward, likely: inward / 4, allowed: allowed?.[1] },
  });

  test('the one that passes what is asked by more', () => {
    expect(worseLineSide(sum(0.5, 0.4))).toBe('outward');
    expect(worseLineSide(sum(0.4, 0.5))).toBe('inward');
    expect(worseLineSide(sum(0.4, 0.4))).toBe('outward');
    expect(worseLineSide(sum(0.5, 0.4, [0.3, 0.1]))).toBe('inward');
    expect(worseLineSide(sum(0.4, 0.5, [0.1, 0.3]))).toBe('outward');
  });

  test('and by how much', () => {
    expect(lineOverBy(sum(0.5, 0.4, [0.3, 0.1]), 'worst')).toBeCloseTo(0.3, 12);
    expect(lineOverBy(sum(0.5, 0.4, [0.1, 0.3]), 'likely')).toBeCloseTo(0.15, 12);
    expect(lineOverBy(sum(0.5, 0.4), 'worst')).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('M6.5 the sum itself', () => {
  const lines = {
    undercut: { etchFactor: [[0, 1]] as const, edgeDatum: 'shallow-edge' as const },
    levels: [3, 2.9],
  };
  const step = { level: 3, beside: 2.9 };
  const offBy = (by: number) => Math.sqrt((3 + by) ** 2 - 2.9 ** 2) - Math.sqrt(3 ** 2 - 2.9 ** 2);

  test('one etch, ± 0.05: 0.177 out and 0.227 in, and the variance of a place that is no straight line of it', () => {
    const sum = lineSum(
      step,
      lines,
      [
        {
          cause: 'depth',
          quantities: [
            {
              likely: 0.05,
              worst: 0.05,
              move: ({ etches }, by) => {
                etches[0] = (etches[0] ?? 0) + by;
              },
            },
          ],
        },
      ],
      { plus: 0.2, minus: 0.1 },
    );
    expect(sum.outward.worst).toBeCloseTo(offBy(0.05), 9);
    expect(sum.inward.worst).toBeCloseTo(-offBy(-0.05), 9);
    expect(sum.parts).toEqual({ depth: expect.closeTo(-offBy(-0.05), 9) });
    const many = Array.from({ length: 2000 }, (_, i) => offBy(0.05 * ((i + 0.5) / 1000 - 1)));
    const mean = many.reduce((total, each) => total + each, 0) / many.length;
    const variance = many.reduce((total, each) => total + (each - mean) ** 2, 0) / many.length;
    expect(sum.outward.likely / Math.sqrt(3 * variance)).toBeCloseTo(1, 3);
    expect([sum.outward.allowed, sum.inward.allowed]).toEqual([0.2, 0.1]);
  });

  test('a quantity that counts only beside another lies where it takes the edge farther', () => {
    const sum = lineSum(
      step,
      lines,
      [
        {
          cause: 'scribing',
          quantities: [
            {
              likely: 0.1,
              worst: 0.1,
              move: ({ cuts }, by) => {
                cuts[0] = (cuts[0] ?? 0) + by;
              },
            },
          ],
        },
        {
          cause: 'stretch',
          quantities: [
            {
              likely: 0.5,
              worst: 0.5,
              move: ({ cuts }, by) => {
                cuts[0] = (cuts[0] ?? 0) * (1 - by);
              },
            },
          ],
        },
      ],
      undefined,
    );
    expect([sum.outward.worst, sum.inward.worst]).toEqual([
      expect.closeTo(0.15, 12),
      expect.closeTo(0.15, 12),
    ]);
  });
});

describe('findings', () => {
  const found = (change: Change, depths: readonly number[] = [2.1, 2]) => {
    const { budgets, plan, job } = bays(depths, change);
    return { budgets, found: checkLines(budgets, plan, job.process) };
  };
  const sure = { factorSpread: 0.1 };

  test('(line-doubt) the edge with most doubt speaks for the others: 2.1 beside land, ± 0.21', () => {
    const { budgets, found: reported } = found({ process: sure });
    expect(reported).toHaveLength(1);
    expect(reported[0]).toMatchObject({
      code: 'line-doubt',
      facts: { level: 2.1, beside: 0, edges: 3, of: 3, factorSpread: 0.1, likely: expect.closeTo(0.21, 9) },
    });
    expect(reported[0]?.place.at).toEqual(
      budgets.find(({ level, beside }) => level === 2.1 && beside === 0)?.at,
    );
    expect(reported[0]?.place.regions).toHaveLength(2);
  });

  test('(line-not-held) the edge that passes what is asked by most, and the regions of all that do', () => {
    const edge = (plus: number, minus = plus) => ({ edge: { plus, minus } });
    const reported = (...asked: Partial<Asked>[]) => found({ process: sure, asked }).found;
    const [both, ...others] = reported(edge(0.2), edge(0.19, 0.12));
    expect(others).toEqual([]);
    expect(both).toMatchObject({
      code: 'line-not-held',
      facts: { level: 2, beside: 0, edges: 2, of: 3, side: 'inward', allowed: 0.12 },
    });
    expect(both?.place.regions).toHaveLength(2);
    expect(both?.place.at?.x).toBeGreaterThan(19);
    const [one] = reported(edge(0.2), edge(0.23));
    expect(one).toMatchObject({ facts: { level: 2.1, beside: 0, edges: 1, of: 3, allowed: 0.2 } });
    expect(one?.place.regions).toHaveLength(1);
    const [first] = reported(edge(0.1), edge(0.19));
    expect(first).toMatchObject({ facts: { level: 2.1, edges: 2 } });
  });

  test('none where nothing may move a line, or just so far as is asked', () => {
    expect(found({}).found).toEqual([]);
    expect(found({ scribing: { cut: 0.125 }, tolerance: 0.125 }).found).toEqual([]);
  });
});
