/**
 * SHA-256 of everything that the samples come to, and of the portable functions: held here by Node, in
 * `tests/browser/same-bytes.spec.ts` by whichever browser runs it. A change of a plan renews the list:
 * `GOLDEN=renew npx vitest run --project oracle tests/run/same-bytes.oracle.test.ts`.
 */
import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { expectGolden } from '#support/golden.ts';
import { samplesWithEveryFile } from '#support/handoff/every-file.ts';
import { type EngineWatch, watchEngineMaths } from '#support/maths/engine-maths.ts';
import { portableResults } from '#support/maths/maths-digest.ts';

/** What packages may ask the engine for, and why no byte hangs on its last bit. */
const HARMLESS: Readonly<Record<string, string>> = {
  'pdfkit sin':
    'the 64 constants of MD5 as it is loaded: none is nearer than 0.015 to where its whole part changes',
  'pdfkit pow': '2 to the 32, for the same constants',
  'fontkit log': 'the head of a font directory, which the pen writes again',
  'fontkit pow': 'the head of a font directory, which the pen writes again',
  'unicode-properties log2': 'how many bits its own table has, as it is loaded',
};

let watch: EngineWatch;
beforeAll(() => {
  watch = watchEngineMaths();
});
afterAll(() => watch.stop());

test('the portable functions give the recorded bits', () => {
  expectGolden('same-bytes/maths.sha256', `${sha256(new Uint8Array(portableResults().buffer))}\n`);
});

test.each(samplesWithEveryFile().map((sample) => [sample.name, sample] as const))(
  'every file of the sample %s is the recorded one',
  async (name, sample) => {
    const { files } = await runJob(sample);
    const lines = files.map((file) => `${sha256(file.bytes)}  ${file.name}\n`).sort(byName);
    for (const kind of [
      /^plan\.json$/,
      /^scribe.*\.dxf$/,
      /^template.*\.dxf$/,
      /^template.*\.pdf$/,
      /\.glb$/,
      /\.stl$/,
    ]) {
      expect(
        files.some((file) => kind.test(file.name)),
        `${kind}`,
      ).toBe(true);
    }
    expectGolden(`same-bytes/${name}.sha256`, lines.join(''));
  },
);

test('nothing of that, in a package or in ours, asked the engine for a function that engines differ in', () => {
  // The font's directory was made, so that the watch has seen something.
  expect(watch.asked).toContain('fontkit log');
  expect([...watch.asked].filter((each) => HARMLESS[each] === undefined)).toEqual([]);
});

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Lines as `sha256sum` writes them. */
function byName(a: string, b: string): number {
  return a.slice(64) < b.slice(64) ? -1 : 1;
}
