/** Findings about the job file: how it is written, what it asks, which figures it leaves open. Lengths in mm. */
import { figureTo, lengthWriter } from './shown-figures.ts';
import { note, stop, warn } from './words.ts';

interface NameUnknown {
  readonly name: string;
  readonly meant: string | undefined;
  readonly known: readonly string[];
}

/** Up to four decimals, none for nothing: finer than any gauge that measures a sheet. */
const figureOf = figureTo(4);
const mm = lengthWriter(figureOf);

export const jobWords = {
  'job-not-json': stop<{ found: string; expected: string }>({
    title: 'File is not JSON',
    say: ({ found, expected }) => ({
      reason: `Found ${found} where ${expected} is expected.`,
      remedy: 'Correct that line; nothing after it was read.',
    }),
  }),
  'job-format-unknown': stop<{ found: string; wanted: string }>({
    title: 'Wrong kind of file',
    say: ({ found, wanted }) => ({
      reason: `The file says it is ${found}, not "${wanted}".`,
      remedy: `Give the file that starts with "format": "${wanted}".`,
    }),
  }),
  'job-version-unknown': stop<{ found: string; known: number }>({
    title: 'Version of the file unknown',
    say: ({ found, known }) => ({
      reason: `The file has version ${found}; this Isobath reads version ${known}.`,
      remedy: `Use the version of Isobath that wrote the file, or write it as version ${known}.`,
    }),
  }),
  'job-key-unknown': stop<{ key: string; meant: string | undefined; known: readonly string[] }>({
    title: 'Unknown key',
    say: ({ key, meant, known }) => ({
      reason: `There is no key "${key}" here.`,
      remedy: suggest(meant, known, 'Known here'),
    }),
  }),
  'job-key-missing': stop<{ key: string; expected: string }>({
    title: 'Key missing',
    say: ({ key, expected }) => ({
      reason: `The key "${key}" is missing.`,
      remedy: `Add "${key}": ${expected}.`,
    }),
  }),
  'job-key-doubled': stop<{ key: string }>({
    title: 'Duplicate key',
    say: ({ key }) => ({
      reason: `The key "${key}" appears twice in one place, and only one of the two can be used.`,
      remedy: 'Remove the one that is not meant.',
    }),
  }),
  'job-value-wrong': stop<{ found: string; expected: string }>({
    title: 'Value not usable',
    say: ({ found, expected }) => ({
      reason: `Found ${found}; expected ${expected}.`,
      remedy: `Write ${expected}.`,
    }),
  }),
  'job-choice-unclear': stop<{ given: readonly string[]; choices: readonly string[] }>({
    title: 'One choice needed',
    say: ({ given, choices }) => ({
      reason:
        given.length === 0
          ? `None of ${listed(choices, 'or')} is given.`
          : `${listed(given, 'and')} are given together.`,
      remedy: `Give exactly one of ${listed(choices, 'or')}.`,
    }),
  }),
  /** Both as JSON, in the job's own units. */
  'assumed-value-differs': warn<{ value: string; filled: string }>({
    title: 'Assumed value differs from the default',
    say: ({ value, filled }) => ({
      reason: [
        `The job lists this value under assumed, but it is ${value} and ${filled} would now be filled in.`,
        `${value} is treated as the engineer’s own.`,
      ],
      remedy: `Remove the path from assumed if ${value} is meant, or remove the value to use ${filled}.`,
    }),
  }),
  'alloy-unknown': stop<NameUnknown>({
    title: 'Alloy unknown',
    say: ({ name, meant, known }, show) => ({
      reason: `Isobath has no figures for the alloy "${name}".`,
      remedy: `${suggest(meant, known, 'Known alloys')} Or leave the alloy out and give ${show.field('stock.density')} in g/cm³.`,
    }),
  }),
  'bath-unknown': stop<NameUnknown>({
    title: 'Bath unknown',
    say: ({ name, meant, known }, show) => ({
      reason: `Isobath has no figures for the bath "${name}".`,
      remedy: `${suggest(meant, known, 'Known baths')} Or leave the bath out and give ${show.field('process.etchFactor')} and ${show.field('process.rate')}.`,
    }),
  }),
  /** Re-masked runs are planned for one meaning of the drawn line only. */
  'sheet-tolerance-missing': note<{ thickness: number }>({
    title: 'Sheet taken as nominal',
    say: ({ thickness }, show) => ({
      reason: [
        `No tolerance is given or known for the sheet:`,
        `its thickness is taken as ${mm(thickness, show)} everywhere.`,
      ],
      remedy: `Measure the sheet and give ${show.field('stock.minus')} and ${show.field('stock.plus')}.`,
    }),
  }),
  'taper-without-length': stop<Record<string, never>>({
    title: 'Taper without a length',
    say: (_, show) => ({
      reason: 'The taper starts and ends at one point, so it has no direction.',
      remedy: `Give two points, ${show.code('from')} and ${show.code('to')}, at the ends of the change.`,
    }),
  }),
  'depth-beyond-stock': stop<{ depth: number; stock: number }>({
    title: 'Depth beyond the sheet',
    say: ({ depth, stock }, show) => ({
      reason: `The required depth, ${mm(depth, show)}, leaves nothing of a sheet of ${mm(stock, show)}.`,
      remedy: `Require less than ${mm(stock, show)}, or give a final thickness.`,
      value: depth,
      limit: stock,
    }),
  }),
  'thickness-beyond-stock': stop<{ thickness: number; stock: number }>({
    title: 'Thicker than the sheet',
    say: ({ thickness, stock }, show) => ({
      reason: `The required final thickness, ${mm(thickness, show)}, is more than the sheet's ${mm(stock, show)}.`,
      remedy: `Require ${mm(stock, show)} or less, or use a thicker sheet.`,
      value: thickness,
      limit: stock,
    }),
  }),
  'level-beyond-stock': stop<{ level: number; stock: number }>({
    title: 'Level beyond the sheet',
    say: ({ level, stock }, show) => ({
      reason: `The level ${mm(level, show)} leaves nothing of a sheet of ${mm(stock, show)}.`,
      remedy: `Give levels of less than ${mm(stock, show)}.`,
      value: level,
      limit: stock,
    }),
  }),
  'requirement-meets-no-region': stop<{
    names: { layer: string } | { at: readonly [number, number] };
    meant: string | undefined;
    known: readonly string[];
  }>({
    title: 'Requirement matches no region',
    say: ({ names, meant, known }, show) =>
      'layer' in names
        ? {
            reason: `No region lies directly inside a closed outline of layer "${names.layer}".`,
            remedy: suggest(meant, known, 'Layers with regions'),
          }
        : {
            reason: `No region of the part contains the point ${show.length(names.at, figureOf)}.`,
            remedy: `Give a point inside the region, in drawing coordinates; ${show.code('isobath inspect')} lists one for each.`,
          },
  }),
  'requirement-on-line': stop<{ at: readonly [number, number]; clearance: number }>({
    title: 'Point on a line',
    say: ({ at, clearance }, show) => ({
      reason: `The point ${show.length(at, figureOf)} lies on a line between regions, so it selects none.`,
      remedy: `Move it at least ${mm(clearance, show)} into the region that is meant.`,
    }),
  }),
  'requirements-clash': stop<{ first: string; second: string; regions: readonly string[] }>({
    title: 'Conflicting requirements',
    say: ({ first, second, regions }) => ({
      reason: `${first} and ${second} set different requirements for ${regionsInWords(regions)}.`,
      remedy: 'Remove one of the two; a point takes precedence over a layer, but not over another point.',
    }),
  }),
};

function suggest(meant: string | undefined, known: readonly string[], what: string): string {
  const all = known.length === 0 ? '' : `${what}: ${known.join(', ')}.`;
  return meant === undefined ? all || 'Remove it.' : `Did you mean "${meant}"? ${all}`.trim();
}

function listed(words: readonly string[], joint: 'and' | 'or'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;
}

function regionsInWords(regions: readonly string[]): string {
  return regions.length === 1 ? `region ${regions[0]}` : `${regions.length} regions`;
}
