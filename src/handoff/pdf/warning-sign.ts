/** The general warning sign (ISO 7010, W001), in black and white. */
import type { Point } from '#geometry/point.ts';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import type { Pen } from './pen.ts';
import { INK } from './sheet-ink.ts';

/** mm */
const HALF = 3.6;

export function drawWarningSign(pen: Pen, { x, y }: Point): void {
  const [top, left, right] = [
    { x, y: y + HALF * 0.95 },
    { x: x - HALF, y: y - HALF * 0.78 },
    { x: x + HALF, y: y - HALF * 0.78 },
  ] as const;
  const spans = [lineSpan(left, right), lineSpan(right, top), lineSpan(top, left)];
  pen.paths([{ closed: true, spans }], { stroke: { width: 0.7, color: INK } });
  pen.line({ x, y: y + 1.4 }, { x, y: y - 0.8 }, { width: 0.8, color: INK });
  const dot = [0, Math.PI].map((from) =>
    arcSpan({ center: { x, y: y - 1.9 }, radius: 0.45, from, sweep: Math.PI }),
  );
  pen.paths([{ closed: true, spans: dot }], { fill: INK });
}
