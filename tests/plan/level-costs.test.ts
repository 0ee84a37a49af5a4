import { expect, test } from 'vitest';
import { levelChoicesText } from '#cli/level-choices-text.ts';
import type { Job } from '#job/job.ts';
import { chooseLevels } from '#plan/choose-levels.ts';
import { levelCosts } from '#plan/level-costs.ts';
import { makePlan } from '#plan/make-plan.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

const region = (id: string, depth: number) =>
  [id, { low: depth, high: depth, plus: 0.1, minus: 0.1 }] as const;

test('M4.2 depths 1.0, 1.15 and 2.0 ± 0.1: two stages use 75 % of a tolerance, one would throw all but the middle out', () => {
  const choices = levelCosts(new Map([region('R1', 1), region('R2', 1.15), region('R3', 2)]));
  expect(choices.map(({ stages }) => stages)).toEqual([1, 2, 3]);
  // One level midway between 1.0 and 2.0 is 0.5 off both: five tolerances.
  expect(choices[0]?.worstShare).toBeCloseTo(5, 6);
  expect(choices[1]?.worstShare).toBeCloseTo(0.75, 6);
  expect(choices[1]?.levels.map((level) => level.toFixed(4))).toEqual(['2.0000', '1.0750']);
  expect(choices[2]?.worstShare).toBeCloseTo(0, 6);
  expect(choices[0]?.regions.map(({ id, share }) => `${id} ${share.toFixed(2)}`)).toEqual([
    'R1 5.00',
    'R2 3.50',
    'R3 5.00',
  ]);
  expect(levelChoicesText(choices)).toEqual([
    '1 stage: up to 500 % of a tolerance; out of tolerance: R1 500 %, R2 350 %, R3 500 %',
    '2 stages: up to 75 % of a tolerance',
    '3 stages: up to 0 % of a tolerance',
  ]);
});

test('M8.2 room kept for the run narrows the choice, and shares are of the tolerance asked', () => {
  // Depths 1.94 and 2.06, + 0.08 − 0.07: one level uses 0.12 / 0.15 of both. With 0.05 kept for the run they need a level each.
  const ends = [1.94, 2.06].map((depth) => ({ low: depth, high: depth }));
  const bands = (plus: number, minus: number) =>
    new Map(ends.map(({ low, high }, index) => [`R${index + 1}`, { low, high, plus, minus }]));
  const choices = levelCosts(bands(0.08, 0.07), { leftOf: bands(0.03, 0.02) });
  expect(choices.map(({ stages, worstShare }) => [stages, worstShare])).toEqual([
    [1, expect.closeTo(0.8, 6)],
    [2, expect.closeTo(0, 6)],
  ]);
  // 1.94 + 0.064 and 2.06 − 0.056.
  expect(choices[0]?.levels).toEqual([expect.closeTo(2.004, 6)]);
  expect(levelChoicesText(choices)).toEqual([
    '1 stage: up to 80 % of a tolerance',
    '2 stages: up to 0 % of a tolerance',
  ]);
});

test('a plan of land alone has no choices', () => {
  expect(levelCosts(new Map())).toEqual([]);
  expect(levelChoicesText(undefined)).toEqual([]);
});

const asked = new Map([
  ['R1', { depth: 1, plus: 0.1, minus: 0.1 }],
  ['R2', { depth: 2, plus: 0.1, minus: 0.1 }],
]);

test('a locked level is etched exactly, and the rest chosen around it', () => {
  const { ofRegion, findings } = chooseLevels(asked, { levels: 'fewest', lockedLevels: [1.07] });
  expect(ofRegion.get('R1')).toBe(1.07);
  expect(ofRegion.get('R2')).toBeCloseTo(2, 6);
  expect(findings).toEqual([]);
});

test.each([
  { rule: { levels: 'fewest', lockedLevels: [1.5] } as const, path: 'lockedLevels[0]' },
  { rule: { levels: [2, 1.5, 1] } as const, path: 'levels[1]' },
])('level-unused: a level of 1.5 mm that no region accepts is reported ($path)', ({ rule, path }) => {
  const { findings } = chooseLevels(asked, rule);
  expect(findings.map((each) => [each.code, each.place.path])).toEqual([['level-unused', path]]);
});

test('level-missing alone is reported of a part whose only level serves nobody: something was asked for', () => {
  const part = partOf({ sheet: rectangle(0, 0, 100, 60), outlines: [rectangle(20, 20, 80, 40)] });
  const job: Job = plainJob({ levels: [0.5] });
  const plan = makePlan({ part, asked: askedAt(part, [[50, 30, 2]]), job });
  expect(plan.findings.map(({ code }) => code)).toEqual(['level-missing']);
});
