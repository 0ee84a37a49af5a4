import { expect, test } from 'vitest';
import {
  CURVE_FIT,
  GRID,
  NUDGE,
  ROUNDING,
  SAGITTA,
  SAME_BORDER,
  SAME_CARRIER,
  SAME_FIGURE,
  SAME_PLACE,
  SCRIBE_ACCURACY,
  SILENT_JOIN,
  TOUCHING,
} from '#geometry/tolerances.ts';

test('M3.4 what a scribe line can lose on its way comes to no more than it may be off in all', () => {
  expect(CURVE_FIT + SILENT_JOIN + 2 * SAME_CARRIER + SAME_PLACE + SAGITTA + ROUNDING).toBeLessThanOrEqual(
    SCRIBE_ACCURACY,
  );
});

test('M1 coarser tolerances cover the finer ones that come before them', () => {
  // A border pushed by a nudge and rounded to the grid is found again; what touches is less than that, and more than a file's rounding.
  expect(NUDGE + GRID / 2).toBeGreaterThan(SAME_BORDER);
  expect(SAME_BORDER).toBeGreaterThanOrEqual(GRID);
  expect(TOUCHING).toBeGreaterThan(SAME_FIGURE);
  expect(SAME_PLACE).toBeGreaterThan(TOUCHING);
});
