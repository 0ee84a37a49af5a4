/**
 * Writes outlines and notes as an ASCII DXF for old readers, AC1009 (release 12): POLYLINE with its VERTEX entities and bulges,
 * no handles, no objects. That release knows no unit and no letter past ASCII: the notes must say the unit, and other letters
 * become the nearest that ASCII has, or question marks. Source: DXF reference, release 12, from memory; checked with two independent readers.
 */
import { asciiOnly } from './ascii-text.ts';
import type { DrawingOut, LayerOut, NoteOut, OutlineOut } from './drawing-out.ts';
import {
  asciiBytes,
  PLAIN_TEXT,
  SECTION_END,
  section,
  sectionHead,
  type Tag,
  tagsText,
  tagText,
} from './dxf-tags.ts';
import { fixedPoint } from './fixed-point.ts';
import { boxOfOutlines } from './outlines-box.ts';
import { BULGE_DECIMALS, coordinateDecimals } from './write-drawing.ts';

/** The whole file. Layer names and coordinates must be legal: that is the caller's promise. */
export function writeOldDrawing({ unit, layers, outlines, notes }: DrawingOut): Uint8Array {
  const number = fixedPoint(coordinateDecimals(unit));
  const at = (x: number, y: number): Tag[] => [
    [10, number(x)],
    [20, number(y)],
    [30, number(0)],
  ];
  const box = boxOfOutlines(outlines);
  const isEmpty = box.minX > box.maxX;
  const head = [
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$INSBASE'],
      ...at(0, 0),
      [9, '$EXTMIN'],
      ...at(isEmpty ? 0 : box.minX, isEmpty ? 0 : box.minY),
      [9, '$EXTMAX'],
      ...at(isEmpty ? 0 : box.maxX, isEmpty ? 0 : box.maxY),
    ]),
    ...section('TABLES', [
      ...table('LTYPE', [LINE_TYPE]),
      ...table('LAYER', [{ name: '0', color: 7, shown: true }, ...layers].map(layerTags)),
      ...table('STYLE', [TEXT_STYLE]),
    ]),
    ...sectionHead('ENTITIES'),
  ];
  return asciiBytes([
    tagsText(head),
    ...outlines.map((outline) => polylineText(outline, at, number)),
    ...notes.map((note) => tagsText(text(note, at, number))),
    tagsText([SECTION_END, [0, 'EOF']]),
  ]);
}

type At = (x: number, y: number) => Tag[];
type Figure = (value: number) => string;

function table(kind: string, records: readonly (readonly Tag[])[]): Tag[] {
  const bodies = records.flatMap((record): Tag[] => [[0, kind], ...record]);
  return [[0, 'TABLE'], [2, kind], [70, String(records.length)], ...bodies, [0, 'ENDTAB']];
}

const LINE_TYPE: readonly Tag[] = [
  [2, 'CONTINUOUS'],
  [70, '0'],
  [3, 'Solid line'],
  [72, '65'],
  [73, '0'],
  [40, '0.0'],
];

const TEXT_STYLE: readonly Tag[] = [[2, 'STANDARD'], ...PLAIN_TEXT];

/** A layer that is off has its colour number negative. */
function layerTags({ name, color, shown }: LayerOut): Tag[] {
  return [
    [2, name],
    [70, '0'],
    [62, String(shown ? color : -color)],
    [6, 'CONTINUOUS'],
  ];
}

const bulgeText = fixedPoint(BULGE_DECIMALS);

function polylineText({ layer, closed, vertices }: OutlineOut, at: At, number: Figure): string {
  const head = tagsText([[0, 'POLYLINE'], [8, layer], [66, '1'], ...at(0, 0), [70, closed ? '1' : '0']]);
  const vertex = tagText(0, 'VERTEX') + tagText(8, layer);
  const level = tagText(30, number(0));
  let body = '';
  for (const [x, y, bulge] of vertices) {
    body += vertex + tagText(10, number(x)) + tagText(20, number(y)) + level;
    if (bulge !== 0) body += tagText(42, bulgeText(bulge));
  }
  return head + body + tagText(0, 'SEQEND') + tagText(8, layer);
}

function text({ layer, at: [x, y], height, text: words }: NoteOut, at: At, number: Figure): Tag[] {
  return [[0, 'TEXT'], [8, layer], ...at(x, y), [40, number(height)], [1, asciiOnly(words)]];
}
