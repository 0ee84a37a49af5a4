/** A run whose work is shared: what other threads send back, as copies, makes the bytes that a run alone makes. */
import { describe, expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { dealOut, type OtherThreads, type SharedWork } from '#run/share/other-threads.ts';
import { sharedWork } from '#run/share/shared-work.ts';
import { pocketGridFiles } from '#support/drawings/pocket-grid-files.ts';
import { samplesWithEveryFile } from '#support/handoff/every-file.ts';

/** All that goes over is copied there and back, as between threads; `asked` counts what each thread was given. */
function copyingThreads(count: number): OtherThreads & { readonly asked: number[] } {
  const asked = Array.from({ length: count }, () => 0);
  const threads = asked.map(
    (_, thread): SharedWork => ({
      open: async (face, places) => {
        asked[thread] = (asked[thread] ?? 0) + places.length;
        return structuredClone(await sharedWork.open(...structuredClone([face, places] as const)));
      },
      measure: async (plan, job, places) => {
        asked[thread] = (asked[thread] ?? 0) + places.length;
        return structuredClone(await sharedWork.measure(...structuredClone([plan, job, places] as const)));
      },
    }),
  );
  return { fewest: 2, start: () => threads, asked };
}

/** With the files that every plan has. */
function sampleOf(name: string) {
  const sample = samplesWithEveryFile().find((each) => each.name === name);
  if (sample === undefined) throw new Error(`no sample ${name}`);
  const { handoff: _, ...job } = JSON.parse(sample.jobText);
  return { ...sample, jobText: JSON.stringify(job) };
}

describe('the same bytes with 1, 2 and 4 threads', () => {
  const SAMPLES = ['gauge-pod-cover', 'current-meter-cover'];
  const grid = () => {
    const { drawing, job } = pocketGridFiles(4, 3);
    return { jobText: job, drawingName: 'grid.dxf', drawingBytes: new TextEncoder().encode(drawing) };
  };

  test.for([...SAMPLES, 'grid'])('%s', { tags: ['long'] }, async (name) => {
    const input = name === 'grid' ? grid() : sampleOf(name);
    const alone = await runJob(input);
    expect(alone.files.length).toBeGreaterThan(1);
    for (const others of [1, 3]) {
      const threads = copyingThreads(others);
      const shared = await runJob(input, { threads });
      expect(shared.files).toEqual(alone.files);
      expect(shared.findings).toEqual(alone.findings);
      if (name === 'grid') expect(Math.min(...threads.asked)).toBeGreaterThan(0);
    }
  });
});

describe('what is dealt out', () => {
  const here = (places: readonly number[]) => places.map((place) => `here ${place}`);
  const threads = { fewest: 3, start: () => [sharedWork, sharedWork] };

  test('goes round: the first to this thread, the rest to the others', async () => {
    const asked: (readonly number[])[] = [];
    const ask = async (_: SharedWork, places: readonly number[]) => {
      asked.push(places);
      return places.map((place) => `away ${place}`);
    };
    const done = await dealOut([10, 11, 12, 13, 15], threads, { ask, here });
    expect(asked).toEqual([[11, 15], [12]]);
    expect([...done].sort(([a], [b]) => a - b)).toEqual([
      [10, 'here 10'],
      [11, 'away 11'],
      [12, 'away 12'],
      [13, 'here 13'],
      [15, 'away 15'],
    ]);
  });

  test('is done here where a thread fails', async () => {
    const ask = () => Promise.reject(new Error('out of memory'));
    const done = await dealOut([4, 6, 9], threads, { ask, here });
    expect(new Map([...done].sort(([a], [b]) => a - b))).toEqual(
      new Map([4, 6, 9].map((place) => [place, `here ${place}`])),
    );
  });

  test('is nothing where there is too little or too much, or nobody to share with', async () => {
    const ask = async (_: SharedWork, places: readonly number[]) => here(places);
    expect(await dealOut([1, 2], threads, { ask, here })).toEqual(new Map());
    expect(await dealOut([1, 2, 3], { fewest: 3, start: () => [] }, { ask, here })).toEqual(new Map());
    expect(await dealOut([1, 2, 3], undefined, { ask, here })).toEqual(new Map());
    const many = Array.from({ length: 100_001 }, (_, place) => place);
    expect(await dealOut(many, threads, { ask, here })).toEqual(new Map());
    expect((await dealOut(many.slice(1), threads, { ask, here })).size).toBe(100_000);
  });
});
