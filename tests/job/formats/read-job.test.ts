import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { readJob } from '#job/formats/read-job.ts';

/** A cover of a gauge pod as the contract shows a job, fit to be spoilt in one place. */
function coverJob(): Record<string, unknown> {
  return {
    format: 'isobath-job',
    version: 1,
    drawing: 'gauge-pod-cover.dxf',
    stock: { thickness: 4.06 },
    process: { etchFactor: 1, rate: 0.0297 },
    requirements: [{ layer: 'POCKETS', depth: 2.2 }],
  };
}

/** Code, path and line of every finding of the spoilt job. */
function faultsOf(job: unknown): string[] {
  const text = typeof job === 'string' ? job : JSON.stringify(job, undefined, 1);
  const reading = readJob(text);
  expect(reading.jobFile === undefined).toBe(reading.findings.length > 0);
  return reading.findings.map((each) => `${each.code} ${each.place.path ?? `line ${each.place.line}`}`);
}

function reasonsOf(job: unknown): string[] {
  return readJob(JSON.stringify(job)).findings.map((each) => sayFinding(each).reason);
}

describe('a job file that is right', () => {
  test('comes back as it stands, without findings', () => {
    const reading = readJob(JSON.stringify(coverJob()));
    expect(reading.findings).toEqual([]);
    expect(reading.jobFile).toEqual(coverJob());
  });

  test('may use every key that there is', () => {
    const full = {
      ...coverJob(),
      name: 'Gauge-pod cover',
      units: 'mm',
      drawingUnits: 'mm',
      joinTolerance: 0.05,
      layers: { outline: ['TRIM'], regions: ['POCKETS', 'BAYS'], ignore: ['DIMS'] },
      stock: { alloy: 'al-2024-t3', density: 2.78, thickness: 4.06, minus: 0.05, plus: 0.05 },
      process: {
        bath: 'caustic-aluminium',
        etchFactor: [
          [0, 0.9],
          [4, 1.1],
        ],
        coupon: { before: 2.54, after: 2.3876, minutes: 4, faces: 2 },
        rateSpread: 0.05,
        edgeDatum: 'shallow-edge',
      },
      requirements: [
        { layer: 'POCKETS', depth: 2.2, plus: 0.1, minus: 0.1 },
        { at: [130, 42], thickness: 1.6, plus: 0.08, minus: 0.08 },
        { at: [40, 42], taper: { from: [20, 0], to: [220, 0], depthFrom: 2.6, depthTo: 1 }, plus: 0.06 },
        { at: [60, 42], taper: { from: [20, 0], to: [220, 0], thicknessFrom: 2.6, thicknessTo: 1 } },
      ],
      rules: { minWeb: 0.6, minLineSpacing: 1.5, minPieceWidth: 3, minLandWidth: 3 },
      levels: [2.2, 1],
    };
    expect(faultsOf(full)).toEqual([]);
  });

  test('may start with a byte order mark and end lines the other way', () => {
    expect(faultsOf(`\uFEFF${JSON.stringify(coverJob(), undefined, 1).replaceAll('\n', '\r\n')}`)).toEqual(
      [],
    );
  });
});

describe('job-not-json: a text that is no JSON names the line where it stops being it', () => {
  const cases: readonly (readonly [string, string, number])[] = [
    ['an empty file', '', 1],
    ['a file of blanks', '\n\n  ', 3],
    ['NaN for a depth', '{\n "depth": NaN\n}', 2],
    ['an infinite depth', '{\n "depth": -Infinity\n}', 2],
    ['a comma too many', '{\n "a": 1,\n}', 3],
    ['a comma missing', '{\n "a": 1\n "b": 2\n}', 3],
    ['a colon missing', '{\n "a" 1\n}', 2],
    ['a text never closed', '{\n\n "a": "open\n}', 3],
    ['single quotes', "{\n 'a': 1\n}", 2],
    ['a number with a comma', '{ "a": 2,2 }', 1],
    ['a number with a leading zero', '{ "a": 02.2 }', 1],
    ['a remark', '{\n // why\n "a": 1 }', 2],
    ['more after the end', '{ "a": 1 }\n}', 2],
    ['a drawing instead of a job', '  0\nSECTION\n  2\nHEADER\n', 2],
    ['a hundred thousand brackets', '['.repeat(100_000), 1],
  ];
  test.each(cases)('%s', (_, text, line) => {
    expect(faultsOf(text)).toEqual([`job-not-json line ${line}`]);
  });

  test('a job cut off anywhere is no job, and never throws', () => {
    const whole = JSON.stringify(coverJob(), undefined, 1);
    for (let length = 0; length < whole.length; length++) {
      expect(readJob(whole.slice(0, length)).findings).toHaveLength(1);
    }
  });
});

