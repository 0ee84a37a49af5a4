/**
 * The pen on PDF. Nothing is compressed and the date is the job's, so the same sheet is the same bytes in Node, worker and page.
 * Arcs are drawn as cubics that leave them by a tenth of a micrometre at most.
 */

import { assert } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type ArcSpan, type Path, pointAlong, tangentAlong } from '#geometry/span.ts';
import { CUBIC_FIT } from '#geometry/tolerances.ts';
import { root } from '#maths/root.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';
import { withPlainDirectory } from './font-directory.ts';
import { loadFonts } from './load-fonts.ts';
import type { PageBox, Pen, Stroke, TextStyle } from './pen.ts';

type Document = import('pdfkit').default;

export interface PdfPen extends Pen {
  /** Bytes of the file; the pen is done then. */
  finish(): Promise<Uint8Array>;
}

/** PostScript points in a millimetre (ISO 32000-1, 8.3.2.3: a unit is 1/72 inch). */
const POINTS = 72 / 25.4;
/** What a cubic over a right angle misses, of the radius; over a smaller turn it is less by the sixth power. */
const QUARTER_MISS = 2.73e-4;

export interface PdfPenOptions {
  readonly title: string;
  /** `2026-05-31`; without one the file carries the first day of 2000, never the clock's. */
  readonly date?: string | undefined;
}

export async function makePdfPen({ title, date }: PdfPenOptions): Promise<PdfPen> {
  const [{ default: PDFDocument }, fonts] = await Promise.all([import('pdfkit'), loadFonts()]);
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    font: null,
    info: { Title: title, Creator: 'Isobath', Producer: 'Isobath', CreationDate: dayOf(date) },
  });
  const chunks: Uint8Array[] = [];
  const whole = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('end', () => resolve(joined(chunks)));
    document.on('error', reject);
  });
  for (const name of ['plain', 'bold'] as const) openFont(document, name, fonts[name]);
  return penOn(document, whole);
}

function dayOf(date: string | undefined) {
  const [year = 2000, month = 1, day = 1] = (date ?? '').split('-').filter(Boolean).map(Number);
  // biome-ignore lint/style/noRestrictedGlobals: a day of the calendar in universal time, not the clock's.
  return new Date(Date.UTC(year, month - 1, day));
}

