/** What a list of jobs shows of a plan, and that the samples' pictures are of their plans. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '#app/state/opening/samples.ts';
import { partPicture } from '#app/state/part-picture.ts';
import { jsonText } from '#handoff/json-text.ts';
import { runJob } from '#run/run-job.ts';
import { expectGolden } from '#support/golden.ts';

type Drawn = Parameters<typeof partPicture>[0];
type DrawnRegion = Drawn['regions'][number];

/** Counter-clockwise, lower left corner first. */
const box = (left: number, low: number, right: number, high: number) => ({
  closed: true,
  vertices: [
    [left, low, 0],
    [right, low, 0],
    [right, high, 0],
    [left, high, 0],
  ] as [number, number, number][],
});

const region = (level: number, face: 'near' | 'far' | undefined, ...contours: ReturnType<typeof box>[]) =>
  ({ level, contours, ...(face && { face }) }) as unknown as DrawnRegion;
const stages = [
  { level: 3, color: '#112233' },
  { level: 1, color: '#445566' },
] as unknown as Drawn['stages'];

describe('a part 260 wide and 60 high: half a pixel a millimetre, in the middle', () => {
  const plate = box(20, 100, 280, 160);
  const regions = [
    region(0, undefined, plate, box(30, 110, 130, 130)),
    region(3, 'near', box(30, 110, 130, 130)),
    region(1, 'far', box(40, 100, 60, 160)),
  ];

  test('the edge, its holes and the floors of the near face, upright', () => {
    const picture = partPicture({ outline: plate, cutouts: [box(220, 140, 240, 150)], regions, stages });
    expect(picture).toEqual({
      width: 132,
      height: 64,
      land: 'M1 47L131 47L131 17L1 17ZM101 27L111 27L111 22L101 22Z',
      floors: [{ color: '#112233', path: 'M6 42L56 42L56 32L6 32Z' }],
    });
  });

  test('without an edge it is drawn as large as what is etched', () => {
    const picture = partPicture({ outline: null, cutouts: [], regions: regions.slice(1), stages });
    expect(picture.floors[0]?.path).toBe('M1 45L131 45L131 19L1 19Z');
  });
});

test('every sample of the list has the picture of its plan', { tags: ['long'] }, async () => {
  const drawn: Record<string, unknown> = {};
  for (const { file } of SAMPLES) {
    const jobText = readFileSync(`samples/${file}`, 'utf8');
    const { drawing: drawingName } = JSON.parse(jobText);
    const drawingBytes = readFileSync(`samples/${drawingName}`);
    const { planFile } = await runJob({ jobText, drawingName, drawingBytes }, { withoutFiles: true });
    if (planFile === undefined) throw new Error(`${file} has no plan`);
    drawn[file] = partPicture(planFile);
  }
  expectGolden('../../src/app/state/opening/sample-pictures.json', jsonText(drawn));
});