describe('job-format-unknown, job-version-unknown', () => {
  test('a file of another kind is reported so, and nothing else is held against it', () => {
    expect(faultsOf({ format: 'isobath-plan', version: 1, stages: [] })).toEqual([
      'job-format-unknown format',
    ]);
    expect(faultsOf({})).toEqual(['job-format-unknown format']);
    expect(readJob('[1, 2]').findings.map((each) => each.code)).toEqual(['job-format-unknown']);
    expect(readJob('null').findings.map((each) => each.code)).toEqual(['job-format-unknown']);
  });
  test('a newer version has its own words', () => {
    expect(faultsOf({ ...coverJob(), version: 2 })).toEqual(['job-version-unknown version']);
    expect(reasonsOf({ ...coverJob(), version: 2 })).toEqual([
      'The file has version 2; this Isobath reads version 1.',
    ]);
  });
});

describe('job-key-unknown', () => {
  test('a mistyped key is reported with the one that was meant', () => {
    const job = { ...coverJob(), requirements: [{ layer: 'POCKETS', depht: 2.2, depth: 2.2 }] };
    expect(faultsOf(job)).toEqual(['job-key-unknown requirements[0].depht']);
    const [found] = readJob(JSON.stringify(job)).findings;
    expect(found?.facts).toMatchObject({ key: 'depht', meant: 'depth' });
  });
  test('a key of another place gets the keys of this one', () => {
    const [found] = readJob(JSON.stringify({ ...coverJob(), rules: { minWed: 1 } })).findings;
    expect(found?.facts).toEqual({
      key: 'minWed',
      meant: 'minWeb',
      known: expect.arrayContaining(['minWeb', 'minLineSpacing', 'minPieceWidth', 'minLandWidth']),
    });
  });
  test('inside a taper the nearer of the two kinds of taper is meant', () => {
    const taper = { from: [0, 0], to: [1, 0], depthFrom: 1, depthTo: 2, depthMid: 1.5 };
    expect(faultsOf({ ...coverJob(), requirements: [{ at: [1, 2], taper }] })).toEqual([
      'job-key-unknown requirements[0].taper.depthMid',
    ]);
  });
  test('a key with the name of an inner part of the language is a key like others', () => {
    const text = JSON.stringify(coverJob()).replace('"version"', '"__proto__": {"units": "in"}, "version"');
    expect(faultsOf(text)).toEqual(['job-key-unknown __proto__']);
  });
});

test('job-key-missing: every missing key is reported at once', () => {
  expect(faultsOf({ format: 'isobath-job' })).toEqual([
    'job-key-missing version',
    'job-key-missing drawing',
    'job-key-missing stock',
    'job-key-missing process',
    'job-key-missing requirements',
  ]);
  expect(faultsOf({ ...coverJob(), stock: {} })).toEqual(['job-key-missing stock.thickness']);
});

test('job-key-doubled: two equal keys are not left to chance', () => {
  const text = JSON.stringify(coverJob(), undefined, 1).replace(
    '"depth": 2.2',
    '"depth": 2.2,\n   "depth": 1.2',
  );
  expect(faultsOf(text)).toEqual(['job-key-doubled requirements[0].depth']);
});

