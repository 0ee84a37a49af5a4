/** M9.7 files of the far face, read back by readers that know nothing of Isobath. */
import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { distanceToSpan } from '#geometry/span.ts';
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { codes, LID, requirements, runLid as run } from '#support/parts/two-faced-lid.ts';

describe('M9.7: files of the far face', { tags: ['long'] }, () => {
  const everything = { requirements, handoff: { files: HANDOFF_FILES } };
  test('are there for what is cut on it, and for nothing else', async () => {
    const { files } = await run(everything, LID);
    const far = files.map(({ name }) => name).filter((name) => name.includes('-far'));
    expect(far).toEqual([
      'scribe-far.dxf',
      'traveller-far.pdf',
      'scribe-far.nc',
      'scribe-r12-far.dxf',
      'template-01-far.dxf',
      'template-far.pdf',
    ]);
  });

  test('laid back through the mirror their lines are those of the plan, within 2 µm', async () => {
    const { files, plan } = await run(everything, LID);
    const text = new TextDecoder().decode(files.find(({ name }) => name === 'scribe-far.dxf')?.bytes);
    const parsed = parseString(text);
    const drawn = parsed.entities.filter(({ layer }) => layer?.startsWith('SCRIBE'));
    const corners = drawn.flatMap(({ vertices = [] }) => vertices.map(({ x, y }) => ({ x: -x, y })));
    expect(corners.length).toBeGreaterThan(3);
    const lines = plan?.far?.stages.flatMap((stage) => stage.lines.flatMap(({ spans }) => spans)) ?? [];
    for (const corner of corners) {
      expect(Math.min(...lines.map((span) => distanceToSpan(span, corner)))).toBeLessThan(0.002);
    }
    // And every line of the plan has its drawn end.
    for (const { start } of lines) {
      expect(
        Math.min(...corners.map((corner) => Math.hypot(corner.x - start.x, corner.y - start.y))),
      ).toBeLessThan(0.002);
    }
    expect(text).toContain('Far face (seen from it, mirrored about x = 0): Buoy lid');
    const near = new TextDecoder().decode(files.find(({ name }) => name === 'scribe.dxf')?.bytes);
    expect(near).toContain('Near face (both are in the bath at once): Buoy lid');
  });

  test('template-holes-turn: four holes of a rectangle go onto pins the wrong way as well', async () => {
    const at = [
      [-12, -12],
      [212, -12],
      [212, 132],
      [-12, 132],
    ];
    const turned = await run(
      { requirements, handoff: { files: ['template'], template: { holes: { at } } } },
      LID,
    );
    expect(codes(turned)).toContain('template-holes-turn');
    expect(codes(await run(everything, LID))).not.toContain('template-holes-turn');
  });

  test('holes are common to both faces, and no turn or mirror brings them onto each other', async () => {
    const { files } = await run(everything, LID);
    const holesOf = (name: string) => {
      const text = new TextDecoder().decode(files.find((each) => each.name === name)?.bytes);
      return parseString(text).entities.flatMap(({ layer, vertices = [] }) => {
        // Two halves of a circle.
        const [one, other] = vertices;
        if (layer !== 'HOLES' || one === undefined || other === undefined) return [];
        return [{ x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 }];
      });
    };
    const [near, far] = [holesOf('template-01.dxf'), holesOf('template-01-far.dxf')];
    expect(near).toHaveLength(3);
    const sorted = (holes: readonly { x: number; y: number }[]) =>
      holes.map(({ x, y }) => `${x.toFixed(4)} ${y.toFixed(4)}`).sort();
    expect(sorted(far.map(({ x, y }) => ({ x: -x, y })))).toEqual(sorted(near));
    // The four maps of a plate onto itself: only rest fits, to the radius of a hole.
    const [cx, cy] = [100, 60];
    const maps = [
      [1, 1],
      [-1, 1],
      [1, -1],
      [-1, -1],
    ] as const;
    const fits = maps.map(([sx, sy]) =>
      near.every(({ x, y }) => {
        const [there, up] = [cx + sx * (x - cx), cy + sy * (y - cy)];
        return near.some((hole) => Math.hypot(hole.x - there, hole.y - up) < 3);
      }),
    );
    expect(fits).toEqual([true, false, false, false]);
  });

  test('are none where no line is cut there', async () => {
    const { files } = await run({ ...everything, requirements: requirements.slice(0, 2) }, LID);
    expect(files.map(({ name }) => name).filter((name) => name.includes('-far'))).toEqual([]);
    expect(files.map(({ name }) => name)).toContain('scribe.dxf');
  });
});

test('the review has a picture of each stage that peels something on the far face', {
  tags: ['long'],
}, async () => {
  const { files } = await run({ requirements, handoff: { files: ['review'] } }, LID);
  const bytes = files.find(({ name }) => name === 'review.pdf')?.bytes;
  if (bytes === undefined) throw new Error('there is a review');
  const words = JSON.stringify(await readPdf(bytes));
  expect(words).toContain('Far face, seen from it, stage 1 of 2');
  expect(words).not.toContain('Far face, seen from it, stage 2 of 2');
});
