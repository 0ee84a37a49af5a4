/** The drawings of the samples, made again: parts of scenarios of our own, each drawn the way such drawings come. */
import type { Point } from '#geometry/point.ts';
import {
  arc,
  circle,
  type DxfEntity,
  dxfText,
  hatch,
  insert,
  line,
  outline,
  roundedPolygon,
  roundedRectangle,
  spline,
  text,
} from './dxf-text.ts';
import { currentMeterCover, radiatorPanel } from './two-faced-samples.ts';

const MILLIMETRES = 4;
const INCHES = 1;

/** DXF text by the sample's name. */
export function sampleDrawings(): ReadonlyMap<string, string> {
  return new Map([
    ['gauge-pod-cover', gaugePodCover()],
    ['shutter-bay-grid', shutterBayGrid()],
    ['glider-wing-skin', gliderWingSkin()],
    ['hatch-from-supplier', hatchFromSupplier()],
    ['current-meter-cover', currentMeterCover()],
    ['radiator-panel', radiatorPanel()],
  ]);
}

/** A cover, 240 × 160 mm, for the gauge pod of a weather-balloon gondola: three depths, one in another, and a boss left standing. */
function gaugePodCover(): string {
  const holes = [
    [12, 12],
    [228, 12],
    [228, 148],
    [12, 148],
  ].map(([x = 0, y = 0]) => circle('TRIM', { x, y }, 3));
  return dxfText({
    insunits: MILLIMETRES,
    layers: [
      { name: '0', color: 7 },
      { name: 'TRIM', color: 7 },
      { name: 'POCKETS', color: 3 },
      { name: 'WELLS', color: 4 },
      { name: 'SUMPS', color: 5 },
      { name: 'BOSSES', color: 8 },
      { name: 'NOTES', color: 9 },
    ],
    entities: [
      outline('TRIM', roundedRectangle({ x: 0, y: 0, width: 240, height: 160 }, 10)),
      ...holes,
      outline('POCKETS', roundedRectangle({ x: 24, y: 20, width: 136, height: 120 }, 10)),
      outline('WELLS', roundedRectangle({ x: 34, y: 32, width: 76, height: 96 }, 8)),
      outline('SUMPS', roundedRectangle({ x: 48, y: 62, width: 46, height: 40 }, 6)),
      circle('BOSSES', { x: 134, y: 80 }, 11),
      outline('WELLS', roundedRectangle({ x: 176, y: 24, width: 44, height: 50 }, 8)),
      outline('WELLS', roundedRectangle({ x: 176, y: 88, width: 44, height: 48 }, 8)),
      text('NOTES', { x: 24, y: 146 }, 'GAUGE-POD COVER, WEATHER-BALLOON GONDOLA'),
      text('NOTES', { x: 24, y: 8 }, 'SHEET 2024-T3, 4.06; EDGES ON THE SHALLOWER FLOOR', 4),
      text('NOTES', { x: 127, y: 78 }, 'BOSS', 3),
    ],
  });
}

/**
 * An observatory-shutter panel, 36 × 24 in, drawn in inches as plain lines: neighbouring bays share them, those of the
 * middle row end on the rails in T joints, and one stile runs through all three rows.
 */
function shutterBayGrid(): string {
  const rails = [2, 8.5, 15.5, 22];
  const bays = (from: Point, to: Point) => line('BAYS', from, to);
  const rail = rails.map((y) => bays({ x: 2, y }, { x: 34, y }));
  const stile = (x: number, row: number) => bays({ x, y: rails[row] ?? 0 }, { x, y: rails[row + 1] ?? 0 });
  const corners = [
    { x: 0, y: 0 },
    { x: 36, y: 0 },
    { x: 36, y: 24 },
    { x: 0, y: 24 },
  ];
  return dxfText({
    insunits: INCHES,
    layers: [
      { name: '0', color: 7 },
      { name: 'TRIM', color: 7 },
      { name: 'BAYS', color: 3 },
      { name: 'NOTES', color: 9 },
    ],
    entities: [
      ...corners.map((corner, index) => line('TRIM', corner, corners[(index + 1) % 4] ?? corner)),
      ...rail,
      bays({ x: 2, y: 2 }, { x: 2, y: 22 }),
      bays({ x: 34, y: 22 }, { x: 34, y: 2 }),
      bays({ x: 18, y: 2 }, { x: 18, y: 22 }),
      ...[10, 26].map((x) => stile(x, 0)),
      ...[7.5, 12.5, 23.5, 28.5].map((x) => stile(x, 1)),
      ...[10, 26].map((x) => stile(x, 2)),
      text('NOTES', { x: 2, y: 22.6 }, 'SHUTTER PANEL, BAY GRID', 0.4),
      text('NOTES', { x: 2, y: 0.8 }, 'ALL DIMENSIONS IN INCHES', 0.3),
    ],
  });
}