describe('job-value-wrong: path, what was found, what was expected', () => {
  const spoil = (change: object) => ({ ...coverJob(), ...change });
  const cases: readonly (readonly [string, object, string, string])[] = [
    [
      'a depth in quotes',
      spoil({ requirements: [{ layer: 'A', depth: '2.2' }] }),
      'requirements[0].depth',
      'Found the text "2.2"; expected a number.',
    ],
    [
      'a depth below zero',
      spoil({ requirements: [{ layer: 'A', depth: -2.2 }] }),
      'requirements[0].depth',
      'Found -2.2; expected a number of at least 0.',
    ],
    [
      'null for a depth',
      spoil({ requirements: [{ layer: 'A', depth: null }] }),
      'requirements[0].depth',
      'Found null; expected a number.',
    ],
    [
      'an absurd thickness',
      spoil({ stock: { thickness: 1e300 } }),
      'stock.thickness',
      'Found 1e+300; expected a number of at most 10000000.',
    ],
    [
      'a tolerance in words',
      spoil({ stock: { thickness: 4, plus: 'x' } }),
      'stock.plus',
      'Found the text "x"; expected a number.',
    ],
    [
      'no thickness at all',
      spoil({ stock: { thickness: 0 } }),
      'stock.thickness',
      'Found 0; expected a number of at least 0.000001.',
    ],
    [
      'a thickness of another kind',
      spoil({ stock: { thickness: true } }),
      'stock.thickness',
      'Found true; expected a number or an object in { }.',
    ],
    [
      'an edge datum that is none',
      spoil({ process: { etchFactor: 1, rate: 1, edgeDatum: 'middle' } }),
      'process.edgeDatum',
      'Found the text "middle"; expected "shallow-edge" or "mid-wall" or "deep-foot".',
    ],
    [
      'a point of three',
      spoil({ requirements: [{ at: [1, 2, 3], depth: 1 }] }),
      'requirements[0].at',
      'Found a list of 3; expected at most 2 items in the list.',
    ],
    [
      'a text in a point',
      spoil({ requirements: [{ at: [1, 'x'], depth: 1 }] }),
      'requirements[0].at[1]',
      'Found the text "x"; expected a number.',
    ],
    [
      'half a row of an etch factor table',
      spoil({ process: { etchFactor: [[0, 1], [2]], rate: 1 } }),
      'process.etchFactor[1]',
      'Found a list of 1; expected at least 2 items in the list.',
    ],
    [
      'an empty etch factor table',
      spoil({ process: { etchFactor: [], rate: 1 } }),
      'process.etchFactor',
      'Found a list of 0; expected at least 1 item in the list.',
    ],
    [
      'M2.4 an etch factor that falls so fast that the undercut would shrink',
      spoil({
        process: {
          etchFactor: [
            [1, 1],
            [2, 0.4],
          ],
          rate: 1,
        },
      }),
      'process.etchFactor[1]',
      'Found the factor 0.4 at 2 after 1 at 1: the undercut would shrink; expected factors that fall so slowly that factor × depth still grows.',
    ],
    [
      'an etch factor table that falls back',
      spoil({
        process: {
          etchFactor: [
            [2, 1],
            [1, 1],
          ],
          rate: 1,
        },
      }),
      'process.etchFactor[1]',
      'Found the depth 1 after 2; expected rows with rising depths.',
    ],
    [
      'a level that is asked twice',
      spoil({ levels: [2, 1, 2] }),
      'levels[2]',
      'Found the level 2 a second time; expected each level once.',
    ],
    [
      'a level of nothing',
      spoil({ levels: [2, 0] }),
      'levels[1]',
      'Found 0; expected a number of at least 0.000001.',
    ],
    [
      'a way to choose levels that is none',
      spoil({ levels: 'fewer' }),
      'levels',
      'Found the text "fewer"; expected "fewest" or "as-drawn" or a list.',
    ],
    [
      'a spread of the whole rate',
      spoil({ process: { etchFactor: 1, rate: 1, rateSpread: 1 } }),
      'process.rateSpread',
      'Found 1; expected a number of less than 1.',
    ],
    [
      'a coupon with three faces',
      spoil({ process: { etchFactor: 1, coupon: { before: 2, after: 1, minutes: 9, faces: 3 } } }),
      'process.coupon.faces',
      'Found 3; expected 1 or 2.',
    ],
    [
      'a unit that no job is written in',
      spoil({ units: 'cm' }),
      'units',
      'Found the text "cm"; expected "mm" or "in".',
    ],
    [
      'an empty layer name',
      spoil({ layers: { outline: [''] } }),
      'layers.outline[0]',
      'Found the text ""; expected a text that is not empty.',
    ],
  ];
  test.each(cases)('%s', (_, job, path, reason) => {
    expect(faultsOf(job)).toEqual([`job-value-wrong ${path}`]);
    expect(reasonsOf(job)).toEqual([reason]);
  });

  test('a number too large for the machine is no number', () => {
    const text = JSON.stringify(coverJob()).replace('4.06', '1e999');
    expect(faultsOf(text)).toEqual(['job-value-wrong stock.thickness']);
  });
});

