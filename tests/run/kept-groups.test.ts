/** What is kept of a plan's groups from one run to the next: the same figures and findings as without it, to the last bit. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkMaking } from '#checks/check-making.ts';
import type { Loop } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { makePlan } from '#plan/make-plan.ts';
import { createClusterMemory } from '#plan/open-clusters.ts';
import { measurePlan } from '#run/measure-plan.ts';
import { createGroupMemory } from '#run/measured-group.ts';
import { rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

/** A row of pockets with a deeper one in each and webs from hardly any to plenty, beside a slot. */
function rowOfPockets(webs: readonly number[]) {
  const outlines: Loop[] = [];
  const places: [number, number][] = [];
  let x = 0;
  for (const web of webs) {
    outlines.push(roundedRectangle(x, 0, x + 40, 31, 5), rectangle(x + 11, 9, x + 27, 22));
    places.push([x + 4, 15], [x + 19, 15]);
    x += 40 + web;
  }
  outlines.push(rectangle(0, 44, 90, 51));
  places.push([45, 47]);
  return { sheet: rectangle(-12, -14, x + 20, 66), outlines, places };
}

const WEBS = [0.9, 7.3, 2.4, 23, 11.2];
const DEPTHS = [0, 0.4, 1.1, 1.15, 2.3, 3.6, 4.7];

function measured(job: Job, depths: readonly number[], kept?: ReturnType<typeof memories>) {
  const { sheet, outlines, places } = ROW;
  const part = kept?.part ?? partOf({ sheet, outlines });
  const asked = askedAt(
    part,
    places.map(([x, y], i) => [x, y, depths[i] ?? 0]),
  );
  const plan = makePlan({ part, asked, job, ...(kept && { memory: kept.clusters }) });
  const { groups, stages, regions, findings } = measurePlan(plan, job, kept?.groups);
  const found = checkMaking({ plan, job, reached: regions }, groups);
  return { groups: groups.length, stages, regions: [...regions], findings, found };
}

const ROW = rowOfPockets(WEBS);

function memories() {
  const { sheet, outlines } = ROW;
  return {
    part: partOf({ sheet, outlines }),
    clusters: createClusterMemory(),
    groups: createGroupMemory(),
  };
}

const depthsOfRow = fc.array(fc.constantFrom(...DEPTHS), {
  minLength: ROW.places.length,
  maxLength: ROW.places.length,
});
const jobs = fc.constantFrom(
  plainJob({ levels: 'as-drawn' }),
  plainJob({ levels: 'as-drawn', edgeDatum: 'mid-wall' }),
  plainJob({ levels: 'as-drawn', masking: 're-mask' }),
  plainJob({ levels: 'as-drawn', etchFactor: [[0, 1.3]] }),
);

describe('groups of a plan', () => {
  test('edited again and again, are what a run from nothing makes of them', { tags: ['long'] }, () => {
    const edits = fc.array(fc.tuple(fc.nat(ROW.places.length - 1), fc.constantFrom(...DEPTHS)), {
      minLength: 2,
      maxLength: 5,
    });
    fc.assert(
      fc.property(jobs, depthsOfRow, edits, (job, first, changes) => {
        const kept = memories();
        const depths = [...first];
        measured(job, depths, kept);
        for (const [at, depth] of changes) {
          depths[at] = depth;
          expect(measured(job, depths, kept)).toEqual(measured(job, depths));
        }
      }),
      { numRuns: 12 },
    );
  });

  test('fall apart where land is wide, and a change of one leaves the others as they were', () => {
    const job = plainJob({ levels: 'as-drawn' });
    const kept = memories();
    const depths = [1.1, 2.3, 1.1, 2.3, 1.1, 2.3, 1.1, 3.6, 1.1, 2.3, 0.4];
    const before = measured(job, depths, kept);
    expect(before.groups).toBeGreaterThan(2);
    const found = new Set<unknown>();
    const plan = () => {
      const asked = askedAt(
        kept.part,
        ROW.places.map(([x, y], i) => [x, y, depths[i] ?? 0]),
      );
      return makePlan({ part: kept.part, asked, job, memory: kept.clusters });
    };
    for (const group of measurePlan(plan(), job, kept.groups).groups) found.add(group);
    depths[9] = 2.9;
    const after = measurePlan(plan(), job, kept.groups).groups;
    expect(after.filter((group) => !found.has(group))).toHaveLength(1);
    // What the job says of making counts for all of them.
    const stricter = { ...job, rules: { ...job.rules, minLandWidth: 4.5 } };
    expect(
      measurePlan(plan(), stricter, kept.groups).groups.filter((group) => after.includes(group)),
    ).toEqual([]);
  });

  test('together come to what the plan comes to as one', { tags: ['long'] }, () => {
    fc.assert(
      fc.property(jobs, depthsOfRow, (job, depths) => {
        const { sheet, outlines, places } = ROW;
        const part = partOf({ sheet, outlines });
        const asked = askedAt(
          part,
          places.map(([x, y], i) => [x, y, depths[i] ?? 0]),
        );
        const { clusters: _, ...plan } = makePlan({ part, asked, job });
        const whole = measurePlan(plan, job);
        expect(whole.groups).toHaveLength(1);
        const apart = measured(job, depths);
        whole.stages.forEach(({ removedVolume }, i) => {
          expect(apart.stages[i]?.removedVolume).toBeCloseTo(removedVolume, 1);
        });
        for (const [id, reached] of apart.regions) {
          const one = whole.regions.get(id);
          expect(reached.floorArea).toBeCloseTo(one?.floorArea ?? Number.NaN, 4);
          expect(reached.deepest).toBeCloseTo(one?.deepest ?? Number.NaN, 6);
          expect(reached.shallowest).toBeCloseTo(one?.shallowest ?? Number.NaN, 3);
        }
        const asOne = checkMaking({ plan, job, reached: whole.regions }, whole.groups);
        const shortOf = (list: typeof asOne) =>
          list.map(({ code, place }) => [code, ...(place.regions ?? [])].join(' '));
        expect(shortOf(apart.found)).toEqual(shortOf(asOne));
      }),
      { numRuns: 15 },
    );
  });
});
