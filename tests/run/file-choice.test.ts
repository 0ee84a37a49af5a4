/** Which files are made is no part of the plan: a review, and the hash on every sheet, stand whatever is made of it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';

test('plan.json is the same, byte for byte, whichever files are made beside it', {
  tags: ['long'],
}, async () => {
  const none = await filesWith(undefined);
  const some = await filesWith({ files: ['traveller', 'inspection', 'stl'] });
  expect([...some.keys()]).toEqual(
    expect.arrayContaining(['traveller.pdf', 'inspection-points.csv', 'etched-part.stl']),
  );
  expect(some.get('plan.json')).toBe(none.get('plan.json'));
});

test('what is said about the files themselves, a paper size, stays in the plan', {
  tags: ['long'],
}, async () => {
  const [plain, large] = [await filesWith({ files: ['traveller'] }), await filesWith({ paper: 'a3' })];
  expect(large.get('plan.json')).not.toBe(plain.get('plan.json'));
});

async function filesWith(handoff: unknown): Promise<ReadonlyMap<string, string>> {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const { files } = await runJob({
    jobText: JSON.stringify({ ...job, handoff }),
    drawingName: 'gauge-pod-cover.dxf',
    drawingBytes: readFileSync('samples/gauge-pod-cover.dxf'),
  });
  return new Map(files.map(({ name, bytes }) => [name, Buffer.from(bytes).toString('latin1')]));
}
