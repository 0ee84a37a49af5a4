/** The regions of a drawing made of curves in a test, and what is found on the way. */
import type { Drawing, DrawnCurve } from '#drawing/drawing.ts';
import { type Loop, lineSpan, type Span } from '#geometry/span.ts';
import type { Job } from '#job/job.ts';
import { findRegions } from '#part/find-regions.ts';

type Layers = Partial<Job['layers']>;

export function closed(layer: string, spans: Loop): DrawnCurve {
  return { layer, kind: 'LWPOLYLINE', handle: undefined, line: 1, closed: true, spans };
}

export function line(layer: string, x0: number, y0: number, x1: number, y1: number): DrawnCurve {
  const spans = [lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 })];
  return { layer, kind: 'LINE', handle: undefined, line: 1, closed: false, spans };
}

/** Closed spans as loose LINE entities. */
export function exploded(layer: string, spans: readonly Span[]): DrawnCurve[] {
  return spans.map((span) => ({
    layer,
    kind: 'LINE',
    handle: undefined,
    line: 1,
    closed: false,
    spans: [span],
  }));
}

export function drawingOf(curves: readonly DrawnCurve[]): Drawing {
  const names = [...new Set(curves.map(({ layer }) => layer))];
  const layers = names.map((name) => ({ name, shown: true, counts: {} }));
  return { unit: 'mm', statedUnit: 'mm', layers, curves, notes: [], passedOver: [], findings: [] };
}

export function found(curves: readonly DrawnCurve[], layers: Layers = {}, joinTolerance = 0.05) {
  const job = { layers: { outline: [], regions: undefined, ignore: [], ...layers }, joinTolerance };
  const { part, findings } = findRegions(drawingOf(curves), job);
  return { part, codes: findings.map(({ code }) => code), findings };
}
