/** Findings about the job file: how it is written, what it asks, which figures it leaves open. Lengths in mm. */
import type { Shown } from './shown-figures.ts';
import type { WordsFor } from './words.ts';

export interface JobFacts {
  readonly 'job-not-json': { readonly found: string; readonly expected: string };
  readonly 'job-format-unknown': { readonly found: string; readonly wanted: string };
  readonly 'job-version-unknown': { readonly found: string; readonly known: number };
  readonly 'job-key-unknown': {
    readonly key: string;
    readonly meant: string | undefined;
    readonly known: readonly string[];
  };
  readonly 'job-key-missing': { readonly key: string; readonly expected: string };
  readonly 'job-key-doubled': { readonly key: string };
  readonly 'job-value-wrong': { readonly found: string; readonly expected: string };
  readonly 'job-choice-unclear': { readonly given: readonly string[]; readonly choices: readonly string[] };
  /** Both as JSON, in the job's own units. */
  readonly 'assumed-value-differs': { readonly value: string; readonly filled: string };
  readonly 'alloy-unknown': NameUnknown;
  readonly 'bath-unknown': NameUnknown;
  /** Re-masked runs are planned for one meaning of the drawn line only. */
  readonly 'sheet-tolerance-missing': { readonly thickness: number };
  readonly 'taper-without-length': Record<string, never>;
  readonly 'depth-beyond-stock': { readonly depth: number; readonly stock: number };
  readonly 'thickness-beyond-stock': { readonly thickness: number; readonly stock: number };
  readonly 'level-beyond-stock': { readonly level: number; readonly stock: number };
  readonly 'requirement-meets-no-region': {
    readonly names: { readonly layer: string } | { readonly at: readonly [number, number] };
    readonly meant: string | undefined;
    readonly known: readonly string[];
  };
  readonly 'requirement-on-line': { readonly at: readonly [number, number]; readonly clearance: number };
  readonly 'requirements-clash': {
    readonly first: string;
    readonly second: string;
    readonly regions: readonly string[];
  };
}

interface NameUnknown {
  readonly name: string;
  readonly meant: string | undefined;
  readonly known: readonly string[];
}

