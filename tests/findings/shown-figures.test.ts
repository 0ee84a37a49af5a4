/** Whoever reads lengths in inches reads them so in findings, too; 25.4 mm to the inch is exact (ISO 31-1). */
import { expect, test } from 'vitest';
import { finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';

const thin = finding('web-too-thin', { level: 2.54, web: 0.508, thickness: 3.048, limit: 0.635 });

test('every length of a web too thin is reported in inches, and nothing else changes', () => {
  const { title, reason, remedy } = sayFinding(thin, 'in');
  expect(title).toBe(sayFinding(thin).title);
  expect(reason).toBe(
    "Level 0.1 in leaves 0.02 in of a sheet of 0.12 in; the job's minimum web is 0.025 in.",
  );
  expect(remedy).toBe('Etch to 0.095 in at most, or use a sheet of 0.125 in or more.');
});

test('in millimetres the words are as they stand', () => {
  expect(sayFinding(thin, 'mm')).toEqual(sayFinding(thin));
  expect(sayFinding(thin).reason).toBe(
    "Level 2.54 mm leaves 0.508 mm of a sheet of 3.048 mm; the job's minimum web is 0.635 mm.",
  );
});

test('rates and speeds are reported in inches a minute: 0.0254 mm/min is 0.001 in/min, and both ends of a range are', () => {
  const fast = finding('rate-outside-spread', { rate: 0.0254, planned: 0.02286, spread: 0.05 });
  expect(sayFinding(fast, 'in').reason).toBe(
    'The bath etches 0.001 in/min; planned was 0.0009 in/min ± 5 %.',
  );
  const hoist = finding('hoist-cannot-follow', {
    from: 25.4,
    to: 76.2,
    wanted: 12.7,
    slowest: 20.32,
    fastest: 254,
    lengths: 1,
    deviation: 0.0508,
  });
  expect(sayFinding(hoist, 'in').reason).toMatch(
    /^From 1 in to 3 in from .* at 0\.5 in\/min; the hoist runs at 0\.8 to 10 in\/min/,
  );
});

test('no figure of any sentence is left in millimetres: areas, and what a key or a slope says, apart', () => {
  const place = finding('requirement-on-line', { at: [25.4, 50.8], clearance: 0.0254 });
  expect(sayFinding(place, 'in').reason).toMatch(/point 1, 2 in lies/);
  const steep = finding('taper-too-steep', {
    width: 2.54,
    needed: 5.08,
    level: 7.62,
    tolerance: 0.0508,
    rise: 0.04,
  });
  expect(sayFinding(steep, 'in').remedy).toMatch(
    /than about 0\.008 in .*\(now 0\.002 in\).* by 0\.040 in per in\)/,
  );
});
