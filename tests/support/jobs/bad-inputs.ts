/**
 * Inputs that can't be used, or only with a word about them: those that a user meets, and more. Each case spoils one thing of a good
 * job and names the findings that must come out.
 */
import type { FindingCode } from '#findings/finding.ts';
import {
  box,
  buoyLid,
  buoyLidDrawing,
  buoyLidJob,
  circle,
  dxf,
  line,
  outline,
} from '#support/drawings/small-drawing.ts';

export interface BadInput {
  readonly title: string;
  /** At least one of these codes is reported. */
  readonly codes: readonly FindingCode[];
  readonly exit: 0 | 1 | 2;
  /** The job's text or bytes; none: there is no such file. */
  readonly job?: string | Uint8Array | undefined;
  readonly drawing?: string | Uint8Array | undefined;
}

type JobObject = Readonly<Record<string, unknown>>;

function jobText(change: JobObject): string {
  return JSON.stringify({ ...buoyLidJob, ...change }, undefined, 1);
}

const good = jobText({});

/** The job is spoilt, the drawing good. */
function spoiltJob(
  title: string,
  codes: readonly FindingCode[],
  job: JobObject | string | Uint8Array,
): BadInput {
  const text = typeof job === 'string' || job instanceof Uint8Array ? job : jobText(job);
  return { title, codes, exit: 2, job: text, drawing: buoyLidDrawing };
}

/** The drawing is spoilt, the job good. */
function spoiltDrawing(
  title: string,
  codes: readonly FindingCode[],
  drawing: string | Uint8Array,
  exit: 0 | 1 | 2 = 2,
): BadInput {
  return { title, codes, exit, job: good, drawing };
}

function spoiltEntities(
  title: string,
  codes: readonly FindingCode[],
  entities: readonly string[],
  exit: 0 | 1 | 2 = 2,
): BadInput {
  return spoiltDrawing(title, codes, dxf({ insunits: 4, entities }), exit);
}

const withRequirement = (requirement: JobObject): JobObject => ({
  requirements: [...buoyLidJob.requirements, requirement],
});