export const jobWords: WordsFor<JobFacts> = {
  'job-not-json': {
    severity: 'stop',
    title: 'File is not JSON',
    say: ({ found, expected }) => ({
      reason: `Found ${found} where ${expected} should stand.`,
      remedy: 'Correct that line; nothing after it was read.',
    }),
  },
  'job-format-unknown': {
    severity: 'stop',
    title: 'Not the file that is meant',
    say: ({ found, wanted }) => ({
      reason: `The file says it is ${found}, not "${wanted}".`,
      remedy: `Give the file that starts with "format": "${wanted}".`,
    }),
  },
  'job-version-unknown': {
    severity: 'stop',
    title: 'Version of the file unknown',
    say: ({ found, known }) => ({
      reason: `The file has version ${found}; this Isobath reads version ${known}.`,
      remedy: `Use the Isobath that wrote the file, or write it as version ${known}.`,
    }),
  },
  'job-key-unknown': {
    severity: 'stop',
    title: 'Unknown key',
    say: ({ key, meant, known }) => ({
      reason: `There is no key "${key}" here.`,
      remedy: suggest(meant, known, 'Known here'),
    }),
  },
  'job-key-missing': {
    severity: 'stop',
    title: 'Key missing',
    say: ({ key, expected }) => ({
      reason: `The key "${key}" is missing.`,
      remedy: `Add "${key}": ${expected}.`,
    }),
  },
  'job-key-doubled': {
    severity: 'stop',
    title: 'Key stands twice',
    say: ({ key }) => ({
      reason: `The key "${key}" stands twice in one place, and only one of the two can count.`,
      remedy: 'Drop the one that is not meant.',
    }),
  },
  'job-value-wrong': {
    severity: 'stop',
    title: 'Value not usable',
    say: ({ found, expected }) => ({
      reason: `Found ${found}; expected ${expected}.`,
      remedy: `Write ${expected}.`,
    }),
  },
  'job-choice-unclear': {
    severity: 'stop',
    title: 'One choice needed',
    say: ({ given, choices }) => ({
      reason:
        given.length === 0
          ? `None of ${listed(choices, 'or')} is given.`
          : `${listed(given, 'and')} are given together.`,
      remedy: `Give exactly one of ${listed(choices, 'or')}.`,
    }),
  },
  'assumed-value-differs': {
    severity: 'warn',
    title: 'Not the value that would be filled in',
    say: ({ value, filled }) => ({
      reason: `The job lists this value under assumed, but ${value} stands there and ${filled} would now be filled in. ${value} counts as the engineer’s own.`,
      remedy: `Take the path out of assumed if ${value} is meant, or take out the value to have ${filled}.`,
    }),
  },
  'alloy-unknown': {
    severity: 'stop',
    title: 'Alloy unknown',
    say: ({ name, meant, known }) => ({
      reason: `Isobath has no figures for the alloy "${name}".`,
      remedy: `${suggest(meant, known, 'Known alloys')} Or leave the alloy out and give stock.density in g/cm³.`,
    }),
  },
  'bath-unknown': {
    severity: 'stop',
    title: 'Bath unknown',
    say: ({ name, meant, known }) => ({
      reason: `Isobath has no figures for the bath "${name}".`,
      remedy: `${suggest(meant, known, 'Known baths')} Or leave the bath out and give process.etchFactor and process.rate.`,
    }),
  },
  'sheet-tolerance-missing': {
    severity: 'note',
    title: 'Sheet taken as nominal',
    say: ({ thickness }, show) => ({
      reason: `No tolerance of the sheet is given and none is known for it: it is taken as ${mm(thickness, show)} everywhere.`,
      remedy: 'Measure the sheet and give stock.minus and stock.plus.',
    }),
  },
  'taper-without-length': {
    severity: 'stop',
    title: 'Taper without a length',
    say: () => ({
      reason: 'The taper starts and ends at one point, so it has no direction.',
      remedy: 'Give two points, `from` and `to`, as far apart as the change takes.',
    }),
  },
  'depth-beyond-stock': {
    severity: 'stop',
    title: 'Depth beyond the sheet',
    say: ({ depth, stock }, show) => ({
      reason: `The depth asked, ${mm(depth, show)}, leaves nothing of a sheet of ${mm(stock, show)}.`,
      remedy: `Ask for less than ${mm(stock, show)}, or for a final thickness.`,
      value: depth,
      limit: stock,
    }),
  },
  'thickness-beyond-stock': {
    severity: 'stop',
    title: 'Thicker than the sheet',
    say: ({ thickness, stock }, show) => ({
      reason: `The final thickness asked, ${mm(thickness, show)}, is more than the sheet's ${mm(stock, show)}.`,
      remedy: `Ask for ${mm(stock, show)} or less, or take a thicker sheet.`,
      value: thickness,
      limit: stock,
    }),
  },
  'level-beyond-stock': {
    severity: 'stop',
    title: 'Level beyond the sheet',
    say: ({ level, stock }, show) => ({
      reason: `The level ${mm(level, show)} leaves nothing of a sheet of ${mm(stock, show)}.`,
      remedy: `Give levels of less than ${mm(stock, show)}.`,
      value: level,
      limit: stock,
    }),
  },
  'requirement-meets-no-region': {
    severity: 'stop',
    title: 'Requirement meets no region',
    say: ({ names, meant, known }, show) =>
      'layer' in names
        ? {
            reason: `No region lies directly inside a closed outline of layer "${names.layer}".`,
            remedy: suggest(meant, known, 'Layers with regions'),
          }
        : {
            reason: `No region of the part holds the point ${show.length(names.at, figureOf)}.`,
            remedy:
              'Give a point inside the region, in drawing coordinates; `isobath inspect` lists one for each.',
          },
  },
  'requirement-on-line': {
    severity: 'stop',
    title: 'Point on a line',
    say: ({ at, clearance }, show) => ({
      reason: `The point ${show.length(at, figureOf)} lies on a line between regions, so it names none.`,
      remedy: `Move it at least ${mm(clearance, show)} into the region that is meant.`,
    }),
  },
  'requirements-clash': {
    severity: 'stop',
    title: 'Requirements clash',
    say: ({ first, second, regions }) => ({
      reason: `${first} and ${second} ask different things of ${regionsInWords(regions)}.`,
      remedy: 'Drop one of the two; a point wins over a layer, but not over another point.',
    }),
  },
};

function suggest(meant: string | undefined, known: readonly string[], what: string): string {
  const all = known.length === 0 ? '' : `${what}: ${known.join(', ')}.`;
  return meant === undefined ? all || 'Drop it.' : `Did you mean "${meant}"? ${all}`.trim();
}

function listed(words: readonly string[], joint: 'and' | 'or'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;
}

function regionsInWords(regions: readonly string[]): string {
  return regions.length === 1 ? `region ${regions[0]}` : `${regions.length} regions`;
}

/** Up to four decimals, none for nothing: finer than any gauge that measures a sheet. */
function figureOf(value: number): string {
  return String(Number(value.toFixed(4)));
}

function mm(value: number, show: Shown): string {
  return show.length(value, figureOf);
}
