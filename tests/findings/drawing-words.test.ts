/** What a drawing's findings say: one and many, the true cause, and only figures that help. */
import { expect, test } from 'vitest';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { findRegions } from '#part/find-regions.ts';
import { block, bytesOf, circle, drawingText, entity, insert, line } from '#support/drawings/raw-drawing.ts';

function noCurves(entities: string, blocks?: string): string {
  const drawing = readDrawing(
    bytesOf(drawingText({ entities, ...(blocks === undefined ? {} : { blocks }) })),
  );
  const found = drawing.findings.find(({ code }) => code === 'drawing-without-curves');
  if (found === undefined) throw new Error('the drawing has curves');
  const { reason, remedy } = sayFinding(found);
  return `${reason} ${remedy}`;
}

test('drawing-without-curves counts what is drawn, not what blocks are made of, one and many', () => {
  const rib = block('RIB', line(0, 0, 9, 0) + circle(4, 4, 2));
  expect(noCurves('')).toMatch(/^The drawing contains no entities/);
  expect(noCurves('', rib)).toMatch(
    /^The drawing contains 2 entities in blocks, but no block is inserted. Insert the block/,
  );
  expect(noCurves(entity('TEXT', [10, 1], [20, 2], [1, 'lid']), rib)).toMatch(
    /^The drawing contains 1 entity, but it is not a usable outline\./,
  );
});

test('drawing-without-curves names what kept most of them from being outlines', () => {
  const missing = insert('RIB', 0, 0);
  expect(noCurves(missing)).toMatch(/1 entity, .* outline: the block that is inserted is missing\. Export/);
  expect(noCurves(missing + missing)).toMatch(/mainly, the blocks that are inserted are missing\. Export/);
  const paper = Array.from({ length: 3 }, () => line(0, 0, 5, 0, [67, 1])).join('');
  expect(noCurves(missing + paper)).toMatch(
    /4 entities, but none of them is a usable outline: mainly, they lie in paper space/,
  );
});

test('no-closed-region says first by how much ends stop short, and what tolerance would close them', () => {
  const sides = line(0, 0, 60, 0) + line(60, 0.2, 60, 40) + line(60, 40, 0, 40) + line(0, 40, 0, 0.31);
  const drawing = readDrawing(bytesOf(drawingText({ entities: sides })));
  const layers = { outline: [], regions: undefined, ignore: [] };
  const { findings } = findRegions(drawing, { layers, joinTolerance: 0.05 });
  const stop = findings.find(({ code }) => code === 'no-closed-region');
  if (stop === undefined) throw new Error('the outline is open');
  expect(sayFinding(stop)).toMatchObject({
    reason: '2 ends stop short of other lines, by 0.31 mm at most. The linework in use encloses no area.',
    remedy: 'Close the gaps in the drawing, or set joinTolerance to 0.31 mm.',
  });
});

test('gap-open within the tolerance gives no advice to lower it', () => {
  const { reason, remedy } = sayFinding(finding('gap-open', { gap: 0.04, joinTolerance: 0.05 }));
  expect(`${reason} ${remedy}`).not.toContain('joinTolerance');
});

test('polyline-count-differs and spline-unusable in the singular', () => {
  const named = { kind: 'LWPOLYLINE', handle: '2F' };
  expect(sayFinding(finding('polyline-count-differs', { ...named, stated: 1, found: 3 })).reason).toContain(
    '1 vertex but has 3',
  );
  expect(
    sayFinding(finding('spline-unusable', { ...named, problem: 'too few points', found: 1, wanted: 4 }))
      .reason,
  ).toContain('it has 1 point; its degree needs 4');
});

test('drawing-without-curves and paper-space-passed-over: one entity lies in paper space, two lie there', () => {
  const paper = line(0, 0, 5, 0, [67, 1]);
  expect(noCurves(paper)).toMatch(
    /^The drawing contains 1 entity, .* outline: it lies in paper space\. Move/,
  );
  expect(noCurves(paper + paper)).toMatch(/2 entities, .* outline: mainly, they lie in paper space\. Move/);
  const said = [1, 2].map((entities) => sayFinding(finding('paper-space-passed-over', { entities })).reason);
  expect(said[0]).toMatch(/^1 entity was skipped because it lies in/);
  expect(said[1]).toMatch(/^2 entities were skipped because they lie in/);
});

test('entity-passed-over and entity-cannot-be-read in the singular', () => {
  const facts = { why: 'it is a filled area', firstHandle: '2F' };
  const [one, two] = [1, 2].map((count) =>
    sayFinding(finding('entity-passed-over', { kind: 'HATCH', count, ...facts })),
  );
  expect(one?.remedy).toBe('No action is needed, unless it was meant as an outline.');
  expect(two?.remedy).toBe('No action is needed, unless one of them was meant as an outline.');
  const body = sayFinding(finding('entity-cannot-be-read', { kind: 'BODY', count: 1, ...facts }));
  expect(`${body.reason} ${body.remedy}`).toMatch(/It has handle 2F\. If it is an outline, explode it/);
});
