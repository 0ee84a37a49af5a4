/**
 * Inspection of a part that is etched on both faces: what the far face has to measure, in the form, which reads back, and on a sheet of that
 * face as it is seen.
 */
import { describe, expect, test } from 'vitest';
import { inspectionItems } from '#handoff/inspection/inspection-items.ts';
import { readReadings } from '#run/correct-readings.ts';
import { box, circle } from '#support/drawings/small-drawing.ts';
import { type ReadPage, readPdf } from '#support/handoff/read-pdf.ts';
import { runLid } from '#support/parts/two-faced-lid.ts';

/** Two pockets on the far face, 7 mm of land between them; on the near one a pocket before the one at the left. */
const PLATE = [
  box('TRIM', [10, 5], [210, 125]),
  box('POCKETS', [30, 25], [88, 97]),
  box('BACK', [26, 21], [91, 101]),
  box('BACK', [98, 31], [164, 113]),
  circle('ROUND', [188, 62], 11),
];
const requirements = [
  { layer: 'POCKETS', depth: 0.9, plus: 0.05, minus: 0.04 },
  { layer: 'ROUND', depth: 0.5, plus: 0.05, minus: 0.04 },
  { layer: 'BACK', depth: 1.3, plus: 0.06, minus: 0.03, face: 'far' },
];

const run = () => runLid({ requirements, handoff: { files: ['inspection'] } }, PLATE);

test('edges, lands and fillets of the far face are listed with that face, D1 being one edge of the part for both', async () => {
  const { plan, planFile } = await run();
  if (plan === undefined) throw new Error('it can be planned');
  const items = inspectionItems(plan, planFile?.lineBudgets ?? []);
  const ofFace = (side: 'far' | undefined) =>
    items
      .filter(({ face }) => face === side)
      .map(({ what, nominal }) => [what.replaceAll(/[RF]\d+/g, '…'), Number(nominal.toFixed(6))]);
  expect(ofFace('far')).toEqual([
    // Seen from behind, the edge that is nearest to D1 is the right one.
    ['D1 to right edge of …', 88],
    ['D2 to lower edge of …', 26],
    ['land between … and …', 7],
    ['fillet at the foot of …', 1.3],
  ]);
  expect(ofFace(undefined)).toContainEqual(['D1 to left edge of …', 20]);
  expect(ofFace(undefined)).toContainEqual(['D2 to lower edge of …', 20]);
  for (const { face, region } of items) expect(region).toMatch(face === 'far' ? /^F/ : /^R/);
});

describe('inspection-points.csv', () => {
  const rowsOf = async () => {
    const { files } = await run();
    const text = new TextDecoder().decode(files.find(({ name }) => name === 'inspection-points.csv')?.bytes);
    const [header = '', ...rows] = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
    const names = header.split(',');
    const cells = rows.map((row) =>
      Object.fromEntries(row.split(',').map((cell, index) => [names[index] ?? 'note', cell])),
    );
    return { text, names, cells };
  };

  test('has a column for the face, before the region, and rows of both', async () => {
    const { names, cells } = await rowsOf();
    expect(names.indexOf('face')).toBe(names.indexOf('region') - 1);
    for (const { face, region = '' } of cells) expect(face).toBe(region.startsWith('F') ? 'far' : 'near');
    const kinds = (side: string) =>
      new Set(cells.filter(({ face }) => face === side).map(({ kind }) => kind));
    expect(kinds('far')).toEqual(new Set(['thickness', 'edge', 'land', 'fillet']));
    expect(kinds('near')).toEqual(new Set(['thickness', 'edge', 'fillet']));
  });

  test('where both faces are etched the thickness is what both leave, off by what both may be off', async () => {
    const { cells } = await rowsOf();
    const floors = cells.filter(
      ({ kind, note = '' }) => kind === 'thickness' && note.startsWith('depth 0.9'),
    );
    expect(floors.length).toBeGreaterThan(0);
    for (const each of floors)
      expect([each['nominal'], each['plus'], each['minus'], each['least'], each['most']]).toEqual([
        '1.8',
        '0.07',
        '0.11',
        '1.690',
        '1.870',
      ]);
  });

  test('reads back as far as it is filled in, the face passed over', async () => {
    const { text } = await rowsOf();
    const rows = text.split('\n').map((line) => {
      const cells = line.split(',');
      if (cells[1] === 'thickness') cells[12] = '1.23';
      return cells.join(',');
    });
    const { rows: read, findings } = readReadings(rows.join('\n'));
    expect(findings).toEqual([]);
    expect(read.length).toBeGreaterThan(5);
    expect(read.some(({ region }) => region?.startsWith('F'))).toBe(true);
    for (const { thickness } of read) expect(thickness).toBe(1.23);
  });
});

test('the sheet has pages of either face; the far one is drawn as it is seen, and its numbers go on', {
  tags: ['long'],
}, async () => {
  const { files } = await run();
  const bytes = files.find(({ name }) => name === 'inspection-sheet.pdf')?.bytes ?? new Uint8Array();
  const pages = await readPdf(bytes);
  const [near, far] = pages;
  expect(pages).toHaveLength(2);
  expect(near?.text).toContain('Near face: thickness, edges, lands, fillets');
  expect(far?.text).toContain('Far face, seen from it: thickness, edges, lands, fillets');
  expect(near?.text).toMatch(/left edge of R/);
  expect(near?.text).not.toMatch(/ of F\d/);
  expect(far?.text).toMatch(/right edge of F/);
  expect(far?.text).not.toMatch(/ of R\d/);
  // D1 stands at the left of the near face, and at the right of the far one.
  const middle = (page: ReadPage | undefined) => (page?.width ?? 0) / 2;
  const datum = (page: ReadPage | undefined) => page?.words.find(({ text }) => text === 'D1')?.x;
  expect(datum(near)).toBeLessThan(middle(near));
  expect(datum(far)).toBeGreaterThan(middle(far));
  const numbers = (page: ReadPage | undefined) =>
    [...(page?.text ?? '').matchAll(/(\d+)\s+(?:Thickness|Edge|Land|Fillet)\s/g)].map(([, number]) =>
      Number(number),
    );
  const all = [...numbers(near), ...numbers(far)];
  expect(all).toEqual(all.map((_, index) => index + 1));
  expect(numbers(far).length).toBeGreaterThan(4);
});
