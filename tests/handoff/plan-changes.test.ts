/** What changed since the last issue, of plans that a run made; expected figures from M3.1 and M5.1 by hand. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { FindingRecord } from '#findings/finding-record.ts';
import { type PlanChange, planChanges } from '#handoff/plan-changes.ts';
import { sayPlanChange, sayPlanChanges } from '#handoff/say-plan-change.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { runJob } from '#run/run-job.ts';

const JOB = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
const DRAWING = readFileSync('samples/gauge-pod-cover.dxf');

async function planOf(change: (job: typeof JOB) => void = () => undefined, drawing: Uint8Array = DRAWING) {
  const job = structuredClone(JOB);
  change(job);
  const { planFile } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: job.drawing,
    drawingBytes: drawing,
  });
  if (planFile === undefined) throw new Error('the sample plans');
  return planFile;
}

function only<Kind extends PlanChange['kind']>(changes: readonly PlanChange[], kind: Kind) {
  return changes.filter((each): each is Extract<PlanChange, { kind: Kind }> => each.kind === kind);
}

test('nothing changes from a plan to itself, nor by what only names the files', {
  tags: ['long'],
}, async () => {
  const plan = await planOf();
  expect(planChanges(plan, JSON.parse(JSON.stringify(plan)))).toEqual([]);
  const renamed = await planOf((job) => {
    job.name = 'Cover, issue B';
    job.handoff = { files: ['inspection'], paper: 'a3' };
  });
  expect(planChanges(plan, renamed)).toEqual([]);
});

test('a well 0.1 deeper: requirement, level, minutes of two stages, lines by the change of their allowances (M3.1)', {
  tags: ['long'],
}, async () => {
  const [before, now] = [await planOf(), await planOf((job) => (job.requirements[1].depth = 2.3))];
  const changes = planChanges(before, now);
  expect(only(changes, 'job')).toEqual([
    { kind: 'job', path: 'requirements[1].depth', before: '2.2', now: '2.3' },
  ]);
  const wells = now.regions.filter(({ level }) => level === 2.3).map(({ id }) => id);
  expect(wells.length).toBeGreaterThan(0);
  expect(only(changes, 'region-level').map(({ region }) => region)).toEqual(wells);
  for (const each of only(changes, 'region-asked')) {
    expect(each.before.depth).toBe(2.2);
    expect(each.now.depth).toBe(2.3);
  }
  expect(only(changes, 'levels')).toEqual([{ kind: 'levels', before: [3, 2.2, 1.2], now: [3, 2.3, 1.2] }]);
  // 0.8 → 0.7 mm and 1.0 → 1.1 mm at 0.0297 mm/min; the whole run stays 3.0 mm.
  expect(only(changes, 'stage-minutes').map(({ stage }) => stage)).toEqual([1, 2]);
  expect(only(changes, 'stage-minutes')[0]?.now).toBeCloseTo(0.7 / 0.0297, 5);
  expect(only(changes, 'stage-minutes')[1]?.before).toBeCloseTo(1 / 0.0297, 5);
  expect(only(changes, 'minutes')).toEqual([]);
  // Next to the pocket (1.2) the well's line stood back √(2.2² − 1.2²), now √(2.3² − 1.2²).
  const allowance = (level: number, depth: number) => Math.sqrt(level ** 2 - depth ** 2);
  const lines = only(changes, 'lines').find(({ stage }) => stage === 2);
  const most = Math.max(...(lines?.moved.map(({ by }) => by) ?? []));
  expect(most).toBeCloseTo(allowance(2.3, 1.2) - allowance(2.2, 1.2), 4);
  expect(lines?.added).toEqual([]);
  expect(lines?.gone).toEqual([]);
});

test('the way back reports the same figures the other way round', async () => {
  const [before, now] = [await planOf(), await planOf((job) => (job.requirements[1].depth = 2.3))];
  const turned = (changes: readonly PlanChange[]) =>
    only(changes, 'region-level').map(({ region, before, now }) => [region, before, now]);
  expect(turned(planChanges(now, before))).toEqual(
    turned(planChanges(before, now)).map(([region, was, is]) => [region, is, was]),
  );
});

test('land instead of a pocket: fewer stages, lines gone with their stage, the others unmoved where nothing is new', async () => {
  const before = await planOf();
  const now = await planOf((job) => {
    job.requirements = job.requirements.filter((each: { layer?: string }) => each.layer !== 'SUMPS');
  });
  const changes = planChanges(before, now);
  expect(only(changes, 'levels')[0]?.now).toEqual([2.2, 1.2]);
  expect(only(changes, 'region-level').every(({ before, now }) => before === 3 && now === 0)).toBe(true);
  expect(only(changes, 'minutes')[0]?.now).toBeCloseTo(2.2 / 0.0297, 5);
});

test('a rate and its source: minutes by the rate, no line moved', async () => {
  const [before, now] = [await planOf(), await planOf((job) => (job.process.rate = 0.033))];
  const changes = planChanges(before, now);
  expect(only(changes, 'lines')).toEqual([]);
  expect(only(changes, 'stage-minutes')).toHaveLength(3);
  expect(
    only(changes, 'source').some(({ before, now }) => before?.includes('0.0297') && now?.includes('0.033')),
  ).toBe(true);
});

test('a finding comes and goes by its code and place', async () => {
  const [before, now] = [await planOf(), await planOf((job) => (job.rules.minWeb = 1.2))];
  const there = only(planChanges(before, now), 'finding-new').map(({ finding }) => finding.code);
  const back = only(planChanges(now, before), 'finding-gone').map(({ finding }) => finding.code);
  expect(there).toContain('web-too-thin');
  expect(back).toEqual(there);
});

test('regions-of-a-finding: one that is reported of other regions in the same words is a change, with those that came and went', async () => {
  const plan = await planOf();
  const ids = plan.regions.map(({ id }) => id);
  const [first, second, third, fourth] = ids;
  const finding: FindingRecord = {
    code: 'thin-land',
    severity: 'warn',
    message: 'Land is narrow in these regions.',
    remedy: 'Widen it.',
    at: null,
    regions: [first ?? '', second ?? ''],
    value: 1,
    limit: 3,
  };
  const before: PlanFile = { ...plan, findings: [finding] };
  const later: FindingRecord = { ...finding, regions: [second ?? '', third ?? '', fourth ?? ''] };
  const changes = planChanges(before, { ...plan, findings: [later] });
  expect(changes).toEqual([
    { kind: 'finding-changed', before: finding, now: later, added: [third, fourth], gone: [first] },
  ]);
  expect(changes.map(sayPlanChange)).toEqual([
    `Finding changed, now about ${third} ${fourth} too, no longer about ${first}: Land is narrow in these regions.`,
  ]);
  // Another remedy is a change; regions that are only called otherwise, or listed in another order, are none.
  const advised = { ...finding, remedy: 'Widen it by 2 mm.' };
  expect(planChanges(before, { ...plan, findings: [advised] }).map(sayPlanChange)).toEqual([
    'Finding changed: Land is narrow in these regions. Widen it by 2 mm.',
  ]);
  const turned = { ...finding, regions: [second ?? '', first ?? ''] };
  expect(planChanges(before, { ...plan, findings: [turned] })).toEqual([]);
  const renamed = {
    ...plan,
    regions: plan.regions.map((region, index) => ({ ...region, id: `N${ids.length - index}` })),
    findings: [{ ...finding, regions: [`N${ids.length}`, `N${ids.length - 1}`] }],
  };
  expect(only(planChanges(before, renamed), 'finding-changed')).toEqual([]);
});

test('two findings of one code and place keep to their own regions, in whatever order they stand', async () => {
  const plan = await planOf();
  const [a, b, c] = plan.regions.map(({ id }) => id);
  const said = (regions: (string | undefined)[], message: string): FindingRecord => ({
    code: 'thin-land',
    severity: 'warn',
    message,
    remedy: 'Widen it.',
    at: null,
    regions: regions.map((id) => id ?? ''),
    value: 1,
    limit: 3,
  });
  const before = { ...plan, findings: [said([a], 'Narrow.'), said([b, c], 'Narrow.')] };
  const now = { ...plan, findings: [said([b, c], 'Narrow.'), said([a], 'Narrow.')] };
  expect(planChanges(before, now)).toEqual([]);
  // One that is new does not take an old one's place, though it comes first.
  const fresh = said([a, c], 'Narrow.');
  expect(planChanges(before, { ...now, findings: [fresh, ...now.findings] })).toEqual([
    { kind: 'finding-new', finding: fresh },
  ]);
});

test('regions keep their history by their border when others are counted before them', async () => {
  const plan = await planOf();
  const shifted: PlanFile = {
    ...plan,
    regions: plan.regions.slice(1).map((region, index) => ({ ...region, id: `R${index + 90}` })),
  };
  const changes = planChanges(plan, shifted);
  expect(only(changes, 'region-renamed')).toHaveLength(plan.regions.length - 1);
  expect(only(changes, 'region-gone').map(({ region }) => region)).toEqual([plan.regions[0]?.id]);
  expect(only(changes, 'region-new')).toEqual([]);
});

test('every change is a whole sentence', async () => {
  const [before, now] = [await planOf(), await planOf((job) => (job.requirements[1].depth = 2.3))];
  const said = planChanges(before, now).map(sayPlanChange);
  for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/);
  expect(said).toContain('Stages: 3, to 3.000, 2.300, 1.200 mm; they were 3, to 3.000, 2.200, 1.200 mm.');
});

test('a changed key is named as its reader names it, and its value is put down key by key', () => {
  const asked = (depth: number) => JSON.stringify({ at: [12.5, 40], depth, edge: { plus: 0.2, minus: 0.3 } });
  const change = { kind: 'job', path: 'requirements[2]', before: asked(2.2), now: undefined } as const;
  expect(sayPlanChanges([change], { field: (path) => `«${path}»` })).toEqual([
    'Job, «requirements[2]»: left out; it was at [12.5, 40], depth 2.2, edge plus 0.2, minus 0.3.',
  ]);
  const name = { kind: 'job', path: 'drawing', before: '"a{b},c.dxf"', now: '"d.dxf"' } as const;
  expect(sayPlanChange(name)).toBe('Job, drawing: d.dxf; it was a{b},c.dxf.');
});
