/** The run of a sized part: the sheet gauged before its first dip is the sized one, and one that was not sized is asked about. */
import { expect, test } from 'vitest';
import { jsonText } from '#handoff/json-text.ts';
import { correctRun } from '#run/correct-run.ts';
import { plannedCover } from '#support/parts/sized-cover.ts';

test('M8.7 a sheet read 4.01 before its first dip counts; one read 4.11 was never sized', async () => {
  const planText = jsonText((await plannedCover({ sizing: { to: 4 } })).planFile);
  const { regions } = JSON.parse(planText) as { regions: { id: string; layer: string }[] };
  const pocket = regions.find(({ layer }) => layer === 'POCKETS')?.id;
  const codes = (thickness: number) =>
    correctRun({
      planText,
      readingsText: ['stage,minutes,region,thickness', `0,0,${pocket},${thickness}`].join('\n'),
      recordText: undefined,
    }).findings.map(({ code }) => code);
  expect(codes(4.01)).not.toContain('reading-in-question');
  expect(codes(4.11)).toContain('reading-in-question');
});
