/**
 * What a job file must keep to beyond the shape of its values: one of several ways, rising tables, distinct levels.
 * Looks at the file as found, so that these faults are reported beside those of shape; what has the wrong shape is left alone.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { SHORTEST_SECTION } from '#geometry/tolerances.ts';
import { checkWays, isHeld as isKeyed, type Held as Keyed } from '#job/fields/given-ways.ts';
import { JOB } from '#job/job-file.ts';
import { hypot } from '#maths/hypot.ts';
import { checkFigures } from './check-figures.ts';
import { checkPost } from './check-post.ts';
import type { JsonPath, PlaceOf } from './read-json.ts';

export function checkChoices(job: unknown, placeOf: PlaceOf): Finding[] {
  const { stock, process, levels, lockedLevels, handoff, figures } = keyed(job);
  const { etchFactor, depthPerUndercut, hoist } = keyed(process);
  return [
    ...checkWays(JOB, job, placeOf),
    ...checkReadings(keyed(stock), placeOf),
    ...checkRising(etchFactor, ['process', 'etchFactor'], placeOf),
    ...checkUndercut(etchFactor, ['process', 'etchFactor'], placeOf),
    ...checkRising(depthPerUndercut, ['process', 'depthPerUndercut'], placeOf),
    ...checkUndercut(turnedOver(depthPerUndercut), ['process', 'depthPerUndercut'], placeOf),
    ...couponPlaces(keyed(process)['coupon']).flatMap(({ coupon, path }) =>
      checkOpening(coupon, path, placeOf),
    ),
    ...listOf(keyed(job)['requirements']).flatMap((each, index) =>
      checkTabs(keyed(each), ['requirements', index, 'tabs'], placeOf),
    ),
    ...checkHoist(hoist, placeOf),
    ...checkDistinct(levels, ['levels'], placeOf),
    ...checkDistinct(lockedLevels, ['lockedLevels'], placeOf),
    ...checkLocked(lockedLevels, levels, placeOf),
    ...listOf(keyed(handoff)['sections']).flatMap((each, index) =>
      checkSection(keyed(each), ['handoff', 'sections', index], placeOf),
    ),
    ...checkFigures(figures, ['figures'], placeOf),
    ...checkPost(keyed(keyed(handoff)['program'])['post'], ['handoff', 'program', 'post'], placeOf),
  ];
}

/** On a tapered sheet a thickness says nothing without its place. */
function checkReadings({ thickness, measured }: Keyed, placeOf: PlaceOf): Finding[] {
  if (!isKeyed(thickness)) return [];
  return listOf(measured).flatMap((reading, index) => {
    if (typeof reading !== 'number' && (!isKeyed(reading) || reading['at'] !== undefined)) return [];
    const facts = {
      found: 'a reading without its place',
      expected: '"at" beside it, since the sheet tapers',
    };
    return [finding('job-value-wrong', facts, placeOf(['stock', 'measured', index]))];
  });
}

/** A table of [depth, factor] says one factor a depth only when its depths rise. */
function checkRising(table: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const depths = listOf(table).map((row) => listOf(row)[0]);
  return depths.flatMap((depth, index) => {
    const before = depths[index - 1];
    if (typeof depth !== 'number' || typeof before !== 'number' || depth > before) return [];
    return [
      finding(
        'job-value-wrong',
        { found: `the depth ${depth} after ${before}`, expected: 'rows with rising depths' },
        placeOf([...path, index]),
      ),
    ];
  });
}

/**
 * Undercut, factor × depth, never shrinks as the etch goes on (M2.4). Between rows the factor f is linear, and f · z
 * grows as long as its slope f + z f′ at the lower row is not negative.
 */
function checkUndercut(table: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const rows = listOf(table).map(listOf);
  return rows.flatMap(([depth, factor], index) => {
    const [depthBefore, factorBefore] = rows[index - 1] ?? [];
    if (![depth, factor, depthBefore, factorBefore].every((each) => typeof each === 'number')) return [];
    const rise = Number(depth) - Number(depthBefore);
    const slope = Number(factor) + (Number(depth) * (Number(factor) - Number(factorBefore))) / rise;
    if (rise <= 0 || slope >= 0) return [];
    const facts = {
      found: `the factor ${factor} at ${depth} after ${factorBefore} at ${depthBefore}: the undercut would shrink`,
      expected: 'factors that fall so slowly that factor × depth still grows',
    };
    return [finding('job-value-wrong', facts, placeOf([...path, index]))];
  });
}