const badJobs: readonly BadInput[] = [
  spoiltJob('a job that is no JSON', ['job-not-json'], '{ "format": "isobath-job", '),
  spoiltJob('a job that is a bare list', ['job-format-unknown'], '[1, 2, 3]'),
  spoiltJob('a job of white space', ['job-not-json'], ' \n\t '),
  spoiltJob(
    'a job nested a hundred thousand brackets deep',
    ['job-not-json', 'job-format-unknown'],
    '['.repeat(100_000),
  ),
  spoiltJob('a job of another format', ['job-format-unknown'], { format: 'something-else' }),
  spoiltJob('a job of a version to come', ['job-version-unknown'], { version: 99 }),
  spoiltJob(
    'a job in Latin-1',
    ['file-not-utf-8'],
    Uint8Array.from(Buffer.from(good.replace('Buoy', 'Bo\u00fcy'), 'latin1')),
  ),
  spoiltJob('an unknown key', ['job-key-unknown'], { tolerances: 1 }),
  spoiltJob('an unknown key deep inside', ['job-key-unknown'], {
    stock: { ...buoyLidJob.stock, thicknes: 4 },
  }),
  spoiltJob('a key that is missing', ['job-key-missing'], { stock: {} }),
  spoiltJob(
    'a key given twice',
    ['job-key-doubled'],
    good.replace('"version": 1,', '"version": 1, "version": 1,'),
  ),
  spoiltJob('a length as text', ['job-value-wrong'], { stock: { thickness: '4 mm' } }),
  spoiltJob('a thickness below zero', ['job-value-wrong'], { stock: { thickness: -4 } }),
  spoiltJob('a thickness of 1e300', ['job-value-wrong'], { stock: { thickness: 1e300 } }),
  spoiltJob(
    'a number that overflows to infinity',
    ['job-value-wrong', 'job-not-json'],
    good.replace('"thickness": 4', '"thickness": 1e999'),
  ),
  spoiltJob('NaN in the job', ['job-not-json'], good.replace('"thickness": 4', '"thickness": NaN')),
  spoiltJob('an etch factor of zero', ['job-value-wrong'], {
    process: { ...buoyLidJob.process, etchFactor: 0 },
  }),
  spoiltJob('an etch factor table that falls back', ['job-value-wrong'], {
    process: {
      ...buoyLidJob.process,
      etchFactor: [
        [2, 1],
        [1, 1],
      ],
    },
  }),
  spoiltJob('a rate nowhere', ['process-figure-missing'], { process: { etchFactor: 1 } }),
  spoiltJob('an alloy nobody knows', ['alloy-unknown'], { stock: { alloy: 'al-2042-t3', thickness: 4 } }),
  spoiltJob('a bath nobody knows', ['bath-unknown'], {
    process: { ...buoyLidJob.process, bath: 'lemonade' },
  }),
  spoiltJob('a depth beyond the stock', ['depth-beyond-stock'], withRequirement({ at: [160, 60], depth: 9 })),
  spoiltJob(
    'a final thickness beyond the stock',
    ['thickness-beyond-stock'],
    withRequirement({ at: [160, 60], thickness: 9 }),
  ),
  spoiltJob('a level beyond the stock', ['level-beyond-stock'], { levels: [9, 2.4, 1.2] }),
  spoiltJob(
    'a requirement for a layer that is not there',
    ['requirement-meets-no-region'],
    withRequirement({ layer: 'POCKTES', depth: 1 }),
  ),
  spoiltJob(
    'a requirement at a point outside',
    ['requirement-meets-no-region'],
    withRequirement({ at: [5000, 5000], depth: 1 }),
  ),
  spoiltJob(
    'a requirement at a point on a line',
    ['requirement-on-line'],
    withRequirement({ at: [20, 60], depth: 1 }),
  ),
  spoiltJob(
    'two requirements by layer that clash',
    ['requirements-clash'],
    withRequirement({ layer: 'ROUND', depth: 1.3 }),
  ),
  spoiltJob('two requirements by point that clash', ['requirements-clash'], {
    requirements: [...buoyLidJob.requirements, { at: [160, 60], depth: 1 }, { at: [161, 60], depth: 1.1 }],
  }),
  spoiltJob(
    'a requirement with depth and thickness',
    ['job-choice-unclear'],
    withRequirement({ at: [160, 60], depth: 1, thickness: 2 }),
  ),
  spoiltJob('a requirement of nothing', ['job-choice-unclear'], withRequirement({ layer: 'ROUND' })),
  { ...spoiltJob('no requirement at all', ['nothing-to-etch'], { requirements: [] }), exit: 1 },
  { ...spoiltJob('levels that miss what is asked', ['level-missing'], { levels: [0.5] }), exit: 1 },
  spoiltJob('a drawing that is not there', ['file-missing'], { drawing: 'nowhere.dxf' }),
  spoiltJob('a drawing that is a folder', ['file-not-regular'], { drawing: '.' }),
  spoiltJob('a drawing with a zero byte in its name', ['file-missing'], { drawing: 'a\u0000b.dxf' }),
  {
    title: 'a job that is not there',
    codes: ['file-missing'],
    exit: 2,
    job: undefined,
    drawing: buoyLidDrawing,
  },
  { title: 'an empty job', codes: ['file-empty'], exit: 2, job: '', drawing: buoyLidDrawing },
];

const badContainers: readonly BadInput[] = [
  spoiltDrawing('an empty drawing', ['file-empty'], ''),
  spoiltDrawing('a drawing of line ends', ['drawing-empty', 'drawing-not-dxf'], '\n\n\r\n'),
  spoiltDrawing('a web page', ['drawing-wrong-kind'], '<!DOCTYPE html><html><body>Not found</body></html>'),
  spoiltDrawing('a PDF', ['drawing-wrong-kind'], '%PDF-1.7\n1 0 obj\n'),
  spoiltDrawing('a packed archive', ['drawing-wrong-kind'], Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0])),
  spoiltDrawing(
    'a drawing in the undisclosed format',
    ['drawing-wrong-kind'],
    'AC1032\u0000\u0000\u0000\u0000\u0000',
  ),
  spoiltDrawing(
    'a binary DXF that breaks off',
    ['drawing-cut-short', 'drawing-not-dxf', 'drawing-wrong-kind', 'drawing-without-curves', 'drawing-empty'],
    'AutoCAD Binary DXF\r\n\u001a\u0000\u0000SECTION\u0000',
  ),
  spoiltDrawing('noise', ['drawing-not-dxf', 'drawing-wrong-kind'], noise(20_000)),
  spoiltDrawing(
    'prose',
    ['drawing-not-dxf'],
    'The lid is two hundred by one hundred and twenty.\n'.repeat(50),
  ),
  spoiltDrawing(
    'group codes that are words',
    ['drawing-not-dxf', 'drawing-out-of-step', 'drawing-without-curves'],
    buoyLidDrawing.replaceAll('\n10\n', '\nten\n'),
  ),
  spoiltDrawing(
    'a drawing that lost one line',
    ['drawing-out-of-step', 'drawing-without-curves', 'entity-incomplete'],
    buoyLidDrawing.replace('\n90\n', '\n'),
  ),
  spoiltDrawing('a drawing without curves', ['drawing-without-curves'], dxf({ insunits: 4, entities: [] })),
  spoiltDrawing('a drawing that gives no unit', ['drawing-unit-missing'], dxf({ entities: buoyLid })),
  spoiltDrawing(
    'a drawing whose unit is 0',
    ['drawing-unit-missing'],
    dxf({ insunits: 0, entities: buoyLid }),
  ),
  spoiltDrawing(
    'a drawing whose unit is 99',
    ['drawing-unit-unknown'],
    dxf({ insunits: 99, entities: buoyLid }),
  ),
];

