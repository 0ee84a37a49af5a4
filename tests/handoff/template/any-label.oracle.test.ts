/** Words and edges of templates of any panel: measured on the template, and on its pages as pdf.js reads them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { type Loop, tangentAlong } from '#geometry/span.ts';
import { templateLabel } from '#handoff/template/template-label.ts';
import { templatePages } from '#handoff/template/template-pages.ts';
import type { TemplateSet } from '#handoff/template/template-set.ts';
import { templateTiles } from '#handoff/template/template-tiles.ts';
import { polygon } from '#support/geometry/shapes.ts';
import { labelFaults } from '#support/handoff/label-faults.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { fullWords, templateOf } from '#support/handoff/template-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';

const HASH = 'a'.repeat(64);

/** A pocket turned about its middle. */
const pocket = fc
  .record({
    x: fc.integer({ min: 60, max: 840 }),
    y: fc.integer({ min: 60, max: 440 }),
    width: fc.integer({ min: 24, max: 160 }),
    height: fc.integer({ min: 18, max: 110 }),
    degrees: fc.integer({ min: 0, max: 89 }),
  })
  .map(({ x, y, width, height, degrees }) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const corners = [
      [-width, -height],
      [width, -height],
      [width, height],
      [-width, height],
    ] as const;
    return polygon(corners.map(([u, v]) => [x + (u * c - v * s) / 2, y + (u * s + v * c) / 2]));
  });

/** Six sides, none along an axis, its corners from 35 to 145 degrees and more. */
const panel = fc.record({
  sheet: fc
    .record({ wide: fc.integer({ min: 500, max: 900 }), high: fc.integer({ min: 260, max: 500 }) })
    .map(({ wide, high }) =>
      polygon([
        [0, 13],
        [wide * 0.6, 0],
        [wide, high * 0.3],
        [wide * 0.93, high],
        [wide * 0.2, high * 0.9],
        [-11, high * 0.7],
      ]),
    ),
  outlines: fc.array(pocket, { minLength: 1, maxLength: 7 }),
  depths: fc.array(fc.constantFrom(0, 1, 1.6, 2.2, 3), { minLength: 12, maxLength: 12 }),
});

function templateOfPanel({ sheet, ...part }: { sheet: Loop; outlines: Loop[]; depths: number[] }) {
  const plan = planOf({ ...part, factor: 1.1 }, 'shallow-edge', sheet);
  return templateOf(plan, { paper: 'a4' }, fullWords(plan)).set;
}

/** Degrees of metal or of air at the sharpest corner. */
function sharpestCorner(outline: Loop): number {
  const turns = outline.map((span, index) => {
    const [along, on] = [
      tangentAlong(span, 1),
      tangentAlong(itemAt(outline, (index + 1) % outline.length), 0),
    ];
    const turn = Math.atan2(along.x * on.y - along.y * on.x, along.x * on.x + along.y * on.y);
    return Math.abs((turn * 180) / Math.PI);
  });
  return 180 - Math.max(...turns);
}

/** All words of a template that must be on paper, with how often. */
function wordsOf(set: TemplateSet, number: number): string[] {
  const { texts } = templateLabel(set, number, HASH);
  const marks = itemAt(set.marks, number - 1).flatMap((mark) => mark.texts);
  return [...texts, ...marks, ...itemAt(set.names, number - 1)].map(({ text }) => text);
}

test('label, names and marks keep off slots, holes, edges and each other, and no corner of the sheet is under 20°: random parts', () => {
  let made = 0;
  const judge = (set: TemplateSet | undefined) => {
    if (set === undefined) return;
    made++;
    expect(labelFaults(set)).toEqual([]);
    expect(sharpestCorner(set.sheet.outline)).toBeGreaterThan(20);
  };
  fc.assert(
    fc.property(randomPart, (random) => judge(templateOf(planOf(random)).set)),
    { numRuns: 60 },
  );
  fc.assert(
    fc.property(panel, (random) => judge(templateOfPanel(random))),
    { numRuns: 60 },
  );
  expect(made).toBeGreaterThan(60);
});

test('on A4 every word is whole on some page, inside what its tile shows, and no page is blank: random panels', async () => {
  let pagesRead = 0;
  await fc.assert(
    fc.asyncProperty(panel, async (random) => {
      const set = templateOfPanel(random);
      if (set === undefined) return;
      const pages = await readPdf(await templatePages({ set, planHash: HASH, date: undefined }));
      let at = 0;
      for (const [index] of set.templates.entries()) {
        const { grid, tiles } = templateTiles(set, index + 1);
        const printed = pages.slice(at + 1, at + 1 + tiles.length);
        at += 1 + tiles.length;
        const inside = printed.flatMap(({ words }) => words.filter(({ y }) => y > grid.window.minY));
        for (const { text, x, y, width } of inside.filter((word) => !word.text.includes('100 mm'))) {
          expect(x, text).toBeGreaterThanOrEqual(grid.window.minX);
          expect(x + width, text).toBeLessThanOrEqual(grid.window.maxX);
          expect(y, text).toBeLessThanOrEqual(grid.window.maxY);
        }
        const read = inside.map(({ text }) => text).join('\n');
        for (const text of wordsOf(set, index + 1)) expect(read).toContain(text);
        for (const page of printed) expect(inkWithin(page.places, grid.window)).toBe(true);
        pagesRead += printed.length;
      }
      expect(at).toBe(pages.length);
    }),
    { numRuns: 40 },
  );
  expect(pagesRead).toBeGreaterThan(150);
});

/** Whether anything of the template is drawn inside the window, apart from its frame and bars. */
function inkWithin(
  places: readonly (readonly [number, number])[],
  { minX, minY, maxX, maxY }: { minX: number; minY: number; maxX: number; maxY: number },
): boolean {
  return places.some(([x, y]) => x > minX + 0.1 && x < maxX - 0.1 && y > minY + 0.1 && y < maxY - 0.1);
}
