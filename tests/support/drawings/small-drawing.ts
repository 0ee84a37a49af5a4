/** Small parts drawn in a few tags, so that a test can spoil any of them; and a buoy's lid with a job about it. */
import { drawingText, entity, polyline } from './raw-drawing.ts';

export type Corner = readonly [x: number, y: number];

export interface SmallDrawing {
  /** `$INSUNITS`; none at all when undefined. */
  readonly insunits?: number | undefined;
  readonly entities: readonly string[];
}

export function dxf({ insunits, entities }: SmallDrawing): string {
  const header =
    insunits === undefined
      ? []
      : ([
          [9, '$INSUNITS'],
          [70, insunits],
        ] as const);
  return drawingText({ header, entities: entities.join('') });
}

export function outline(
  layer: string,
  corners: readonly (readonly [x: number, y: number, bulge?: number])[],
): string {
  return polyline(corners, 1, [8, layer]);
}

export function box(layer: string, [x, y]: Corner, [endX, endY]: Corner): string {
  return outline(layer, [
    [x, y],
    [endX, y],
    [endX, endY],
    [x, endY],
  ]);
}

export function line(layer: string, from: Corner, to: Corner): string {
  return entity('LINE', [8, layer], [10, from[0]], [20, from[1]], [11, to[0]], [21, to[1]]);
}

export function circle(layer: string, at: Corner, radius: number): string {
  return entity('CIRCLE', [8, layer], [10, at[0]], [20, at[1]], [40, radius]);
}

export function note(layer: string, at: Corner, text: string): string {
  return entity('TEXT', [8, layer], [10, at[0]], [20, at[1]], [40, 3], [1, text]);
}

/** A buoy's lid: a trimmed plate with a pocket, a deeper pocket nested in it, and a round one. */
export const buoyLid: readonly string[] = [
  box('TRIM', [0, 0], [200, 120]),
  box('POCKETS', [20, 20], [120, 100]),
  box('DEEP', [45, 40], [95, 80]),
  circle('ROUND', [160, 60], 25),
];

export const buoyLidDrawing = dxf({ insunits: 4, entities: buoyLid });

/** A job about it, as an object to be spoilt. */
export const buoyLidJob = {
  format: 'isobath-job',
  version: 1,
  name: 'Buoy lid',
  drawing: 'buoy-lid.dxf',
  units: 'mm',
  layers: { outline: ['TRIM'] },
  stock: { alloy: 'al-2024-t3', thickness: 4 },
  process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.0297 },
  requirements: [
    { layer: 'POCKETS', depth: 1.2 },
    { layer: 'DEEP', depth: 2.4 },
    { layer: 'ROUND', depth: 1.2 },
  ],
  levels: 'as-drawn',
} as const;

/** Depths as a draughtsman writes them: a depth, a final thickness, and one region of which two notes say different things. */
export const buoyLidNotes: readonly string[] = [
  note('WORDS', [25, 25], '2.20'),
  note('WORDS', [60, 60], 't 1.6'),
  note('WORDS', [150, 60], '1.2'),
  note('WORDS', [150, 52], '1.3 ±0.1'),
  note('WORDS', [5, 112], 'BUOY LID'),
];