const badGeometry: readonly BadInput[] = [
  spoiltEntities(
    'coordinates that are no numbers',
    ['entity-number-bad'],
    [...buoyLid, line('TRIM', [Number.NaN, 0], [1, 1])],
    0,
  ),
  spoiltEntities(
    'infinite coordinates',
    ['entity-number-bad', 'entity-out-of-range'],
    [...buoyLid, circle('ROUND', [Number.POSITIVE_INFINITY, 0], 5)],
    0,
  ),
  spoiltEntities(
    'coordinates of 1e300',
    ['entity-out-of-range'],
    [...buoyLid, line('TRIM', [1e300, 0], [0, 1e300])],
    0,
  ),
  spoiltEntities(
    'nothing but coordinates of 1e300',
    ['entity-out-of-range', 'drawing-without-curves'],
    [box('POCKETS', [1e300, 1e300], [2e300, 2e300])],
  ),
  spoiltEntities(
    'a radius below zero',
    ['entity-out-of-range', 'entity-without-size', 'entity-number-bad'],
    [...buoyLid, circle('ROUND', [50, 50], -5)],
    0,
  ),
  spoiltEntities(
    'no closed region',
    ['no-closed-region'],
    [line('POCKETS', [0, 0], [10, 0]), line('POCKETS', [10, 0], [10, 10])],
  ),
  spoiltEntities(
    'an outline that is open by 0.3 mm',
    ['gap-open'],
    [
      ...buoyLid,
      ...[
        line('ROUND', [130, 5], [150, 5]),
        line('ROUND', [150, 5], [150, 15]),
        line('ROUND', [150, 15], [130, 15]),
        line('ROUND', [130, 15], [130, 5.3]),
      ],
    ],
    0,
  ),
  spoiltEntities(
    'an outline with a side missing',
    ['line-leads-nowhere', 'gap-open'],
    [
      ...buoyLid,
      line('ROUND', [130, 5], [150, 5]),
      line('ROUND', [150, 5], [150, 15]),
      line('ROUND', [150, 15], [130, 15]),
    ],
    0,
  ),
  spoiltEntities(
    'a sheet that is not closed',
    ['outline-not-closed'],
    [line('TRIM', [0, 0], [200, 0]), ...buoyLid.slice(1)],
  ),
  spoiltEntities(
    'an outline of a hundred and twenty thousand corners',
    ['drawing-too-big'],
    [...buoyLid.slice(0, 3), outline('ROUND', manyCorners(120_000))],
  ),
  spoiltEntities('no curve on the outline layer', ['outline-layer-missing'], buoyLid.slice(1)),
  spoiltEntities('a line drawn twice', ['line-doubled'], [...buoyLid, box('DEEP', [45, 40], [95, 80])], 0),
  spoiltEntities(
    'a sheet whose outline crosses itself',
    ['outline-crosses-itself'],
    [
      outline('TRIM', [
        [0, 0],
        [200, 120],
        [200, 0],
        [0, 120],
      ]),
      circle('ROUND', [20, 60], 10),
      circle('POCKETS', [180, 60], 10),
      circle('DEEP', [180, 60], 4),
    ],
    0,
  ),
  spoiltEntities('a layer named by nobody, empty', ['requirement-meets-no-region'], buoyLid.slice(0, 3)),
];

export const badInputs: readonly BadInput[] = [...badJobs, ...badContainers, ...badGeometry];

/** The same bytes at each run (a linear congruential generator, constants of Numerical Recipes). */
function noise(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  let state = 12_345;
  for (let index = 0; index < length; index++) {
    state = (state * 1_664_525 + 1_013_904_223) >>> 0;
    bytes[index] = state >>> 24;
  }
  return bytes;
}

/** A circle of radius 25 as a digitiser leaves it. */
function manyCorners(count: number): (readonly [x: number, y: number])[] {
  return Array.from({ length: count }, (_, index) => {
    const angle = (index * 2 * Math.PI) / count;
    return [160 + 25 * Math.cos(angle), 60 + 25 * Math.sin(angle)] as const;
  });
}
