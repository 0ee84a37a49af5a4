/** Whoever reads lengths in inches reads them so in findings, too; 25.4 mm to the inch is exact (ISO 31-1). */
import { expect, test } from 'vitest';
import { finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { sayInUnit } from '#findings/say-in-unit.ts';

const thin = finding('web-too-thin', { level: 2.54, web: 0.508, thickness: 3.048, limit: 0.635 });

test('every length of a web too thin is told in inches, and nothing else changes', () => {
  const { title, reason, remedy } = sayInUnit(thin, 'in');
  expect(title).toBe(sayFinding(thin).title);
  expect(reason).toBe("Level 0.1 in leaves 0.02 in of a sheet of 0.12 in; the job's least web is 0.025 in.");
  expect(remedy).toBe('Etch to 0.095 in at most, or take a sheet of 0.125 in or more.');
});

test('in millimetres the words are as they stand', () => {
  expect(sayInUnit(thin, 'mm')).toEqual(sayFinding(thin));
});

test('rates and speeds are told in inches a minute: 0.0254 mm/min is 0.001 in/min, and both ends of a range are', () => {
  const fast = finding('rate-outside-spread', { rate: 0.0254, planned: 0.02286, spread: 0.05 });
  expect(sayInUnit(fast, 'in').reason).toBe('The bath etches 0.001 in/min; planned was 0.0009 in/min ± 5 %.');
  const hoist = finding('hoist-cannot-follow', {
    from: 25.4,
    to: 76.2,
    wanted: 12.7,
    slowest: 20.32,
    fastest: 254,
    lengths: 1,
    deviation: 0.0508,
  });
  expect(sayInUnit(hoist, 'in').reason).toMatch(
    /^From 1 in to 3 in off .* at 0\.5 in\/min; the hoist does 0\.8 to 10 in\/min/,
  );
});
