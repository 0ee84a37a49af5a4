import { describe, expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { loopArea, spansLength } from '#geometry/span.ts';
import { makePlan } from '#plan/make-plan.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';
import { templateFaults } from '#support/handoff/template-faults.ts';
import { templateOf } from '#support/handoff/template-of.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

/** A lid of 200 × 120 with one pocket 2 deep, whose line is 96 × 56 with sharp corners. */
const pocketPlan = () => {
  const part = partOf({ sheet: rectangle(0, 0, 200, 120), outlines: [rectangle(20, 20, 120, 80)] });
  return makePlan({ part, asked: askedAt(part, [[50, 50, 2]]), job: plainJob() });
};

/** Two floors side by side: the later line is open and ends on the earlier one at both ends. */
const stepPlan = () => {
  const part = partOf({
    sheet: rectangle(0, 0, 200, 120),
    outlines: [rectangle(20, 20, 100, 100), rectangle(100, 20, 180, 100)],
  });
  return makePlan({
    part,
    asked: askedAt(part, [
      [50, 50, 3],
      [150, 50, 1.5],
    ]),
    job: plainJob(),
  });
};

describe('a template', () => {
  test('has a slot along the whole line but for bridges in the middle of its sides', () => {
    const { set, findings } = templateOf(pocketPlan());
    expect(findings).toEqual([]);
    const { lines, templates } = set ?? { lines: [], templates: [] };
    expect(lines).toHaveLength(1);
    const { bridges } = itemAt(lines, 0);
    expect(bridges).toHaveLength(2);
    expect(templates).toHaveLength(1);
    // The line is 2 · (96 + 56) = 304 mm: two bridges of 5 mm are left out.
    const cut = itemAt(templates, 0).reduce((sum, { spans }) => sum + spansLength(spans), 0);
    expect(cut).toBeCloseTo(304 - 10, 6);
  });

  test.each([
    // Each of four corners adds a quarter disc outside and loses nothing: knife 2 wide, 294 mm of slot.
    ['middle', 294 * 2 - 4 * (1 - Math.PI / 4)],
    // Inside, four corners overlap by 2 × 2 and no more.
    ['peeled', 294 * 2 - 4 * 4],
    // Outside, a quarter disc of radius 2 each.
    ['kept', 294 * 2 + 4 * Math.PI],
  ] as const)('lies with its slot on the %s side of the line', (side, area) => {
    const { set } = templateOf(pocketPlan(), { knife: { width: 2, side } });
    const [slots = []] = set?.templates ?? [];
    const sum = slots.reduce(
      (total, { outline }) => total + outline.reduce((a, loop) => a + loopArea(loop), 0),
      0,
    );
    expect(sum).toBeCloseTo(area, 3);
    const box = boxOfSpans(slots.flatMap(({ outline }) => outline.flat()));
    const out = { middle: 1, peeled: 0, kept: 2 }[side];
    expect(box.minX).toBeCloseTo(22 - out, 6);
    expect(box.maxX).toBeCloseTo(118 + out, 6);
  });

  test('stops a slot short of the line that it runs into, and has no bridge there', () => {
    const { set } = templateOf(stepPlan());
    expect(set && templateFaults(set)).toEqual([]);
    const open = (set?.lines ?? []).filter(({ line }) => !line.path.closed);
    expect(open).toHaveLength(1);
    const { bridges, line } = itemAt(open, 0);
    // A web of 5 and half a knife of 1.5 on either line: 6.5 from line to slot.
    for (const { from, to } of [itemAt(bridges, 0), itemAt(bridges, bridges.length - 1)]) {
      expect(from === 0 || to === line.length).toBe(true);
      expect(to - from).toBeGreaterThanOrEqual(6.5 - 1e-9);
      // It comes in at a slant, so a little more along it.
      expect(to - from).toBeLessThan(9);
    }
    expect(set?.templates).toHaveLength(1);
  });

  test('grows and shrinks with the stretch given, in x and y, its slots as wide as the knife still', () => {
    const { set } = templateOf(pocketPlan(), { stretch: [1.01, 0.99], knife: { width: 1 } });
    const box = boxOfSpans((set?.templates[0] ?? []).flatMap(({ outline }) => outline.flat()));
    expect(box.minX).toBeCloseTo(22 * 1.01 - 0.5, 6);
    expect(box.maxX).toBeCloseTo(118 * 1.01 + 0.5, 6);
    expect(box.minY).toBeCloseTo(22 * 0.99 - 0.5, 6);
    expect(box.maxY).toBeCloseTo(78 * 0.99 + 0.5, 6);
  });

  test('is as large as the part and its margin, without the part’s cutouts, with holes in the margin that fit one way only', () => {
    const { set } = templateOf(pocketPlan(), { margin: 20, holes: { diameter: 4 } });
    const { outline, holes, label } = set?.sheet ?? { outline: [], holes: [], label: undefined };
    const box = boxOfSpans(outline);
    for (const [side, at] of Object.entries({ minX: -20, maxX: 220, maxY: 140 })) {
      expect(box[side as keyof typeof box]).toBeCloseTo(at, 4);
    }
    expect(box.minY).toBeCloseTo(label?.minY ?? 0, 6);
    expect(holes.map(({ name }) => name)).toEqual(['A', 'B', 'C']);
    // Half a margin off the part.
    for (const { center } of holes) {
      const off = Math.hypot(Math.max(0, -center.x, center.x - 200), Math.max(0, -center.y, center.y - 120));
      expect(off).toBeCloseTo(10, 2);
    }
  });

  test('template-in-several: two pockets with 9 mm of land between their lines share no sheet with webs of 10', () => {
    const part = partOf({
      sheet: rectangle(0, 0, 200, 120),
      outlines: [rectangle(20, 20, 90, 100), rectangle(96.5, 20, 170, 100)],
    });
    const plan = makePlan({
      part,
      asked: askedAt(part, [
        [50, 50, 2],
        [120, 50, 2],
      ]),
      job: plainJob(),
    });
    // Lines 6.5 + 2 + 2 = 10.5 apart, slots of 1.5: a web of 9.
    const { set, findings } = templateOf(plan, { web: 10 });
    expect(set?.templates).toHaveLength(2);
    expect(set && templateFaults(set)).toEqual([]);
    const [reported] = findings;
    expect(reported).toMatchObject({
      code: 'template-in-several',
      facts: { templates: 2, least: 2, web: 10 },
    });
    expect(reported?.code === 'template-in-several' && reported.facts.gap).toBeCloseTo(9, 6);
    expect(templateOf(plan, { web: 8.9 }).set?.templates).toHaveLength(1);
  });

  test('a pocket that is one round curve has its bridges opposite each other', () => {
    const part = partOf({ sheet: circle(0, 0, 100), outlines: [circle(0, 0, 40)] });
    const plan = makePlan({ part, asked: askedAt(part, [[0, 0, 2]]), job: plainJob() });
    const { set } = templateOf(plan);
    expect(set && templateFaults(set)).toEqual([]);
    const { bridges, line } = itemAt(set?.lines ?? [], 0);
    expect(bridges).toHaveLength(2);
    expect(itemAt(bridges, 1).from - itemAt(bridges, 0).from).toBeCloseTo(line.length / 2, 6);
  });

  test('rounded corners have no bridge while there are sides for it', () => {
    const part = partOf({
      sheet: rectangle(0, 0, 300, 200),
      outlines: [roundedRectangle(20, 20, 250, 180, 12)],
    });
    const plan = makePlan({ part, asked: askedAt(part, [[100, 100, 2]]), job: plainJob() });
    const { set } = templateOf(plan, { bridge: { apart: 120 } });
    expect(set && templateFaults(set)).toEqual([]);
    const { bridges, line } = itemAt(set?.lines ?? [], 0);
    let passed = 0;
    for (const span of line.path.spans) {
      const to = passed + spansLength([span]);
      if (span.kind === 'arc') {
        const hits = bridges.filter(
          (each) => each.from % line.length < to + 4 && each.to % line.length > passed - 4,
        );
        expect(hits).toEqual([]);
      }
      passed = to;
    }
  });
});

test('the label hangs under the lowest point of the part, in one piece with it', () => {
  const sheet = polygon([
    [0, 300],
    [900, 0],
    [1000, 0],
    [1000, 600],
    [0, 600],
  ]);
  const part = partOf({ sheet, outlines: [rectangle(600, 300, 900, 500)] });
  const plan = makePlan({ part, asked: askedAt(part, [[700, 400, 2]]), job: plainJob() });
  const { set } = templateOf(plan);
  expect(set && templateFaults(set)).toEqual([]);
  const { label } = set?.sheet ?? {};
  // From 900 to 1000 the part is lowest; the field is 360 wide and keeps to the part's right edge.
  expect(label).toMatchObject({ minX: 640, maxX: 1000, maxY: -25 });
});

test('re-masked, no template holds slots of two stages: each coat has its own, though its lines lie far from the others', () => {
  const part = partOf({
    sheet: rectangle(0, 0, 200, 120),
    outlines: [rectangle(10, 10, 90, 110), rectangle(110, 10, 190, 110)],
  });
  const asked = askedAt(part, [
    [50, 50, 3],
    [150, 50, 1.5],
  ]);
  const stagesOf = (masking: 'peel-next' | 're-mask') => {
    const { set } = templateOf(makePlan({ part, asked, job: plainJob({ masking }) }));
    return set?.templates.map((slots) => [...new Set(slots.map(({ stage }) => stage.number))].sort());
  };
  expect(stagesOf('peel-next')).toEqual([[1, 2]]);
  expect(stagesOf('re-mask')).toEqual([[1], [2]]);
});

test('a part without an outline, and one of two sheets, get the box of all their lines and outlines', () => {
  const outlines = [rectangle(20, 20, 120, 80)];
  const part = partOf({ outlines });
  const plan = makePlan({ part, asked: askedAt(part, [[50, 50, 2]]), job: plainJob() });
  const { set } = templateOf(plan);
  expect(set && templateFaults(set)).toEqual([]);
  // The line runs from 22 to 118 and up to 78; the label, wider than that, stands in the middle below.
  const box = boxOfSpans(set?.sheet.outline ?? []);
  expect((box.minX + box.maxX) / 2).toBeCloseTo(70, 6);
  expect(box.maxY).toBeCloseTo(78 + 25, 6);
  const sheets = [...pocketPlan().sheet, rectangle(400, 0, 500, 120)];
  const two = templateOf({ ...pocketPlan(), sheet: sheets }).set;
  expect(two && templateFaults(two)).toEqual([]);
  expect(boxOfSpans(two?.sheet.outline ?? [])).toMatchObject({ minX: -25, maxX: 525 });
});
