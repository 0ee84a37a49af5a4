/** Template files as a run writes them, read back by independent readers: dxf for the drawing, pdf.js for the pages. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { paperFigures } from '#handoff/paper-figures.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { templateDrawing } from '#handoff/template/template-drawing.ts';
import type { TemplateSet } from '#handoff/template/template-set.ts';
import { templateTiles } from '#handoff/template/template-tiles.ts';
import { labelWords } from '#handoff/template/template-words.ts';
import { cutFiles } from '#job/handoff-list.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { runJob } from '#run/run-job.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { labelFaults } from '#support/handoff/label-faults.ts';
import { type ReadPage, readPdf } from '#support/handoff/read-pdf.ts';
import { type GivenTemplate, templateOf } from '#support/handoff/template-of.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

async function planned(template: object = {}, special: object = {}) {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const handoff = { files: ['template'], template, date: '2026-05-31' };
  const jobText = JSON.stringify({ ...job, ...special, handoff });
  const drawingBytes = readFileSync('samples/gauge-pod-cover.dxf');
  const result = await runJob({ jobText, drawingName: job.drawing, drawingBytes });
  const bytesOf = (name: string) => result.files.find((file) => file.name === name)?.bytes;
  return { ...result, bytesOf, names: result.files.map(({ name }) => name) };
}

function made(given: GivenTemplate = undefined): TemplateSet {
  const { set } = templateOf(handMadePlan, given);
  if (set === undefined) throw new Error('the hand-made plan has templates');
  return set;
}

describe.each(['mm', 'in'] as const)('template-01.dxf of a drawing in %s', (unit) => {
  const set = made();
  const read = parseString(
    new TextDecoder().decode(templateDrawing({ set, number: 1, planHash: 'f'.repeat(64), unit })),
  );
  const scale = unit === 'mm' ? 1 : 25.4;
  const closedOn = (layer: string) => read.entities.filter((entity) => entity.layer === layer);

  test('has every slot as a closed outline with true arcs on its stage’s layer', () => {
    const slots = itemAt(set.templates, 0);
    for (const { number } of handMadePlan.stages) {
      const wanted = slots.filter(({ stage }) => stage.number === number);
      const found = closedOn(`SLOT-0${number}`);
      expect(found).toHaveLength(wanted.length);
      found.forEach((entity, index) => {
        expect(entity.closed).toBe(true);
        const vertices = (entity.vertices ?? []).map(
          ({ x, y, bulge }) => [x * scale, y * scale, bulge ?? 0] as const,
        );
        const { spans } = pathOfContour({ closed: true, vertices });
        const outline = itemAt(itemAt(wanted, index).outline, 0);
        expect(curveGap(spans, outline)).toBeLessThan(1e-4);
        expect(curveGap(outline, spans)).toBeLessThan(1e-4);
        expect(spans.length).toBe(outline.length);
      });
    }
  });

  test('has the sheet, its holes, marks, scale check and words on layers of their own', () => {
    expect(closedOn('SHEET')).toHaveLength(1);
    expect(closedOn('HOLES')).toHaveLength(3);
    expect(closedOn('PART').length).toBe(handMadePlan.sheet.length);
    expect(closedOn('SCALE')).toHaveLength(1);
    for (const { number } of handMadePlan.stages) {
      expect(closedOn(`MARK-0${number}`).length).toBeGreaterThan(number);
    }
    const words = read.entities.flatMap((entity) => ('string' in entity ? [String(entity.string)] : []));
    expect(words).toContain('Gondola lid');
    expect(words).toContain('Plan ffff ffff ffff, true size');
    expect(words).toContain('THIS SIDE UP');
    expect(words).toContain('Offsets made for factor 1.00, levels');
    expect(words).toContain('Knife middle of slot; slot 1.50, blade');
    expect(words.some((text) => /^Holes A-B \d+\.\d, B-C \d+\.\d, A-C \d+\.\d mm$/.test(text))).toBe(true);
  });
});

test('the scale square and the way between holes are those of the stretched template', () => {
  const set = made({ stretch: [1.004, 0.998] });
  const text = new TextDecoder().decode(templateDrawing({ set, number: 1, planHash: '0', unit: 'mm' }));
  expect(text).toMatch(/size to part: x 1\.00400, y\s[\s\S]*0\.99800/);
  const scale = parseString(text).entities.find(({ layer }) => layer === 'SCALE');
  const [xs, ys] = [(scale?.vertices ?? []).map(({ x }) => x), (scale?.vertices ?? []).map(({ y }) => y)];
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(50.2, 6);
  expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(49.9, 6);
});

describe('as a run writes them', () => {
  test('a template and its pages are written when they are chosen, with the plan’s hash', {
    tags: ['long'],
  }, async () => {
    const { names, bytesOf } = await planned();
    expect(names).toEqual(['plan.json', 'scribe.dxf', 'template-01.dxf', 'template.pdf']);
    const hash = createHash('sha256')
      .update(bytesOf('plan.json') ?? '')
      .digest('hex');
    const short = [0, 4, 8].map((at) => hash.slice(at, at + 4)).join(' ');
    expect(new TextDecoder().decode(bytesOf('template-01.dxf'))).toContain(short);
    const [map, ...tiles] = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
    expect(map?.text).toContain(hash);
    for (const { text } of tiles) {
      expect(text).toContain(`plan ${hash}`);
      expect(text).toContain('2026-05-31');
    }
    for (const name of ['template-01.dxf', 'template.pdf']) expect(cutFiles()).toContain(name);
  });

  test('webs of 12 mm give two templates, each with its file', { tags: ['long'] }, async () => {
    const { names, findings } = await planned({ web: 12 });
    expect(names.slice(2)).toEqual(['template-01.dxf', 'template-02.dxf', 'template.pdf']);
    expect(findings.map(({ code }) => code)).toContain('template-in-several');
  });

  test('lengths are in the job’s unit, holes in the drawing’s', { tags: ['long'] }, async () => {
    const { findings, names } = await planned({ knife: { width: 7 } });
    expect(findings.map(({ code }) => code)).toContain('template-knife-too-wide');
    expect(names).toEqual(['plan.json', 'scribe.dxf']);
    const { bytesOf } = await planned({ holes: { diameter: 8, at: [[10, 150]] } });
    const read = parseString(new TextDecoder().decode(bytesOf('template-01.dxf')));
    // The hole given stands first; pins beside the part let the template fit one way only.
    const [hole, ...others] = read.entities.filter(({ layer }) => layer === 'HOLES');
    expect(others.length).toBeGreaterThan(1);
    const xs = (hole?.vertices ?? []).map(({ x }) => x).sort((a, b) => a - b);
    expect(xs[0]).toBeCloseTo(6, 6);
    expect(xs[1]).toBeCloseTo(14, 6);
  });

  test('a stretch that would make another part is refused, with its place in the job', async () => {
    const { findings, names } = await planned({ stretch: [2, 1] });
    expect(findings).toMatchObject([
      { code: 'job-value-wrong', place: { path: 'handoff.template.stretch[0]' } },
    ]);
    expect(names).toEqual([]);
  });

  test('same job, same bytes', { tags: ['long'] }, async () => {
    const [first, second] = [await planned({ web: 12 }), await planned({ web: 12 })];
    for (const name of ['template-01.dxf', 'template-02.dxf', 'template.pdf']) {
      const [a, b] = [first.bytesOf(name), second.bytesOf(name)];
      expect(a?.length).toBeGreaterThan(1000);
      expect(Buffer.compare(a ?? new Uint8Array(), b ?? new Uint8Array(1))).toBe(0);
    }
  });
});

describe('template.pdf', () => {
  test('shows every end of every slot at 1 : 1, on some page, where the tile states', {
    tags: ['long'],
  }, async () => {
    const { plan, bytesOf } = await planned();
    const { set } = templateOf(plan ?? handMadePlan);
    const [, ...pages] = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
    const { grid, tiles } = tilesOfCover(plan);
    expect(pages).toHaveLength(tiles.length);
    expect(tiles.length).toBeGreaterThan(1);
    const ends = (set?.templates[0] ?? []).flatMap(({ outline }) => outline.flat().map(({ start }) => start));
    expect(ends.length).toBeGreaterThan(50);
    for (const { x, y } of ends) {
      const shown = tiles.flatMap(({ box }, index) =>
        x > box.minX && x < box.maxX && y > box.minY && y < box.maxY
          ? [hasPlace(itemAt(pages, index), x - box.minX + grid.window.minX, y - box.minY + grid.window.minY)]
          : [],
      );
      expect(shown.length).toBeGreaterThan(0);
      expect(shown.every(Boolean)).toBe(true);
    }
  });

  test('prints each registration mark between two tiles on both, at one place of the template', {
    tags: ['long'],
  }, async () => {
    const { bytesOf, plan } = await planned();
    const [, ...pages] = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
    const { tiles, grid } = tilesOfCover(plan);
    const counts = new Map<string, number>();
    tiles.forEach(({ marks, box }, index) => {
      expect(marks).toHaveLength(4);
      for (const { x, y } of marks) {
        const [px, py] = [x - box.minX + grid.window.minX, y - box.minY + grid.window.minY];
        for (const [dx, dy] of [
          [-4, 0],
          [4, 0],
          [0, -4],
          [0, 4],
        ] as const) {
          expect(hasPlace(itemAt(pages, index), px + dx, py + dy)).toBe(true);
        }
        const name = `${x.toFixed(6)} ${y.toFixed(6)}`;
        counts.set(name, (counts.get(name) ?? 0) + 1);
      }
    });
    // A mark between two printed tiles is on both: each tile has four, and those inside are shared.
    expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBe(4 * tiles.length);
    expect(counts.size).toBeLessThan(4 * tiles.length);
  });

  test('has bars of 100 mm both ways on every page, and one page where the paper is large enough', {
    tags: ['long'],
  }, async () => {
    const { bytesOf } = await planned({ paper: 'a2' });
    const [, ...pages] = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
    expect(pages).toHaveLength(1);
    const page = itemAt(pages, 0);
    expect([page.width, page.height].map(Math.round).sort()).toEqual([420, 594]);
    const isBar = (dx: number, dy: number) =>
      page.places.some(([x, y]) => x < 20 && y < 40 && hasPlace(page, x + dx, y + dy));
    expect(isBar(100, 0)).toBe(true);
    expect(isBar(0, 100)).toBe(true);
  });
});

test('no word is cut by a tile, lies over a slot or off the sheet, and each is on a page; blank tiles are not printed', {
  tags: ['long'],
}, async () => {
  const { plan, bytesOf } = await planned();
  const { set, grid, tiles } = tilesOfCover(plan);
  const pages = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
  expect(tiles.length).toBeLessThanOrEqual(grid.columns * grid.rows);
  const { window } = grid;
  const words = pages.slice(1).flatMap(({ words: on }) => on.filter(({ y }) => y > window.minY));
  for (const { x, y, width } of words.filter(({ text }) => !text.includes('100 mm'))) {
    expect(x).toBeGreaterThanOrEqual(window.minX);
    expect(x + width).toBeLessThanOrEqual(window.maxX);
    expect(y).toBeLessThanOrEqual(window.maxY);
  }
  const text = words.map((word) => word.text).join('\n');
  for (const said of [
    'Gauge-pod cover',
    'THIS SIDE UP',
    'Offsets made for factor 1.00',
    'R02 peel 1',
    'R07 peel 2',
  ]) {
    expect(text).toContain(said);
  }
  expect(labelFaults(set)).toEqual([]);
});

test.each(['roll-914', 'one-sheet'] as const)(
  'on %s a template is one page, as large as it must be',
  { tags: ['long'] },
  async (paper) => {
    const { bytesOf } = await planned({ paper });
    const [, page, ...others] = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
    expect(others).toEqual([]);
    expect(page?.width === undefined ? 0 : Math.round(page.width)).toBeGreaterThanOrEqual(
      paper === 'roll-914' ? 300 : 290,
    );
    if (paper === 'roll-914')
      expect([page?.width, page?.height].map((side) => Math.round(side ?? 0))).toContain(914);
  },
);

/** As the gauge-pod cover's template is laid on A4. */
function tilesOfCover(plan: EtchPlan | undefined) {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const { job: resolved } = resolveJob({ ...job, handoff: { date: '2026-05-31' } }, 'mm');
  if (resolved === undefined || plan === undefined) throw new Error('the cover has a plan');
  const choices = resolveHandoff({ ...job, handoff: { date: '2026-05-31' } }, 'mm');
  const { set } = makeTemplates({
    name: resolved.name,
    plan,
    choices: choices.template,
    label: labelWords({ job: resolved, plan }, choices, paperFigures('job', 'mm')),
    overrun: choices.overrun,
  });
  if (set === undefined) throw new Error('the cover has a template');
  return { set, ...templateTiles(set, 1) };
}

/** To a micrometre and a half: PDF numbers have few digits. */
function hasPlace({ places }: ReadPage, x: number, y: number): boolean {
  return places.some(([a, b]) => Math.hypot(a - x, b - y) < 1.5e-3);
}

test('a long name leaves room for the count of templates and the tile', { tags: ['long'] }, async () => {
  const name = 'Lower skin of the survey glider, second article '.repeat(4).trim();
  const { bytesOf } = await planned({}, { name });
  const pages = await readPdf(bytesOf('template.pdf') ?? new Uint8Array());
  for (const { words, text } of pages.slice(1)) {
    const tile = words.find((word) => /^tile [A-Z]+\d/.test(word.text));
    const left = words.filter((word) => word !== tile && Math.abs(word.y - (tile?.y ?? 0)) < 0.1);
    expect(left.length).toBeGreaterThan(0);
    for (const { x, width } of left) expect(x + width).toBeLessThan(tile?.x ?? 0);
    expect(text).toContain('template 1 of 1');
  }
});
