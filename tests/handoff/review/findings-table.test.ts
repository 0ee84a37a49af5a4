/** Findings as the review's papers print them: in the papers' first unit, whatever the plan file has. */
import { expect, test } from 'vitest';
import { finding } from '#findings/finding.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import { mostSeriousFirst } from '#handoff/review/findings-table.ts';
import type { ReviewPage } from '#handoff/review/review-page.ts';

const thin = finding(
  'web-too-thin',
  { web: 0.508, limit: 0.762, thickness: 4.064, level: 3.556 },
  { at: { x: 50.8, y: -25.4 } },
);
const narrow = finding('land-too-narrow', {
  width: 1.27,
  limit: 2.54,
  depth: 3.556,
  maskant: 0.635,
  places: 1,
});

const listed = (unit: 'mm' | 'in') =>
  mostSeriousFirst({
    planFindings: [narrow, thin],
    figures: paperFigures('job', unit),
  } as unknown as ReviewPage);

test('in inches: lengths, places and remedies; stops first', () => {
  const [first, second] = listed('in');
  expect(first?.code).toBe('web-too-thin');
  expect(first?.message).toContain('0.02 in');
  expect(first?.place).toBe('at 2.00, -1.00 in');
  expect(second?.message).toContain('0.05 in');
  for (const { message, remedy, what } of listed('in'))
    expect([message, remedy, what].join(' ')).not.toMatch(/\d mm/);
});

test('in millimetres, as the plan file has it', () => {
  const [first] = listed('mm');
  expect(first?.message).toContain('0.508 mm');
  expect(first?.place).toBe('at 50.8, -25.4 mm');
  expect(first?.message.startsWith(first.what)).toBe(true);
});

test('a field of the job is named by the label of its control, never by its path', () => {
  const unmeasured = finding('process-figure-not-measured', {
    figure: 'etch rate',
    value: 0.0297,
    unit: 'mm/min',
    bath: 'hot caustic soda for aluminium',
  });
  const [said] = mostSeriousFirst({
    planFindings: [unmeasured],
    figures: paperFigures('job', 'mm'),
  } as unknown as ReviewPage);
  expect(said?.remedy).toMatch(/just before the run and give “Coupons”\.$/);
});
