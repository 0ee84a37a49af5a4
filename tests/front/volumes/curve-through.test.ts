import { describe, expect, test } from 'vitest';
import { curveThrough } from '#front/volumes/curve-through.ts';

/** Unevenly spaced, as the ends of stages are. */
const PLACES = Array.from({ length: 70 }, (_, i) => 1.7 * i + 0.5 * ((i * 7) % 3));

function counted(curve: (x: number) => number) {
  const asked: number[] = [];
  const exact = (i: number) => {
    asked.push(i);
    return curve(PLACES[i] ?? 0);
  };
  return { asked, exact };
}

describe('a costly curve from few of its places', () => {
  test('a smooth one takes a handful, and is right everywhere', () => {
    const curve = (x: number) => 3 * x + 0.02 * x * x - 1e-6 * x ** 3;
    const { asked, exact } = counted(curve);
    const found = curveThrough(exact, { places: PLACES, baseline: (i) => 2 * (PLACES[i] ?? 0), share: 1e-5 });
    expect(asked.length).toBeLessThan(20);
    found.forEach((value, i) => {
      expect(Math.abs(value - curve(PLACES[i] ?? 0))).toBeLessThan(1e-5 * curve(PLACES.at(-1) ?? 0));
    });
  });

  test('round a kink that the baseline lacks each place is looked at', () => {
    const curve = (x: number) => 5 * x + 4 * Math.max(0, x - 61.3);
    const { asked, exact } = counted(curve);
    const found = curveThrough(exact, { places: PLACES, baseline: (i) => 5 * (PLACES[i] ?? 0), share: 1e-5 });
    expect(asked).toContain(36);
    expect(asked.length).toBeLessThan(40);
    found.forEach((value, i) => {
      expect(Math.abs(value - curve(PLACES[i] ?? 0))).toBeLessThan(1e-5 * curve(PLACES.at(-1) ?? 0));
    });
  });

  test('where the baseline has the kink too, it costs nothing', () => {
    const kink = (x: number) => 4 * Math.max(0, x - 61.3);
    const { asked, exact } = counted((x) => 5 * x + kink(x));
    curveThrough(exact, { places: PLACES, baseline: (i) => kink(PLACES[i] ?? 0), share: 1e-5 });
    expect(asked.length).toBeLessThan(12);
  });

  test.each([0, 1, 2, 4])('%d places are all calculated', (count) => {
    const { asked, exact } = counted((x) => x * x);
    const places = PLACES.slice(0, count);
    const found = curveThrough(exact, { places, baseline: () => 0, share: 1e-5 });
    expect(found).toEqual(places.map((x) => x * x));
    expect(asked.length).toBe(count);
  });
});
