/** The list of files that metal could be cut from, which an earlier plan's are taken away by, held to what is really written. */
import { describe, expect, test } from 'vitest';
import { PLAIN_POST, POST_ENDINGS } from '#job/formats/post-file.ts';
import { cutFiles, HANDOFF_FILES } from '#job/handoff-list.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

/** Names of all files of the buoy lid but plan.json, with every file that a job can choose. */
async function namesWritten(handoff: object = {}, process: object = {}): Promise<string[]> {
  const job = {
    ...buoyLidJob,
    process: { ...buoyLidJob.process, ...process },
    handoff: { files: HANDOFF_FILES, ...handoff },
  };
  const { files, findings } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: buoyLidJob.drawing,
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
  expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  return files.map(({ name }) => name).filter((name) => name !== 'plan.json');
}

/** Of a lid with pockets on either face, both hands. */
async function namesOfBothFaces(handoff: object): Promise<string[]> {
  const { files } = await runLid(
    { requirements, handoff: { files: HANDOFF_FILES, hand: 'both', ...handoff } },
    LID,
  );
  return files.map(({ name }) => name).filter((name) => name !== 'plan.json');
}

const sections = [0, 1, 2].map((at) => ({ from: [0, 20 + 17 * at], to: [200, 23 + 11 * at] }));

describe('files that an earlier plan left behind', () => {
  test.each([
    ['all in one', {}, {}],
    [
      'a stage a file, several sections',
      { scribe: { split: 'by-stage' }, program: { split: 'by-stage' }, sections },
      {},
    ],
    ['a new coat for each stage', {}, { masking: 're-mask' }],
    ['templates shared out by wide webs', { template: { web: 30, margin: 90, holes: { diameter: 4 } } }, {}],
    ...POST_ENDINGS.map((ending) => [
      `a program that ends with ${ending}`,
      { program: { post: { ...PLAIN_POST, ending } } },
      {},
    ]),
  ] as [string, object, object][])(
    'are on the list whatever is chosen: %s',
    { tags: ['long'] },
    async (_, handoff, process) => {
      const names = await namesWritten(handoff, process);
      expect(names.length).toBeGreaterThan(8);
      expect(names.filter((name) => !cutFiles().includes(name))).toEqual([]);
    },
  );

  test('are each written for some choice: no name stands on the list for nothing', {
    tags: ['long'],
  }, async () => {
    const written = new Set([
      ...(await namesWritten({ sections, hand: 'both' })),
      ...(await namesWritten({ scribe: { split: 'by-stage' }, program: { split: 'by-stage' } })),
      ...(await namesOfBothFaces({})),
      ...(await namesOfBothFaces({ scribe: { split: 'by-stage' }, program: { split: 'by-stage' } })),
    ]);
    // One of each numbered kind, or of each ending, stands for all of it.
    const kindOf = (name: string) => name.replace(/-\d+/, '').replace(/\.(nc|ngc|tap|cnc)$/, '.nc');
    const kinds = new Set([...written].map(kindOf));
    expect(cutFiles().filter((name) => !kinds.has(kindOf(name)))).toEqual([]);
    expect(new Set(cutFiles()).size).toBe(cutFiles().length);
  });

  test('are one for each choice of the job at least: every choice writes a file of its own', {
    tags: ['long'],
  }, async () => {
    const plain = await namesWritten({ files: [] });
    for (const file of HANDOFF_FILES) {
      const names = await namesWritten({ files: [file] });
      const own = names.filter((name) => !plain.includes(name));
      expect(own.length, file).toBeGreaterThan(0);
      expect(own.filter((name) => !cutFiles().includes(name))).toEqual([]);
    }
  });
});