export const SKIN_STATIONS = 12;

/** Where bay `row` (0 aft, 1 fore) of a station of the glider skin has its corners, mm. */
function skinBay(station: number, row: 0 | 1): Point[] {
  const left = 30 + station * 145;
  const right = left + 125;
  const low = (x: number) => (row === 0 ? skinAft(x) + 25 : skinMiddle(x) + 8);
  const high = (x: number) => (row === 0 ? skinMiddle(x) - 8 : skinFore(x) - 25);
  return [
    { x: left, y: low(left) },
    { x: right, y: low(right) },
    { x: right, y: high(right) },
    { x: left, y: high(left) },
  ];
}

const SKIN_LENGTH = 1800;

/** The edges of the skin and the spar between its bays, root at x = 0: chord 420 mm there, 190 mm at the tip. */
function skinAft(x: number): number {
  return (80 * x) / SKIN_LENGTH;
}

function skinFore(x: number): number {
  return 420 - (150 * x) / SKIN_LENGTH;
}

function skinMiddle(x: number): number {
  return (skinAft(x) + skinFore(x)) / 2;
}

/** The wing skin of a survey glider: two rows of twelve bays, a layer for each station. */
function gliderWingSkin(): string {
  const stations = Array.from({ length: SKIN_STATIONS }, (_, index) => index);
  const layerOf = (station: number) => `STATION-${String(station + 1).padStart(2, '0')}`;
  const edge = [
    { x: 0, y: skinAft(0) },
    { x: SKIN_LENGTH, y: skinAft(SKIN_LENGTH) },
    { x: SKIN_LENGTH, y: skinFore(SKIN_LENGTH) },
    { x: 0, y: skinFore(0) },
  ];
  return dxfText({
    insunits: MILLIMETRES,
    layers: [
      { name: '0', color: 7 },
      { name: 'TRIM', color: 7 },
      ...stations.map((station) => ({ name: layerOf(station), color: 1 + (station % 6) })),
      { name: 'NOTES', color: 9 },
    ],
    entities: [
      outline('TRIM', edge),
      ...stations.flatMap((station) => [
        outline(layerOf(station), roundedPolygon(skinBay(station, 0), 12)),
        outline(layerOf(station), roundedPolygon(skinBay(station, 1), 12)),
      ]),
      text('NOTES', { x: 40, y: 404 }, 'LOWER WING SKIN, SURVEY GLIDER, ROOT THIS SIDE', 10),
    ],
  });
}

/**
 * The deck hatch of a solar boat, 620 × 420 mm, as a supplier sent it: no unit, gaps of a few hundredths, lines drawn twice,
 * stubs, blocks turned and mirrored, an edge as a spline, a hatching, an old issue on a frozen layer, a title in paper space.
 */
