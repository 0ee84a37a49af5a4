/**
 * Writes outlines and notes as an ASCII DXF, AC1015: every table, dictionary, layout and handle that strict readers look
 * for, fixed-point numbers, CRLF. Coordinates are in the drawing's own unit. Source: DXF reference, release 2000.
 */
import { decadeOf, powerOfTen } from '#maths/decade.ts';
import { insunitsOf, type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { asciiText } from './ascii-text.ts';
import { frameSections } from './drawing-frame.ts';
import type { DrawingOut, NoteOut, OutlineOut } from './drawing-out.ts';
import {
  asciiBytes,
  HandleCount,
  SECTION_END,
  section,
  sectionHead,
  type Tag,
  tagsText,
  tagText,
} from './dxf-tags.ts';
import { fixedPoint } from './fixed-point.ts';
import { boxOfOutlines } from './outlines-box.ts';

/** On a chord of 10 m the last digit is worth 0.1 nm. */
export const BULGE_DECIMALS = 14;

/** Decimals that keep a coordinate within half a nanometre, whatever the unit: 6 for millimetres, 8 for inches. */
export function coordinateDecimals(unit: LengthUnit): number {
  const millimetres = millimetresIn(unit);
  const decade = decadeOf(millimetres);
  const digits = millimetres > powerOfTen(decade) ? decade + 1 : decade;
  return Math.min(15, Math.max(0, 6 + digits));
}

/** The whole file. Layer names and coordinates must be legal: that is the caller's promise. */
export function writeDrawing(drawing: DrawingOut): Uint8Array {
  const number = fixedPoint(coordinateDecimals(drawing.unit));
  const handles = new HandleCount();
  const frame = frameSections(drawing.layers, handles);
  const pen = { handles, owner: frame.modelSpace, number };
  // Before the header, which says from which handle on they are free.
  const entities = [
    ...drawing.outlines.map((outline) => outlineText(outline, pen)),
    ...drawing.notes.map((note) => noteText(note, pen)),
  ];
  return asciiBytes([
    tagsText([...headerSection(drawing, handles, number), ...frame.before, ...sectionHead('ENTITIES')]),
    ...entities,
    tagsText([SECTION_END, ...frame.after, [0, 'EOF']]),
  ]);
}

interface Pen {
  readonly handles: HandleCount;
  readonly owner: string;
  readonly number: (value: number) => string;
}

function headerSection(drawing: DrawingOut, handles: HandleCount, number: Pen['number']): Tag[] {
  const box = boxOfOutlines(drawing.outlines);
  const empty = box.minX > box.maxX;
  const at = (x: number, y: number): Tag[] => [
    [10, number(empty ? 0 : x)],
    [20, number(empty ? 0 : y)],
    [30, number(0)],
  ];
  const insunits = insunitsOf(drawing.unit);
  return section('HEADER', [
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$DWGCODEPAGE'],
    [3, 'ANSI_1252'],
    [9, '$INSBASE'],
    [10, number(0)],
    [20, number(0)],
    [30, number(0)],
    [9, '$EXTMIN'],
    ...at(box.minX, box.minY),
    [9, '$EXTMAX'],
    ...at(box.maxX, box.maxY),
    [9, '$HANDSEED'],
    [5, handles.seed()],
    [9, '$INSUNITS'],
    [70, String(insunits)],
    [9, '$MEASUREMENT'],
    [70, INCH_BASED.has(insunits) ? '0' : '1'],
  ]);
}

/** `$INSUNITS` of the units that derive from the inch: inch, foot, mile, microinch, thou, yard, and the four US survey units. */
const INCH_BASED: ReadonlySet<number> = new Set([1, 2, 3, 8, 9, 10, 21, 22, 23, 24]);

const bulgeText = fixedPoint(BULGE_DECIMALS);

function outlineText({ layer, closed, vertices }: OutlineOut, { handles, owner, number }: Pen): string {
  let text = tagsText([
    [0, 'LWPOLYLINE'],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, layer],
    [100, 'AcDbPolyline'],
    [90, String(vertices.length)],
    [70, closed ? '1' : '0'],
    [43, number(0)],
  ]);
  for (const [x, y, bulge] of vertices) {
    text += tagText(10, number(x)) + tagText(20, number(y));
    if (bulge !== 0) text += tagText(42, bulgeText(bulge));
  }
  return text;
}

function noteText(note: NoteOut, { handles, owner, number }: Pen): string {
  return tagsText([
    [0, 'TEXT'],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, note.layer],
    [100, 'AcDbText'],
    [10, number(note.at[0])],
    [20, number(note.at[1])],
    [30, number(0)],
    [40, number(note.height)],
    [1, asciiText(note.text)],
    [100, 'AcDbText'],
  ]);
}
