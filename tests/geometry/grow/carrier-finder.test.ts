/** Which of several carriers an edge of the grid is taken to lie on, as few and as many of them. */
import { describe, expect, test } from 'vitest';
import { type Carrier, carrierFinder } from '#geometry/grow/carrier-finder.ts';
import { lineSpan } from '#geometry/span.ts';

const level = (y: number, isKnown = false): Carrier => ({
  span: lineSpan({ x: -3, y }, { x: 40, y }),
  isKnown,
});
/** Far from all edges here: with them there are so many that they are looked up. */
const others = Array.from({ length: 30 }, (_, index) => level(100 + 7 * index));
const edge = [
  { x: 5, y: 0.0001 },
  { x: 9.5, y: 0.0001 },
] as const;

describe.each([
  ['few', []],
  ['many', others],
])('of %s', (_, more) => {
  test('the one that it fits best, and of two alike the first', () => {
    const [worse, first, second] = [level(0.0004), level(0), level(0.0002)];
    const { best } = carrierFinder([worse, first, second, ...more]);
    expect(best(...edge, undefined)?.span).toBe(first.span);
    expect(carrierFinder([second, worse, first, ...more]).best(...edge, undefined)?.span).toBe(second.span);
  });

  test('a known one that it fits, though others fit better', () => {
    const [exact, known, later] = [level(0.0001), level(0.0003, true), level(0.0001, true)];
    const { best, hasKnown } = carrierFinder([exact, known, later, ...more]);
    expect(hasKnown).toBe(true);
    expect(best(...edge, undefined)?.span).toBe(known.span);
  });

  test('a known one that it hardly fits only where no other is better, and after one that is given', () => {
    const [off, loose] = [level(0.0005), level(0.00053, true)];
    const { best, near } = carrierFinder([off, loose, ...more]);
    expect(best(...edge, undefined)?.span).toBe(off.span);
    const [given] = near(...edge);
    expect(best(...edge, given)).toBe(given);
    const alone = carrierFinder([loose, off, ...more]);
    expect(alone.best({ x: 5, y: 0.0006 }, { x: 9.5, y: 0.0006 }, undefined)?.span).toBe(loose.span);
  });

  test('none where it lies on none', () => {
    const { best, hasKnown } = carrierFinder([level(0.0007), level(-0.6), ...more]);
    expect(hasKnown).toBe(false);
    expect(best(...edge, undefined)).toBeUndefined();
  });
});
