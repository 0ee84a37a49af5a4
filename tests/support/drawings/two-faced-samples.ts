/** The drawings of the samples that are etched on both faces. */
import { circle, dxfText, outline, roundedRectangle, text } from './dxf-text.ts';

const MILLIMETRES = 4;

/**
 * The cover of a research buoy's current meter, 180 × 120 mm, titanium of 3 mm: a window that both faces thin to a web of 0.8 mm, a
 * pocket for the board on the near face, and a groove for the seal on the far one, drawn as seen through.
 */
export function currentMeterCover(): string {
  const holes = [
    [10, 10],
    [170, 10],
    [170, 110],
    [10, 110],
  ].map(([x = 0, y = 0]) => circle('TRIM', { x, y }, 3.2));
  return dxfText({
    insunits: MILLIMETRES,
    layers: [
      { name: '0', color: 7 },
      { name: 'TRIM', color: 7 },
      { name: 'WINDOW', color: 4 },
      { name: 'BOARD', color: 3 },
      { name: 'SEAL GROOVE', color: 6 },
      { name: 'NOTES', color: 9 },
    ],
    entities: [
      outline('TRIM', roundedRectangle({ x: 0, y: 0, width: 180, height: 120 }, 12)),
      ...holes,
      outline('WINDOW', roundedRectangle({ x: 104, y: 34, width: 46, height: 52 }, 9)),
      outline('BOARD', roundedRectangle({ x: 36, y: 36, width: 54, height: 44 }, 7)),
      outline('SEAL GROOVE', roundedRectangle({ x: 18, y: 18, width: 144, height: 84 }, 14)),
      outline('SEAL GROOVE', roundedRectangle({ x: 24, y: 24, width: 132, height: 72 }, 8)),
      text('NOTES', { x: 22, y: 108 }, 'CURRENT-METER COVER, RESEARCH BUOY', 3.5),
      text('NOTES', { x: 22, y: 4 }, 'TI-6AL-4V, 3; SEAL GROOVE ON THE FAR FACE, SEEN THROUGH', 3),
    ],
  });
}

/**
 * A radiator panel of a weather-balloon gondola, 110 × 70 mm in its frame, steel of 0.5 mm, photochemically cut: fold lines etched
 * half through, vents cut through from both faces, and a channel round the panel that tabs bridge.
 */
export function radiatorPanel(): string {
  const box = (layer: string, x: number, y: number, width: number, height: number) =>
    outline(layer, [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ]);
  const vents = [0, 1, 2, 3, 4, 5].map((number) =>
    outline('VENTS', roundedRectangle({ x: 42 + 9 * number, y: 28, width: 4, height: 34 }, 1.9)),
  );
  return dxfText({
    insunits: MILLIMETRES,
    layers: [
      { name: '0', color: 7 },
      { name: 'FRAME', color: 7 },
      { name: 'CHANNEL', color: 1 },
      { name: 'PANEL', color: 5 },
      { name: 'VENTS', color: 4 },
      { name: 'FOLDS', color: 3 },
      { name: 'NOTES', color: 9 },
    ],
    entities: [
      box('FRAME', 0, 0, 134, 94),
      circle('FRAME', { x: 5, y: 5 }, 1.6),
      circle('FRAME', { x: 129, y: 5 }, 1.6),
      circle('FRAME', { x: 116, y: 89 }, 1.6),
      outline('CHANNEL', roundedRectangle({ x: 10.5, y: 10.5, width: 113, height: 73 }, 4.5)),
      outline('PANEL', roundedRectangle({ x: 12, y: 12, width: 110, height: 70 }, 3)),
      ...vents,
      box('FOLDS', 26, 15, 1.4, 64),
      box('FOLDS', 106.6, 15, 1.4, 64),
      text('NOTES', { x: 14, y: 86.5 }, 'RADIATOR PANEL, WEATHER-BALLOON GONDOLA', 2.5),
      text('NOTES', { x: 14, y: 3 }, '1.4310, 0.5; FOLDS FROM THE NEAR FACE', 2),
    ],
  });
}