describe('job-choice-unclear', () => {
  test('a requirement names its regions one way and asks one thing', () => {
    const requirements = [
      { depth: 1 },
      { layer: 'A', at: [1, 2], depth: 1 },
      { layer: 'A' },
      { layer: 'A', depth: 1, thickness: 2 },
      {},
    ];
    expect(faultsOf({ ...coverJob(), requirements })).toEqual([
      'job-choice-unclear requirements[0]',
      'job-choice-unclear requirements[1]',
      'job-choice-unclear requirements[2]',
      'job-choice-unclear requirements[3]',
      'job-choice-unclear requirements[4]',
      'job-choice-unclear requirements[4]',
    ]);
  });
  test('a rate and a coupon together leave open which one counts', () => {
    const process = { etchFactor: 1, rate: 0.03, coupon: { before: 2, after: 1, minutes: 30, faces: 1 } };
    expect(faultsOf({ ...coverJob(), process })).toEqual(['job-choice-unclear process.coupon']);
  });
});

test('levels are locked only where levels are searched', () => {
  expect(faultsOf({ ...coverJob(), levels: 'fewest', lockedLevels: [2.2] })).toEqual([]);
  expect(faultsOf({ ...coverJob(), levels: 'as-drawn', lockedLevels: [2.2] })).toEqual([
    'job-value-wrong lockedLevels',
  ]);
  expect(faultsOf({ ...coverJob(), levels: 'fewest', lockedLevels: [2.2, 2.2] })).toEqual([
    'job-value-wrong lockedLevels[1]',
  ]);
});

test('a hoist is slowest before it is fastest', () => {
  const job = coverJob() as { process: object };
  const withHoist = (hoist: object) => faultsOf({ ...job, process: { ...job.process, hoist } });
  expect(withHoist({ slowest: 2, fastest: 400 })).toEqual([]);
  expect(withHoist({ slowest: 400, fastest: 2 })).toEqual(['job-value-wrong process.hoist.slowest']);
});

test('faults of every kind are reported together, each with its line', () => {
  const text = `{
  "format": "isobath-job", "version": 1,
  "drawing": "cover.dxf",
  "unit": "mm",
  "stock": { "thickness": "4" },
  "process": {
    "rate": -1
  },
  "requirements": [
    { "layer": "A", "depth": 1 },
    { "layer": "B" }
  ]
}`;
  const found = readJob(text).findings.map((each) => [each.code, each.place.path, each.place.line]);
  expect(found).toEqual([
    ['job-value-wrong', 'stock.thickness', 5],
    ['job-value-wrong', 'process.rate', 7],
    ['job-key-unknown', 'unit', 4],
    ['job-choice-unclear', 'requirements[1]', 11],
  ]);
});

test('no text at all makes the reading throw (property)', { tags: ['long'] }, () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => readJob(text).jobFile === undefined));
});
