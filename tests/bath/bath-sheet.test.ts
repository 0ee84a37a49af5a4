import { expect, test } from 'vitest';
import { bathSheet } from '#bath/bath-sheet.ts';

const dip = (special: { grams?: number; bareArea?: number }) => ({
  number: 1,
  minutes: 10,
  grams: 1000,
  bareArea: 2e6,
  ...special,
});

test('M5.4 2 m² bare at 0.025 mm/min: 0.139 kg/min, 0.189 m³/min of hydrogen at 25 °C, 18.9 m³/min to stay at 1 %', () => {
  // Derived: 2 × 0.000025 × 2780 kg/min, 55.59 mol a kg, ideal gas (0.024465 m³/mol at 25 °C, 101.325 kPa).
  const peak = bathSheet([dip({})], { rate: 0.025, density: 2.78 })?.peak;
  expect(peak?.metal).toBeCloseTo(139, 6);
  expect(peak?.hydrogen).toBeCloseTo(189, 0);
  expect(peak?.ventilation).toBeCloseTo(18900, -2);
});

test('M5.3 1 kg of aluminium gives 1.246 m³ of hydrogen at 0 °C, 1.360 m³ at 25 °C', () => {
  // 55.59 mol (standard atomic weights), ideal gas: 22.414 and 24.465 L/mol at 101.325 kPa.
  const hydrogen = bathSheet([dip({})], { rate: 0.025, density: 2.7 })?.hydrogen;
  expect((hydrogen?.at0C ?? 0) / 1000).toBeCloseTo(1.246, 3);
  expect((hydrogen?.at25C ?? 0) / 1000).toBeCloseTo(1.36, 3);
});

test('M5.8 1 kg in 500 L takes a bath from 30 to 32 g/L', () => {
  const tank = { litres: 500, dissolved: 30, dissolvedLimit: 75 };
  expect(bathSheet([dip({})], { rate: 0.025, density: 2.7, tank })?.load).toEqual({
    before: 30,
    after: 32,
    limit: 75,
  });
  expect(bathSheet([dip({})], { rate: 0.025, density: 2.7 })?.load).toBeUndefined();
});

test('M5.3 1 kg of aluminium uses up 1.482 kg of sodium hydroxide', () => {
  expect(bathSheet([dip({})], { rate: 0.025, density: 2.7 })?.caustic).toBeCloseTo(1482, 0);
});

test('M5.4 the peak is that of the stage with most metal bare, and metal is summed over all', () => {
  const sheet = bathSheet([dip({ bareArea: 5 }), { ...dip({ bareArea: 9, grams: 1 }), number: 2 }], {
    rate: 0.03,
    density: 2.7,
  });
  expect(sheet?.peak.stage).toBe(2);
  expect(sheet?.metal).toBe(1001);
  expect(bathSheet([], { rate: 0.03, density: 2.7 })).toBeUndefined();
});

test('M5.3 each stage has its own metal and caustic: 1.4824 g of caustic a gram', () => {
  // 1 mol NaOH (39.997 g) a mol Al (26.982 g), standard atomic weights.
  const sheet = bathSheet([dip({ grams: 300 }), { ...dip({ grams: 70 }), number: 2 }], {
    rate: 0.03,
    density: 2.7,
  });
  expect(sheet?.stages).toEqual([
    { number: 1, metal: 300, caustic: expect.closeTo(300 * (39.997 / 26.982), 1) },
    { number: 2, metal: 70, caustic: expect.closeTo(70 * (39.997 / 26.982), 1) },
  ]);
});

test('M5.9 1.82 kg in 1000 L warm it by at most 6.8 K, and a rate by nearly a third; two parts by twice as much', () => {
  // 415 kJ a mol of 26.982 g is 15.4 MJ/kg; 4.1 MJ/(m³ K); 46 kJ/mol at 85 °C.
  const tank = { litres: 1000, dissolved: 0, dissolvedLimit: 75 };
  const { heat } = bathSheet([dip({ grams: 1820 })], { rate: 0.025, density: 2.7, tank }) ?? {};
  expect((heat?.kilojoules ?? 0) / 1.82).toBeCloseTo(15380, -2);
  expect(heat?.warmer).toBeCloseTo(6.8, 1);
  expect(heat?.faster).toBeCloseTo(0.33, 1);
  const both = bathSheet([dip({ grams: 1820 })], { rate: 0.025, density: 2.7, tank, parts: 2 });
  expect(both?.heat?.warmer).toBeCloseTo(2 * (heat?.warmer ?? 0), 9);
  expect(both?.load?.after).toBeCloseTo(3.64, 9);
  expect(both?.peak.metal).toBeCloseTo(2 * 0.001 * 2e6 * 0.025 * 2.7, 9);
});
