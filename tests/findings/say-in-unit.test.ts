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
