/** The pen on PDF, read back by pdf.js: an independent reader. */
import { expect, test } from 'vitest';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import { hatchLines } from '#handoff/pdf/hatch-lines.ts';
import { bytesOfDataUrl } from '#handoff/pdf/load-fonts.ts';
import { makePdfPen } from '#handoff/pdf/pdf-pen.ts';
import { PAPER } from '#handoff/pdf/pen.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

const BLACK = { width: 0.25, color: '#000000' };

async function sampleSheet(date?: string): Promise<Uint8Array> {
  const pen = await makePdfPen({ title: 'Pen sample', date });
  pen.page(PAPER.a4);
  pen.line({ x: 20, y: 30 }, { x: 120, y: 30 }, BLACK);
  const arc = arcSpan({ center: { x: 100, y: 150 }, radius: 60, from: 0, sweep: Math.PI });
  pen.paths([{ closed: true, spans: [arc, lineSpan(arc.end, arc.start)] }], {
    stroke: BLACK,
    fill: '#cccccc',
  });
  pen.text('φ ≤ 1.0 ± 0.05 mm² → Ø 4', { x: 20, y: 280 }, { size: 4 });
  pen.text('middle', { x: 105, y: 200 }, { size: 4, align: 'middle', turn: Math.PI / 2 });
  pen.page(PAPER.a3);
  return pen.finish();
}

test('paper comes out in its true size (ISO 216: A4 210 × 297, A3 297 × 420)', {
  tags: ['long'],
}, async () => {
  const sizes = (await readPdf(await sampleSheet())).map(({ width, height }) => [width, height]);
  expect(sizes[0]?.[0]).toBeCloseTo(210, 4);
  expect(sizes[0]?.[1]).toBeCloseTo(297, 4);
  expect(sizes[1]?.[0]).toBeCloseTo(297, 4);
  expect(sizes[1]?.[1]).toBeCloseTo(420, 4);
});

test('a line and an arc lie on paper where they were drawn, 1 : 1', async () => {
  const [page] = await readPdf(await sampleSheet());
  const places = page?.places ?? [];
  const holds = (x: number, y: number) => places.some(([a, b]) => Math.hypot(a - x, b - y) < 1e-4);
  expect(holds(20, 30) && holds(120, 30)).toBe(true);
  expect(holds(160, 150) && holds(40, 150)).toBe(true);
  const cubics = page?.cubics ?? [];
  expect(cubics.length).toBeGreaterThanOrEqual(2);
  for (const [a, b, c, d] of cubics) {
    for (let share = 0; share <= 1; share += 1 / 16) {
      const at = (axis: 0 | 1) => {
        const [p, q, r, s] = [a, b, c, d].map((point) => point?.[axis] ?? 0) as [
          number,
          number,
          number,
          number,
        ];
        const rest = 1 - share;
        return rest ** 3 * p + 3 * rest ** 2 * share * q + 3 * rest * share ** 2 * r + share ** 3 * s;
      };
      expect(Math.abs(Math.hypot(at(0) - 100, at(1) - 150) - 60)).toBeLessThan(2e-4);
    }
  }
});

test('signs of the trade come out as letters that can be searched', async () => {
  const [page] = await readPdf(await sampleSheet());
  expect(page?.text).toContain('φ ≤ 1.0 ± 0.05 mm² → Ø 4');
  const text = page?.words.find(({ text }) => text.startsWith('φ'));
  expect(text?.x).toBeCloseTo(20, 3);
  expect(text?.y).toBeCloseTo(280, 3);
});

test('the same sheet is the same bytes, and only the job’s date changes them', async () => {
  const [first, second, later] = [await sampleSheet(), await sampleSheet(), await sampleSheet('2026-05-31')];
  expect(Buffer.compare(first, second)).toBe(0);
  expect(Buffer.compare(first, later)).not.toBe(0);
  expect(Buffer.from(later).toString('latin1')).toContain('D:20260531000000Z');
});

test('hatching covers a ring with a hole by as much length as its area over the spacing', () => {
  const circle = (radius: number, sign: number) =>
    [0, 1].map((half) =>
      arcSpan({ center: { x: 7, y: 3 }, radius, from: half * Math.PI, sweep: sign * Math.PI }),
    );
  const hole = [...circle(8, 1)]
    .reverse()
    .map((span) => ({ ...span, start: span.end, end: span.start, sweep: -span.sweep }));
  const lines = hatchLines([circle(20, 1), hole], { spacing: 0.05, angle: 0.7 });
  const length = lines.reduce((sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.y - b.y), 0);
  const area = Math.PI * (20 ** 2 - 8 ** 2);
  expect(Math.abs(length * 0.05 - area) / area).toBeLessThan(0.002);
  for (const [a, b] of lines) {
    const middle = Math.hypot((a.x + b.x) / 2 - 7, (a.y + b.y) / 2 - 3);
    expect(middle).toBeLessThan(20.001);
    expect(Math.hypot(a.x - 7, a.y - 3)).toBeGreaterThan(7.98);
  }
});

test('base64 is read as RFC 4648 section 10 writes it', () => {
  for (const [plain, coded] of [
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foobar', 'Zm9vYmFy'],
  ]) {
    expect(Buffer.from(bytesOfDataUrl(`data:x;base64,${coded}`)).toString()).toBe(plain);
  }
});

test.each(['翼面外板 ✈ 翼面', 'Крыло', 'wing'])(
  '%s takes as much room as it is calculated with',
  async (name) => {
    const pen = await makePdfPen({ title: 'Pen sample' });
    pen.page(PAPER.a4);
    pen.text(name, { x: 20, y: 280 }, { size: 4 });
    const calculated = pen.textWidth(name, { size: 4 });
    const [page] = await readPdf(await pen.finish());
    const ends = (page?.words ?? []).map(({ x, width }) => x + width);
    expect(Math.max(...ends) - 20).toBeCloseTo(calculated, 1);
  },
);
