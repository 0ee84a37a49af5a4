import { expect, test } from 'vitest';
import { checkBath } from '#checks/check-bath.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { plainJob } from '#support/jobs/plain-job.ts';

const plain = plainJob();
/** Aluminium of 2.7 g/cm³ in caustic soda. */
const caustic = (tank?: { litres: number; dissolved: number; dissolvedLimit: number }) => ({
  stock: { ...plain.stock, density: 2.7 },
  process: {
    ...plain.process,
    bath: 'caustic-aluminium',
    reaction: 'aluminium in caustic soda' as const,
    ...(tank === undefined ? {} : { tank }),
  },
});

test('bath-overloaded: 2.7 kg into 100 L that hold 50 of 75 g/L; there is room for 2.5 kg', () => {
  const found = checkBath(caustic({ litres: 100, dissolved: 50, dissolvedLimit: 75 }), 1e6);
  const [reported, ...rest] = found.filter(({ code }) => code !== 'bath-warms');
  expect(rest).toEqual([]);
  expect(reported?.code).toBe('bath-overloaded');
  expect(reported && sayFinding(reported)).toMatchObject({ value: 77, limit: 75 });
  expect(reported && sayFinding(reported).remedy).toContain('2500 g');
  const codes = checkBath(caustic({ litres: 100, dissolved: 48, dissolvedLimit: 75 }), 1e6).map(
    ({ code }) => code,
  );
  expect(codes).toEqual(['bath-warms']);
  expect(checkBath(caustic(), 1e6)).toEqual([]);
});

test('bath-warms: 2.7 kg in 15 000 L speed a bath of ± 5 % by 2.9 %, two parts at once by 6 %', () => {
  // 2.7 kg · 15.38 MJ/kg / (15 000 L · 4.1 kJ/(l K)) = 0.675 K; 4.3 % a kelvin at 85 °C.
  const tank = { litres: 15_000, dissolved: 0, dissolvedLimit: 75 };
  expect(checkBath(caustic(tank), 1e6)).toEqual([]);
  const both = { ...caustic(tank), process: { ...caustic(tank).process, load: 2 } };
  const [reported] = checkBath(both, 1e6);
  expect(reported?.facts).toEqual({
    parts: 2,
    warmer: expect.closeTo(1.35, 2),
    faster: expect.closeTo(0.06, 2),
    spread: 0.05,
  });
});

test('bath-sheet-missing: another bath, or a sheet of unknown density; nothing where no bath is named', () => {
  const { reaction: _, ...titanium } = caustic().process;
  const codes = (job: Parameters<typeof checkBath>[0]) => checkBath(job, 1e6).map(({ code }) => code);
  expect(codes({ ...caustic(), process: titanium })).toEqual(['bath-sheet-missing']);
  expect(codes({ ...caustic(), stock: plain.stock })).toEqual(['bath-sheet-missing']);
  expect(codes(plain)).toEqual([]);
  const lacking = (job: Parameters<typeof checkBath>[0]) =>
    checkBath(job, 1e6).map(({ facts, place }) => [facts, place.path]);
  const bath = 'caustic-aluminium';
  expect(lacking({ ...caustic(), process: titanium })).toEqual([
    [{ bath, lacks: 'reaction' }, 'process.bath'],
  ]);
  expect(lacking({ ...caustic(), stock: plain.stock })).toEqual([
    [{ bath, lacks: 'density' }, 'process.bath'],
  ]);
});

test('a tank without a known reaction is not warmed, and one of a sheet of unknown density not filled', () => {
  const tank = { litres: 40, dissolved: 20, dissolvedLimit: 75 };
  const { reaction: _, ...named } = caustic(tank).process;
  const unknown = { ...named, bath: undefined };
  const [reported, ...others] = checkBath({ ...caustic(), process: unknown }, 1e6);
  expect(others).toEqual([]);
  // 2700 g into 40 L.
  expect([reported?.code, reported?.place.path]).toEqual(['bath-overloaded', 'process.tank']);
  expect(reported?.facts).toEqual({ before: 20, after: 87.5, limit: 75, room: 2200, grams: 2700 });
  expect(checkBath({ process: unknown, stock: plain.stock }, 1e6)).toEqual([]);
  expect(checkBath(caustic(tank), 1e6)[0]?.place.path).toBe('process.tank');
});
