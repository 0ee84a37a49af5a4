/** Speed of reading a 50 MB drawing, against dxf-parser alone on the same text in the same run. Prints; judges nothing. */
import DxfParser from 'dxf-parser';
import { expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { largeDrawing } from '#support/drawings/large-drawing.ts';
import { bytesOf } from '#support/drawings/raw-drawing.ts';

const ENTITIES = 225_000;
const ROUNDS = 3;

test('a 50 MB drawing into curves, against dxf-parser alone', () => {
  const text = largeDrawing(ENTITIES);
  const bytes = bytesOf(text);
  const ours: number[] = [];
  const theirs: number[] = [];
  let curves = 0;
  for (let round = 0; round < ROUNDS; round++) {
    theirs.push(seconds(() => expect(new DxfParser().parseSync(text)?.entities.length).toBe(ENTITIES)));
    ours.push(
      seconds(() => {
        curves = readDrawing(bytes).curves.length;
      }),
    );
  }
  const ratio = median(ours) / median(theirs);
  console.log(
    [
      `drawing of ${(bytes.length / 1e6).toFixed(1)} MB, ${ENTITIES} entities, ${curves} curves`,
      `dxf-parser alone ${median(theirs).toFixed(2)} s (${theirs.map((each) => each.toFixed(2)).join(', ')})`,
      `readDrawing      ${median(ours).toFixed(2)} s (${ours.map((each) => each.toFixed(2)).join(', ')})`,
      `ratio            ${ratio.toFixed(2)} (at most 1.5 is asked)`,
    ].join('\n'),
  );
});

function seconds(work: () => void): number {
  globalThis.gc?.();
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
