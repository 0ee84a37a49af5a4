/**
 * JSON Schemas of Isobath's own files: what is published is what reads the files (`GOLDEN=renew` writes it again), and Ajv, a
 * validator that knows nothing of Isobath, takes and refuses the same files by them (JSON Schema, draft 2020-12).
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import FIGURES from '#bath/alloys-and-baths.json' with { type: 'json' };
import { jsonText } from '#handoff/json-text.ts';
import { PLAIN_POST } from '#job/formats/post-file.ts';
import { readJob } from '#job/formats/read-job.ts';
import { correctRun } from '#run/correct-run.ts';
import { reviewText } from '#run/review.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { expectGolden } from '#support/golden.ts';
import { samplesWithEveryFile } from '#support/handoff/every-file.ts';
import { type FileKind, jsonSchemaOf, READ_BY } from '#support/jobs/json-schemas.ts';
import { schemaFaults } from '#support/jobs/published-schema.ts';

const KINDS = Object.keys(READ_BY) as FileKind[];

async function planText(input: { jobText: string; drawingName: string; drawingBytes: Uint8Array }) {
  return jsonText((await runJob(input, { withoutFiles: true })).planFile);
}

/** The buoy lid with more in its job. */
function lid(more: object): Promise<string> {
  return planText({
    jobText: JSON.stringify({ ...buoyLidJob, ...more }),
    drawingName: 'buoy-lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
}

/** Letters of a file that many damaged copies of are not looked at. */
const LARGE = 1e5;

/** At least one file of each kind, as Isobath wrote it or as it is given. */
const files: Record<FileKind, unknown[]> = {
  job: readdirSync('samples')
    .filter((file) => file.endsWith('.job.json'))
    .map((file) => JSON.parse(readFileSync(`samples/${file}`, 'utf8'))),
  plan: [],
  readings: [],
  review: [],
  figures: [FIGURES],
  post: [PLAIN_POST, JSON.parse(readFileSync('samples/light-cutter.post.json', 'utf8'))],
};

beforeAll(async () => {
  const taper = { from: [10, 0], to: [90, 0], depthFrom: 1.6, depthTo: 0.7 };
  const hoist = { slowest: 0.5, fastest: 4000 };
  const tank = { litres: 900, dissolved: 12, dissolvedLimit: 70 };
  const texts = [
    ...(await Promise.all(samplesWithEveryFile().map(planText))),
    await lid({ levels: 'fewest', process: { ...buoyLidJob.process, tank, masking: 're-mask' } }),
    await lid({
      process: { ...buoyLidJob.process, hoist },
      requirements: [{ layer: 'POCKETS', taper }, ...buoyLidJob.requirements.slice(1)],
    }),
    await lid({
      stock: {
        alloy: 'al-2024-t3',
        thickness: 4,
        survey: [
          [20, 30, 4.02],
          [150, 90, 3.99],
        ],
      },
    }),
    await lid({ process: { ...buoyLidJob.process, sizing: { to: 3.94 } } }),
    // A stop, with its place.
    await lid({ rules: { minWeb: 3.5 } }),
  ];
  const plans = texts.map((text) => JSON.parse(text));
  files.plan = plans;
  files.job.push(...plans.map(({ job }) => job));
  const [planned = ''] = texts;
  const [, last] = planned.match(/"number": (\d+)/) ?? [];
  files.review = [
    JSON.parse(
      reviewText({
        planText: planned,
        reviewer: 'A. Baumgart',
        date: '2026-05-31',
        checked: [1],
        remarks: [{ stage: Number(last), at: [3, 4.5], text: 'Which radius?' }],
      }),
    ),
  ];
  const region = plans[0].regions.find(
    ({ level }: { level: number }) => level === plans[0].stages[0].level,
  ).id;
  const { recordText } = correctRun({
    planText: planned,
    recordText: undefined,
    readingsText: `stage,minutes,region,depth\n1,4,${region},0.12\n`,
  });
  files.readings = [JSON.parse(recordText ?? '')];
});

test.each(KINDS)('docs/schemas: the schema of %s is that of its reader', (kind) => {
  expectGolden(
    `../../docs/schemas/${kind}.schema.json`,
    `${JSON.stringify(jsonSchemaOf(kind), undefined, 1)}\n`,
  );
});

describe('Ajv, by the published schemas', () => {
  test.each(KINDS)('takes every %s: samples, and what Isobath writes', (kind) => {
    expect(files[kind].length).toBeGreaterThan(0);
    for (const file of files[kind]) expect(schemaFaults(kind, file)).toEqual([]);
  });

  test('has seen every key that a plan can have', () => {
    const keys = new Set(files.plan.flatMap((plan) => Object.keys(plan as object)));
    expect([...keys].sort()).toEqual(Object.keys(READ_BY.plan.shape).sort());
  });

  test.each(KINDS)('refuses what is refused of a damaged %s, and takes the rest', (kind) => {
    const draw = fc.record({
      file: fc.constantFrom(...files[kind].filter((file) => JSON.stringify(file).length < LARGE)),
      turns: fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
      put: fc.oneof(
        fc.constant(undefined),
        fc.constantFrom('', 'mm', -1, 0, 0.5, 1e9, [], {}, null, [1, 2], [1, 2, 3], true),
      ),
      extra: fc.boolean(),
    });
    let refused = 0;
    fc.assert(
      fc.property(draw, ({ file, turns, put, extra }) => {
        const damaged = damage(structuredClone(file), turns, extra ? { key: 'stranger', put: 1 } : { put });
        const isRead = READ_BY[kind].safeParse(damaged).success;
        if (!isRead) refused++;
        expect(schemaFaults(kind, damaged).length === 0).toBe(isRead);
      }),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(50);
  });

  test('a job may name its schema, which changes nothing', async () => {
    const $schema = '../docs/schemas/job.schema.json';
    const job = { $schema, ...buoyLidJob };
    expect(schemaFaults('job', job)).toEqual([]);
    expect(readJob(JSON.stringify(job)).findings).toEqual([]);
    expect(await lid({ $schema })).toBe(await lid({}));
  });
});

/** One value of the file, somewhere in it, replaced or taken out; or a key added to the object that holds it. */
function damage(
  file: unknown,
  turns: readonly number[],
  change: { readonly key?: string; readonly put: unknown },
) {
  let holder = file;
  for (const [index, turn] of turns.entries()) {
    const keys = Object.keys(holder as object);
    const key = keys[turn % keys.length];
    if (key === undefined) return file;
    const inner: unknown = Reflect.get(holder as object, key);
    const isLeaf = typeof inner !== 'object' || inner === null || Object.keys(inner).length === 0;
    if (!isLeaf && index < turns.length - 1 && (turn >> 3) % 4 !== 0) {
      holder = inner;
      continue;
    }
    if (change.key !== undefined && !Array.isArray(holder))
      Reflect.set(holder as object, change.key, change.put);
    else if (change.put === undefined && !Array.isArray(holder))
      Reflect.deleteProperty(holder as object, key);
    else Reflect.set(holder as object, key, change.put ?? null);
    return file;
  }
  return file;
}