/** Rows of depth over undercut as rows of undercut over depth. */
function turnedOver(table: unknown): unknown {
  return listOf(table).map((row) => {
    const [depth, factor] = listOf(row);
    return typeof factor === 'number' && factor > 0 ? [depth, Number((1 / factor).toPrecision(6))] : row;
  });
}

function couponPlaces(given: unknown): { readonly coupon: Keyed; readonly path: JsonPath }[] {
  const path = ['process', 'coupon'];
  if (!Array.isArray(given)) return isKeyed(given) ? [{ coupon: given, path }] : [];
  return given.map((each, index) => ({ coupon: keyed(each), path: [...path, index] }));
}

/** Once through, the etch goes on sideways only. */
function checkOpening({ before, opening }: Keyed, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const { depth } = keyed(opening);
  if (typeof depth !== 'number' || typeof before !== 'number' || depth < before) return [];
  const facts = {
    found: `a depth of ${depth} in a coupon ${before} thick`,
    expected: 'a depth before the etch broke through',
  };
  return [finding('job-value-wrong', facts, placeOf([...path, 'opening', 'depth']))];
}

function checkDistinct(levels: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const seen = new Set<unknown>();
  return listOf(levels).flatMap((level, index) => {
    const isSecond = seen.has(level);
    seen.add(level);
    if (typeof level !== 'number' || !isSecond) return [];
    const facts = { found: `the level ${level} a second time`, expected: 'each level once' };
    return [finding('job-value-wrong', facts, placeOf([...path, index]))];
  });
}

/** What is not cut out needs nothing to hold it; places say how many they are. */
function checkTabs({ tabs, through }: Keyed, path: JsonPath, placeOf: PlaceOf): Finding[] {
  if (tabs === undefined) return [];
  const { at, count } = keyed(tabs);
  if (through !== undefined && at !== undefined && count !== undefined) {
    const facts = { found: 'places of tabs and their number', expected: 'one of the two' };
    return [finding('job-value-wrong', facts, placeOf([...path, 'tabs', 'count']))];
  }
  if (through !== undefined) return [];
  const facts = { found: 'tabs of a region that is not cut out', expected: '"through" beside them' };
  return [finding('job-value-wrong', facts, placeOf(path))];
}

function checkHoist(hoist: unknown, placeOf: PlaceOf): Finding[] {
  const { slowest, fastest } = keyed(hoist);
  if (typeof slowest !== 'number' || typeof fastest !== 'number' || slowest <= fastest) return [];
  const facts = {
    found: `a slowest speed of ${slowest} above a fastest of ${fastest}`,
    expected: 'slowest up to fastest',
  };
  return [finding('job-value-wrong', facts, placeOf(['process', 'hoist', 'slowest']))];
}

/** Levels are locked for a search; where nothing is searched there is nothing to lock. */
function checkLocked(locked: unknown, levels: unknown, placeOf: PlaceOf): Finding[] {
  if (listOf(locked).length === 0 || levels === 'fewest') return [];
  const facts = {
    found: 'locked levels in a job that does not search its levels',
    expected: '"levels": "fewest" beside them, or no locked levels',
  };
  return [finding('job-value-wrong', facts, placeOf(['lockedLevels']))];
}

/** A point shows no section. */
function checkSection({ from, to }: Keyed, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const [[fromX, fromY], [toX, toY]] = [listOf(from), listOf(to)];
  const way = hypot(Number(toX) - Number(fromX), Number(toY) - Number(fromY));
  if (!(way < SHORTEST_SECTION)) return [];
  const facts = { found: 'a section that starts and ends at one point', expected: 'two points apart' };
  return [finding('job-value-wrong', facts, placeOf(path))];
}

function keyed(value: unknown): Keyed {
  return isKeyed(value) ? value : {};
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
