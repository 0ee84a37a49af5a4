/** M9.2 a plan of both faces is the plan of each, with levels that both share. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { makePlan, type PlanFace } from '#plan/make-plan.ts';
import { mirrorPlan } from '#plan/mirror-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { partOf } from '#support/parts/part-of.ts';
import { type RandomPart, randomPart, randomSheet } from '#support/random-parts/random-part.ts';
import { trials } from '#support/seeds/property-runs.ts';

function faceOf({ outlines, depths }: RandomPart, letter: string): PlanFace {
  const drawn = partOf({ sheet: randomSheet, outlines });
  const part = { ...drawn, regions: drawn.regions.map((each) => ({ ...each, id: `${letter}${each.id}` })) };
  const asked = new Map(
    part.regions.map(({ id }, index) => [
      id,
      { depth: depths[index % depths.length] ?? 0, plus: 0.05, minus: 0.04 },
    ]),
  );
  return { part, asked };
}

/** What a face has of each stage, by level: none where it has nothing of its own. */
function ownStages({
  stages,
}: Pick<EtchPlan, 'stages'>): Pick<Stage, 'level' | 'piece' | 'opening' | 'lines'>[] {
  return stages
    .filter(({ piece }) => piece.length > 0)
    .map(({ level, piece, opening, lines }) => ({ level, piece, opening, lines }));
}

const cases = { numRuns: trials(60) };

describe('M9.2: random parts on either face', { tags: ['long'] }, () => {
  test('each face is opened as if it were alone, and either may be called the near one', () => {
    fc.assert(
      fc.property(randomPart, randomPart, ({ factor, ...one }, other) => {
        const [near, far] = [faceOf({ ...one, factor }, 'N'), faceOf(other, 'F')];
        const job = plainJob({ etchFactor: [[0, factor]] });
        const both = makePlan({ ...near, far, job });
        const turned = makePlan({ ...far, far: near, job });
        const levels = both.stages.map(({ level }) => level);
        expect(both.far?.stages.map(({ level }) => level)).toEqual(levels);
        expect(turned.stages.map(({ level }) => level)).toEqual(levels);
        if (both.far === undefined || turned.far === undefined) throw new Error('both faces are planned');
        expect(ownStages(both)).toEqual(ownStages(makePlan({ ...near, job })));
        expect(ownStages(both.far)).toEqual(ownStages(makePlan({ ...far, job })));
        expect(ownStages(turned)).toEqual(ownStages(both.far));
        expect(ownStages(turned.far)).toEqual(ownStages(both));
      }),
      cases,
    );
  });

  test('mirrored twice they are the very same', () => {
    fc.assert(
      fc.property(randomPart, randomPart, (one, other) => {
        const plan = makePlan({ ...faceOf(one, 'N'), far: faceOf(other, 'F'), job: plainJob() });
        expect(mirrorPlan(mirrorPlan(plan, 0), 0)).toEqual(plan);
      }),
      { numRuns: trials(20) },
    );
  });
});

/** Depths in steps of 0.01 mm, as drawings give them. */
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((steps) => steps / 100);
const floor = fc.record({
  depth: hundredths(20, 200),
  minus: hundredths(1, 25),
  plus: hundredths(1, 25),
  isFar: fc.boolean(),
});
type Floor = {
  readonly depth: number;
  readonly minus: number;
  readonly plus: number;
  readonly isFar: boolean;
};

/** The fewest points that pierce all intervals, tried over all sets of their upper ends. */
function fewestByTrying(floors: readonly Floor[]): number {
  const ends = [...new Set(floors.map(({ depth, plus }) => depth + plus))];
  let best = ends.length;
  for (let set = 1; set < 2 ** ends.length; set++) {
    const chosen = ends.filter((_, index) => (set >> index) % 2 === 1);
    if (chosen.length >= best) continue;
    const isServed = ({ depth, minus, plus }: Floor) =>
      chosen.some((level) => level >= depth - minus - 1e-9 && level <= depth + plus + 1e-9);
    if (floors.every(isServed)) best = chosen.length;
  }
  return best;
}

/** Squares side by side, one a floor, far from each other. */
function sideOf(floors: readonly Floor[]): PlanFace {
  const part = partOf({
    sheet: rectangle(-9, -9, 20 * floors.length + 9, 19),
    outlines: floors.map((_, index) => rectangle(20 * index, 0, 20 * index + 10, 10)),
  });
  const asked = new Map(
    floors.flatMap(({ depth, minus, plus, isFar }, index) => {
      const region = part.regions.find(({ label, area }) => area < 101 && Math.floor(label.x / 20) === index);
      return region === undefined
        ? []
        : [[`${isFar ? 'F' : 'R'}${region.id}`, { depth, minus, plus }] as const];
    }),
  );
  const letter = floors[0]?.isFar === true ? 'F' : 'R';
  return {
    part: { ...part, regions: part.regions.map((each) => ({ ...each, id: `${letter}${each.id}` })) },
    asked,
  };
}

test('M9.2 as few stages over both faces as an exhaustive search of 500 random parts finds', {
  tags: ['long'],
}, () => {
  fc.assert(
    fc.property(fc.array(floor, { minLength: 2, maxLength: 8 }), (floors) => {
      const [near, far] = [false, true].map((isFar) => floors.filter((each) => each.isFar === isFar));
      if (near === undefined || far === undefined) throw new Error('both sides are dealt');
      fc.pre(near.length > 0 && far.length > 0);
      const plan = makePlan({ ...sideOf(near), far: sideOf(far), job: plainJob({ levels: 'fewest' }) });
      expect(plan.stages).toHaveLength(fewestByTrying(floors));
      for (const { asked, level } of [...plan.regions, ...(plan.far?.regions ?? [])]) {
        if (asked.depth === 0) continue;
        expect(level).toBeGreaterThanOrEqual(asked.depth - asked.minus - 1e-6);
        expect(level).toBeLessThanOrEqual(asked.depth + asked.plus + 1e-6);
      }
    }),
    { numRuns: 500 },
  );
});