function openFont(document: Document, name: string, bytes: Uint8Array): void {
  document.registerFont(name, bytes).font(name);
  const { subset } = document._font;
  const encode = subset.encode.bind(subset);
  subset.encode = () => withPlainDirectory(encode());
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

interface Sheet {
  readonly document: Document;
  /** Of the page in hand, mm. */
  height: number | undefined;
}

function penOn(document: Document, whole: Promise<Uint8Array>): PdfPen {
  const sheet: Sheet = { document, height: undefined };
  return {
    page: ({ width, height }) => {
      document.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      document.lineJoin('round');
      sheet.height = height;
    },
    line: (from, to, stroke) => {
      document.moveTo(...onPage(sheet, from)).lineTo(...onPage(sheet, to));
      strokeNow(document, stroke);
    },
    paths: (paths, how) =>
      drawn(document, how, () => {
        for (const path of paths) trace(sheet, path);
      }),
    rectangle: (box, how) => drawn(document, how, () => document.rect(...boxOnPage(sheet, box))),
    text: (text, at, style) => write(sheet, text, at, style),
    textWidth: (text, style) => {
      setType(document, style);
      return document.widthOfString(drawable(document, text)) / POINTS;
    },
    within: (box, draw) => {
      document.save();
      document.rect(...boxOnPage(sheet, box)).clip();
      draw();
      document.restore();
    },
    finish: () => {
      document.end();
      return whole;
    },
  };
}

function onPage({ height }: Sheet, { x, y }: Point): [number, number] {
  assert(height !== undefined, 'a page has been started');
  return [x * POINTS, (height - y) * POINTS];
}

function boxOnPage(sheet: Sheet, { minX, minY, maxX, maxY }: PageBox): [number, number, number, number] {
  const [left, top] = onPage(sheet, { x: minX, y: maxY });
  return [left, top, (maxX - minX) * POINTS, (maxY - minY) * POINTS];
}

/** Fills, then strokes; a path is used up by either, so it is traced for each. */
function drawn(
  document: Document,
  { stroke, fill }: { readonly stroke?: Stroke; readonly fill?: string },
  traceAll: () => void,
): void {
  if (fill !== undefined) {
    traceAll();
    document.fillColor(fill).fill('even-odd');
  }
  if (stroke !== undefined) {
    traceAll();
    strokeNow(document, stroke);
  }
}

function strokeNow(document: Document, { width, color, dash }: Stroke): void {
  document.lineWidth(width * POINTS).strokeColor(color);
  if (dash === undefined) document.undash();
  else document.dash(dash[0] * POINTS, { space: dash[1] * POINTS });
  document.stroke();
}

function trace(sheet: Sheet, { spans, closed }: Path): void {
  const { document } = sheet;
  const first = spans[0];
  if (first === undefined) return;
  document.moveTo(...onPage(sheet, first.start));
  for (const span of spans) {
    if (span.kind === 'line') document.lineTo(...onPage(sheet, span.end));
    else traceArc(sheet, span);
  }
  if (closed) document.closePath();
}

/** Handles of 4/3 · tan(turn / 4) · radius, along the tangents: the usual cubic through an arc's ends and middle. */
function traceArc(sheet: Sheet, arc: ArcSpan): void {
  const quarters = Math.min(1, root(Math.sqrt(CUBIC_FIT / (QUARTER_MISS * arc.radius)), 3));
  const count = Math.max(1, Math.ceil(Math.abs(arc.sweep) / ((quarters * Math.PI) / 2)));
  const handle = (4 / 3) * tan(Math.abs(arc.sweep) / count / 4) * arc.radius;
  for (let i = 0; i < count; i++) {
    const [from, to] = [i / count, (i + 1) / count];
    const [start, end] = [pointAlong(arc, from), i + 1 === count ? arc.end : pointAlong(arc, to)];
    const [leaving, coming] = [tangentAlong(arc, from), tangentAlong(arc, to)];
    sheet.document.bezierCurveTo(
      ...onPage(sheet, { x: start.x + leaving.x * handle, y: start.y + leaving.y * handle }),
      ...onPage(sheet, { x: end.x - coming.x * handle, y: end.y - coming.y * handle }),
      ...onPage(sheet, end),
    );
  }
}

function setType(document: Document, { size, isBold }: Pick<TextStyle, 'size' | 'isBold'>): void {
  document.font(isBold === true ? 'bold' : 'plain').fontSize(size * POINTS);
}

function write(sheet: Sheet, text: string, at: Point, style: TextStyle): void {
  const { document } = sheet;
  if (text === '') return;
  setType(document, style);
  const letters = drawable(document, text);
  const share = { left: 0, middle: 0.5, right: 1 }[style.align ?? 'left'];
  const [x, y] = onPage(sheet, at);
  const left = x - (share === 0 ? 0 : document.widthOfString(letters) * share);
  document.save();
  if (style.turn !== undefined) turnAbout(document, [x, y], style.turn);
  document.fillColor(style.color ?? '#000000');
  document.text(letters, left, y, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}

/** Not by pdfkit's own `rotate`: engines differ in its sine and cosine. Counter-clockwise, on a page whose y points down. */
function turnAbout(document: Document, [x, y]: readonly [number, number], turn: number): void {
  const [c, s] = [cos(turn), sin(turn)];
  document.transform(c, -s, s, c, x - x * c - y * s, y + x * s - y * c);
}

/** Letters that the font lacks as empty squares of its own: pdfkit draws what it has no letter for twice as wide as it calculates. */
function drawable(document: Document, text: string): string {
  const { font } = document._font;
  return Array.from(text, (letter) =>
    font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0) ? letter : '□',
  ).join('');
}