function hatchFromSupplier(): string {
  return dxfText({
    layers: [
      { name: '0', color: 7 },
      { name: 'panel edge', color: 7 },
      { name: 'pocket 1.8', color: 3 },
      { name: 'pocket 2.6', color: 5 },
      { name: 'old issue', color: 1, frozen: true },
      { name: 'construction', color: 8, off: true },
      { name: 'text', color: 9 },
    ],
    blocks: {
      'grip pocket': [outline('0', roundedRectangle({ x: 0, y: 0, width: 90, height: 50 }, 8))],
    },
    entities: [
      ...gappyEdge(),
      ...doubledPocket(),
      ...wavyPocket(),
      insert('pocket 2.6', 'grip pocket', { place: { x: 60, y: 300 }, turnDeg: 0, mirrored: false }),
      insert('pocket 2.6', 'grip pocket', { place: { x: 560, y: 300 }, turnDeg: 0, mirrored: true }),
      insert('pocket 2.6', 'grip pocket', { place: { x: 340, y: 280 }, turnDeg: 90, mirrored: false }),
      hatch('pocket 2.6', [
        { x: 70, y: 310 },
        { x: 140, y: 310 },
        { x: 140, y: 340 },
        { x: 70, y: 340 },
      ]),
      outline('old issue', roundedRectangle({ x: 50, y: 40, width: 260, height: 180 }, 5)),
      line('construction', { x: 0, y: 210 }, { x: 620, y: 210 }),
      text('text', { x: 60, y: 385 }, 'DECK HATCH, SOLAR BOAT', 8),
      text('text', { x: 60, y: 20 }, 'sheet 3 mm', 6),
      { ...outline('0', roundedRectangle({ x: 0, y: 0, width: 297, height: 210 }, 2)), inPaperSpace: true },
      { ...text('0', { x: 200, y: 10 }, 'DECK HATCH   ISSUE C', 4), inPaperSpace: true },
    ],
  });
}

/** Four lines and four arcs whose ends miss one another by 0.02 to 0.04 mm. */
function gappyEdge(): DxfEntity[] {
  const layer = 'panel edge';
  const radius = 25;
  return [
    line(layer, { x: 25, y: 0 }, { x: 594.97, y: 0 }),
    arc(layer, { center: { x: 595, y: 25 }, radius, fromDeg: 270, toDeg: 360 }),
    line(layer, { x: 620, y: 25.02 }, { x: 620, y: 395 }),
    arc(layer, { center: { x: 595, y: 395 }, radius, fromDeg: 0, toDeg: 90 }),
    line(layer, { x: 594.96, y: 420 }, { x: 25, y: 420 }),
    arc(layer, { center: { x: 25, y: 395 }, radius, fromDeg: 90, toDeg: 180 }),
    line(layer, { x: 0, y: 394.98 }, { x: 0, y: 25.04 }),
    arc(layer, { center: { x: 25, y: 25 }, radius, fromDeg: 180, toDeg: 270 }),
  ];
}

/** A pocket of loose lines: gaps at two corners, one side drawn twice, another in part again, a stub, a line of no length. */
function doubledPocket(): DxfEntity[] {
  const layer = 'pocket 1.8';
  return [
    line(layer, { x: 60, y: 50 }, { x: 299.97, y: 50 }),
    line(layer, { x: 300, y: 50 }, { x: 300, y: 230 }),
    line(layer, { x: 300, y: 230 }, { x: 300, y: 50 }),
    line(layer, { x: 300, y: 230.03 }, { x: 60, y: 230 }),
    line(layer, { x: 220, y: 50 }, { x: 120, y: 50 }),
    line(layer, { x: 60, y: 230 }, { x: 60, y: 50 }),
    line(layer, { x: 180, y: 230 }, { x: 180, y: 218 }),
    line(layer, { x: 150, y: 140 }, { x: 150, y: 140 }),
    line(layer, { x: 330, y: 30 }, { x: 345, y: 36 }),
    circle('pocket 2.6', { x: 120, y: 140 }, 28),
    circle('pocket 2.6', { x: 120, y: 140 }, 28),
  ];
}

/** A pocket whose upper edge follows the deck line as a spline. */
function wavyPocket(): DxfEntity[] {
  const layer = 'pocket 1.8';
  return [
    line(layer, { x: 360, y: 50 }, { x: 560, y: 50 }),
    line(layer, { x: 560, y: 50 }, { x: 560, y: 200 }),
    spline(layer, [
      { x: 560, y: 200.02 },
      { x: 520, y: 235 },
      { x: 480, y: 250 },
      { x: 420, y: 215 },
      { x: 385, y: 225 },
      { x: 360, y: 180 },
    ]),
    line(layer, { x: 360.02, y: 180 }, { x: 360, y: 50 }),
  ];
}
