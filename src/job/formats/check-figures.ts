/** What figures of alloys and baths must keep to beyond the shape of their values. Looks at them as found. */
import { type FiguresFile, figuresSchema, MOST_ENTRIES } from '#bath/figures-file.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Format } from './read-format.ts';
import type { JsonPath, PlaceOf } from './read-json.ts';

/** A file of figures that stands beside the job. */
export const FIGURES_FORMAT: Format<FiguresFile> = {
  format: 'isobath-figures',
  version: 1,
  schema: figuresSchema,
  check: (value, placeOf) => checkFigures(value, [], placeOf),
};

type Keyed = Readonly<Record<string, unknown>>;

export function checkFigures(figures: unknown, base: JsonPath, placeOf: PlaceOf): Finding[] {
  const { alloys, baths } = keyed(figures);
  return [
    ...checkIds(alloys, [...base, 'alloys'], placeOf),
    ...checkIds(baths, [...base, 'baths'], placeOf),
    ...listOf(baths).flatMap((bath, index) =>
      ['etchFactor', 'rate', 'activationEnergy'].flatMap((key) =>
        checkRange(keyed(bath)[key], [...base, 'baths', index, key], placeOf),
      ),
    ),
  ];
}

function checkIds(entries: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const seen = new Set<unknown>();
  return listOf(entries).flatMap((entry, index) => {
    const { id } = keyed(entry);
    const isSecond = seen.has(id);
    seen.add(id);
    if (typeof id !== 'string' || !isSecond) return [];
    const facts = { found: `the id "${id}" a second time`, expected: 'each id once' };
    return [finding('job-value-wrong', facts, placeOf([...path, index, 'id']))];
  });
}

/** What others say lies round the value. */
function checkRange(figure: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const { value, from, to } = keyed(figure);
  if (typeof value !== 'number') return [];
  const isBelow = typeof to === 'number' && to < value;
  const isAbove = typeof from === 'number' && from > value;
  if (!isBelow && !isAbove) return [];
  const facts = { found: `the value ${value} outside its own range`, expected: 'from ≤ value ≤ to' };
  return [finding('job-value-wrong', facts, placeOf(path))];
}

function keyed(value: unknown): Keyed {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Keyed) : {};
}

/** A list that is too long is refused whole, by the schema. */
function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) && value.length <= MOST_ENTRIES ? value : [];
}
