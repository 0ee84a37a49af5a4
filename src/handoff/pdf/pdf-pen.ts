/**
 * The pen on PDF. Nothing is compressed and the date is the job's, so the same sheet is the same bytes in Node, worker and page.
 */

import { assert } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { cos, sin } from '#maths/sine.ts';
import { withPlainDirectory } from './font-directory.ts';
import { loadFonts, type SheetFont, type SheetFonts } from './load-fonts.ts';
import { POINTS, pathText } from './path-text.ts';
import type { PageBox, Pen, Stroke, TextStyle } from './pen.ts';

type Document = import('pdfkit').default;

export interface PdfPen extends Pen {
  /** Bytes of the file; the pen is done then. */
  finish(): Promise<Uint8Array>;
}

export interface PdfPenOptions {
  readonly title: string;
  /** `2026-05-31`; without one the file carries the first day of 2000, never the clock's. */
  readonly date?: string | undefined;
  /** Those of other sheets; loaded where they are not given. */
  readonly fonts?: SheetFonts | undefined;
}

export async function makePdfPen({ title, date, fonts: given }: PdfPenOptions): Promise<PdfPen> {
  const [{ default: PDFDocument }, fonts] = await Promise.all([import('pdfkit'), given ?? loadFonts()]);
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
  return penOn(document, whole, gatherContent(document));
}

/**
 * Has operators put by until a page is done, and written all at once: pdfkit would make an array of bytes of each of them.
 * @returns what writes them, to be called before pdfkit leaves the page
 */
function gatherContent(document: Document): () => void {
  let operators: string[] = [];
  const addContent = document.addContent.bind(document);
  document.addContent = (more) => {
    operators.push(more);
    return document;
  };
  return () => {
    if (operators.length > 0) addContent(operators.join('\n'));
    operators = [];
  };
}

function dayOf(date: string | undefined) {
  const [year = 2000, month = 1, day = 1] = (date ?? '').split('-').filter(Boolean).map(Number);
  // biome-ignore lint/style/noRestrictedGlobals: a day of the calendar in universal time, not the clock's.
  return new Date(Date.UTC(year, month - 1, day));
}

function openFont(document: Document, name: string, { bytes, words }: SheetFont): void {
  document.registerFont(name, bytes).font(name);
  document._font.layoutCache = words;
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
  /** By size and weight, then by text: a table sets the same words again and again. */
  readonly set: Map<string, Map<string, SetText>>;
}

interface SetText {
  /** That are drawn. */
  readonly letters: string;
  /** Points. */
  readonly width: number;
}

function penOn(document: Document, whole: Promise<Uint8Array>, endPage: () => void): PdfPen {
  const sheet: Sheet = { document, height: undefined, set: new Map() };
  return {
    page: ({ width, height }) => {
      endPage();
      document.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
      document.lineJoin('round');
      sheet.height = height;
    },
    line: (from, to, stroke) => {
      document.moveTo(...onPage(sheet, from)).lineTo(...onPage(sheet, to));
      strokeNow(document, stroke);
    },
    paths: (paths, how) => {
      const text = pathText(paths, heightOf(sheet));
      drawn(document, how, () => {
        if (text !== '') document.addContent(text);
      });
    },
    rectangle: (box, how) => drawn(document, how, () => document.rect(...boxOnPage(sheet, box))),
    text: (text, at, style) => write(sheet, text, at, style),
    textWidth: (text, style) => setText(sheet, text, style).width / POINTS,
    within: (box, draw) => {
      document.save();
      document.rect(...boxOnPage(sheet, box)).clip();
      draw();
      document.restore();
    },
    finish: () => {
      endPage();
      document.end();
      return whole;
    },
  };
}

function heightOf({ height }: Sheet): number {
  assert(height !== undefined, 'a page has been started');
  return height;
}

function onPage(sheet: Sheet, { x, y }: Point): [number, number] {
  return [x * POINTS, (heightOf(sheet) - y) * POINTS];
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

function setType(document: Document, { size, isBold }: Pick<TextStyle, 'size' | 'isBold'>): void {
  document.font(isBold === true ? 'bold' : 'plain').fontSize(size * POINTS);
}

function setText({ document, set }: Sheet, text: string, type: Pick<TextStyle, 'size' | 'isBold'>): SetText {
  const key = `${type.size} ${type.isBold === true}`;
  const texts = set.get(key) ?? new Map<string, SetText>();
  set.set(key, texts);
  const known = texts.get(text);
  if (known !== undefined) return known;
  setType(document, type);
  const letters = drawable(document, text);
  const made = { letters, width: document.widthOfString(letters) };
  texts.set(text, made);
  return made;
}

function write(sheet: Sheet, text: string, at: Point, style: TextStyle): void {
  const { document } = sheet;
  if (text === '') return;
  const { letters, width } = setText(sheet, text, style);
  setType(document, style);
  const share = { left: 0, middle: 0.5, right: 1 }[style.align ?? 'left'];
  const [x, y] = onPage(sheet, at);
  const left = x - width * share;
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
