/** A drain plate with so many etched dimples that planning it is shared among threads: each is a cluster of its own, no two rows alike. */
import { box, circle, dxf } from './small-drawing.ts';

const COLUMNS = 40;
const ROWS = 27;

export const drainPlate = {
  drawing: dxf({
    insunits: 4,
    entities: [
      box('TRIM', [0, 0], [COLUMNS * 12 + 10, ROWS * 12 + 10]),
      ...Array.from({ length: COLUMNS * ROWS }, (_, at) => {
        const row = Math.floor(at / COLUMNS);
        return circle('DIMPLES', [11 + (at % COLUMNS) * 12, 11 + row * 12], 2 + row * 0.03);
      }),
    ],
  }),
  job: {
    format: 'isobath-job',
    version: 1,
    drawing: 'drain-plate.dxf',
    layers: { outline: ['TRIM'] },
    stock: { alloy: 'al-2024-t3', thickness: 2 },
    process: { bath: 'caustic-aluminium', etchFactor: 1, rate: 0.0297 },
    requirements: [{ layer: 'DIMPLES', depth: 0.6, plus: 0.05, minus: 0.04 }],
  },
};
