/** Scribe drawings and programs of all samples come back with every edge within 2 µm: whole files, as a programmer sends them back. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compareReturned } from '#run/compare/compare-returned.ts';
import { runJob } from '#run/run-job.ts';

const read = (name: string): Uint8Array => new Uint8Array(readFileSync(`samples/${name}`));
const SAMPLES = readdirSync('samples').filter((name) => name.endsWith('.job.json'));

describe.each(SAMPLES)('%s', (sample) => {
  const job = JSON.parse(new TextDecoder().decode(read(sample)));
  const beside = new Map(
    [job.handoff?.program?.post, job.figures, job.stock?.survey]
      .filter((name) => typeof name === 'string')
      .map((name) => [name, new TextDecoder().decode(read(name))]),
  );
  const files = ['program'];
  const input = {
    jobText: JSON.stringify({ ...job, handoff: { ...job.handoff, files } }),
    drawingName: job.drawing,
    drawingBytes: read(job.drawing),
    beside,
  };

  test('comes back as it went', { tags: ['long'] }, async () => {
    const written = (await runJob(input)).files.filter(({ name }) => /^scribe\./.test(name));
    expect(written).toHaveLength(2);
    for (const { name, bytes } of written) {
      const kind = name.endsWith('.dxf') ? 'scribe' : 'program';
      const { comparison, findings } = await compareReturned(input, { kind, name, bytes });
      expect(findings.map(({ code }) => code)).toEqual([]);
      expect(comparison?.floors).toEqual([]);
      for (const { outward, inward, lost } of comparison?.edges ?? []) {
        expect(lost).toBeUndefined();
        expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
      }
    }
  });
});
