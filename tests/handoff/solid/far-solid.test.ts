import { expect, test } from 'vitest';
import { checkedRelief } from '#front/relief/check-relief.ts';
import { glbFile } from '#handoff/solid/glb-file.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';
import { kitOf } from '#support/parts/front-of.ts';

test('M2.7 the GLB of a part far from the drawing’s origin stands on a node at the middle of its box, in metres and y up', () => {
  const [x, y] = [1_000_000, -400_000];
  const { mesh, trouble } = checkedRelief(
    kitOf({
      stages: [{ level: 2, opening: [circle(x + 30, y + 20, 9)] }],
      sheet: [rectangle(x, y, x + 80, y + 50)],
    }),
  );
  expect(trouble).toBeUndefined();
  const bytes = glbFile({ name: 'Far hatch', planHash: 'a'.repeat(64), mesh, tolerance: 0.02, stages: [] });
  const length = new DataView(bytes.buffer).getUint32(12, true);
  const contents = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + length)));
  expect(contents.nodes).toEqual([{ name: 'Far hatch', mesh: 0, translation: [1000.04, 0, 399.975] }]);
  expect(contents.accessors[0].max[0]).toBeCloseTo(0.04, 6);
});
