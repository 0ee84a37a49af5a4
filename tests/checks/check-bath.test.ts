import { expect, test } from 'vitest';
import { checkBath } from '#checks/check-bath.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { plainJob } from '#support/plain-job.ts';

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
  const [reported, ...rest] = checkBath(caustic({ litres: 100, dissolved: 50, dissolvedLimit: 75 }), 1e6);
  expect(rest).toEqual([]);
  expect(reported?.code).toBe('bath-overloaded');
  expect(reported && sayFinding(reported)).toMatchObject({ value: 77, limit: 75 });
  expect(reported && sayFinding(reported).remedy).toContain('2500 g');
  expect(checkBath(caustic({ litres: 100, dissolved: 48, dissolvedLimit: 75 }), 1e6)).toEqual([]);
  expect(checkBath(caustic(), 1e6)).toEqual([]);
});

test('bath-sheet-missing: another bath, or a sheet of unknown density; nothing where no bath is named', () => {
  const { reaction: _, ...titanium } = caustic().process;
  const codes = (job: Parameters<typeof checkBath>[0]) => checkBath(job, 1e6).map(({ code }) => code);
  expect(codes({ ...caustic(), process: titanium })).toEqual(['bath-sheet-missing']);
  expect(codes({ ...caustic(), stock: plain.stock })).toEqual(['bath-sheet-missing']);
  expect(codes(plain)).toEqual([]);
});
