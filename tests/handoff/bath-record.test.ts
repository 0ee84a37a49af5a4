import { expect, test } from 'vitest';
import { bathRecord } from '#handoff/bath-record.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const measures = { stages: [{ removedVolume: 900 }, { removedVolume: 1500 }], regions: new Map() };

test('M5.4 one round opening at φ = 1 loses at its end what Steiner’s formula gives: A + πLℓ/2 + 2πℓ² times rate', () => {
  // d/dℓ of Aℓ + πLℓ²/4 + 2πℓ³/3 (M5.2), opening of radius 12.5 mm, 1.5 mm deep at the end of the stage.
  const alone = { ...handMadePlan, stages: handMadePlan.stages.slice(0, 1) };
  const area = Math.PI * 12.5 ** 2 + Math.PI * (2 * Math.PI * 12.5) * (1.5 / 2) + 2 * Math.PI * 1.5 ** 2;
  expect(bathRecord(alone, measures, { density: 2.8 })?.peak.metal).toBeCloseTo(
    (area * 0.025 * 2.8) / 1000,
    6,
  );
});

test('M5.3 metal and caustic of both stages add up, and the later stage, with more metal bare, is the fastest', () => {
  const sheet = bathRecord(handMadePlan, measures, { density: 2.8 });
  expect(sheet?.metal).toBeCloseTo((2400 * 2.8) / 1000, 6);
  expect(sheet?.stages.map(({ caustic }) => caustic)).toEqual([
    expect.closeTo(2.52 * 1.4824, 3),
    expect.closeTo(4.2 * 1.4824, 3),
  ]);
  expect(sheet?.peak.stage).toBe(2);
});
