/** A plate of 200 × 120 on layer EDGE with one pocket of 80 × 50 on layer POCKET, in millimetres. */
import { box, dxf } from './small-drawing.ts';

export function plateDrawing(): string {
  return dxf({
    insunits: 4,
    entities: [box('EDGE', [0, 0], [200, 120]), box('POCKET', [30, 40], [110, 90])],
  });
}
