/** Drawings of our own, each named for what it shows: the regions, their layers and ids, and the exact findings. */
import { describe, expect, test } from 'vitest';
import type { Drawing, DrawnCurve } from '#drawing/drawing.ts';
import { type Loop, lineSpan, loopsArea, type Span } from '#geometry/span.ts';
import { findRegions } from '#part/find-regions.ts';
import type { Job } from '#part/job.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/shapes.ts';

type Layers = Partial<Job['layers']>;

function closed(layer: string, spans: Loop): DrawnCurve {
  return { layer, kind: 'LWPOLYLINE', handle: undefined, line: 1, closed: true, spans };
}

function line(layer: string, x0: number, y0: number, x1: number, y1: number): DrawnCurve {
  const spans = [lineSpan({ x: x0, y: y0 }, { x: x1, y: y1 })];
  return { layer, kind: 'LINE', handle: undefined, line: 1, closed: false, spans };
}

/** Closed spans as loose LINE entities. */
function exploded(layer: string, spans: readonly Span[]): DrawnCurve[] {
  return spans.map((span) => ({
    layer,
    kind: 'LINE',
    handle: undefined,
    line: 1,
    closed: false,
    spans: [span],
  }));
}

function drawingOf(curves: readonly DrawnCurve[]): Drawing {
  const names = [...new Set(curves.map(({ layer }) => layer))];
  const layers = names.map((name) => ({ name, shown: true, counts: {} }));
  return { unit: 'mm', statedUnit: 'mm', layers, curves, notes: [], passedOver: [], findings: [] };
}

function found(curves: readonly DrawnCurve[], layers: Layers = {}, joinTolerance = 0.05) {
  const job = { layers: { outline: [], regions: undefined, ignore: [], ...layers }, joinTolerance };
  const { part, findings } = findRegions(drawingOf(curves), job);
  return { part, codes: findings.map(({ code }) => code), findings };
}

const TRIM = closed('TRIM', rectangle(0, 0, 200, 100));

describe('regions of a cover', () => {
  test('sheet with a pocket, a deeper pocket in it and an island: four regions, each on its layer', () => {
    const { part, codes } = found(
      [
        TRIM,
        closed('POCKETS', roundedRectangle(10, 10, 110, 90, 6)),
        closed('DEEP', rectangle(20, 20, 60, 80)),
        closed('ISLANDS', circle(90, 50, 8)),
      ],
      { outline: ['TRIM'] },
    );
    expect(codes).toEqual([]);
    expect(part.regions.map(({ layer }) => layer).sort()).toEqual(['DEEP', 'ISLANDS', 'POCKETS', 'TRIM']);
    const areaOf = (name: string) => part.regions.find(({ layer }) => layer === name)?.area;
    const pocket = 8000 - (4 - Math.PI) * 36;
    expect(areaOf('DEEP')).toBeCloseTo(2400, 9);
    expect(areaOf('ISLANDS')).toBeCloseTo(64 * Math.PI, 9);
    expect(areaOf('POCKETS')).toBeCloseTo(pocket - 2400 - 64 * Math.PI, 9);
    expect(areaOf('TRIM')).toBeCloseTo(20_000 - pocket, 9);
    expect(loopsArea(part.sheet)).toBeCloseTo(20_000, 9);
  });

  test('ids run down the drawing and then across', () => {
    const { part } = found([
      closed('A', rectangle(0, 0, 10, 10)),
      closed('A', rectangle(20, 30, 30, 40)),
      closed('A', rectangle(0, 30, 10, 40)),
    ]);
    expect(part.regions.map(({ id, label }) => [id, label.x, label.y])).toEqual([
      ['R01', 5, 35],
      ['R02', 25, 35],
      ['R03', 5, 5],
    ]);
    expect(part.sheet).toEqual([]);
  });

  test('a closed outline inside the outline is a cutout: no region, no finding', () => {
    const { part, codes } = found([TRIM, closed('TRIM', circle(100, 50, 20))], { outline: ['TRIM'] });
    expect(codes).toEqual([]);
    expect(part.regions).toHaveLength(1);
    expect(loopsArea(part.sheet)).toBeCloseTo(20_000 - 400 * Math.PI, 9);
    expect(part.sheet).toHaveLength(2);
  });

  test('outlines drawn as loose lines, cutout included', () => {
    const { part, codes } = found(
      [...exploded('TRIM', rectangle(0, 0, 50, 40)), ...exploded('TRIM', rectangle(10, 10, 20, 20))],
      { outline: ['TRIM'] },
    );
    expect(codes).toEqual([]);
    expect(part.regions.map(({ area }) => area)).toEqual([1900]);
  });

  test('two outlines that share an edge are both sheet', () => {
    const { part, codes } = found(
      [closed('TRIM', rectangle(0, 0, 50, 40)), closed('TRIM', rectangle(50, 0, 90, 40))],
      { outline: ['TRIM'] },
    );
    expect(codes).toEqual([]);
    expect(part.regions.map(({ area }) => area)).toEqual([2000, 1600]);
    expect(loopsArea(part.sheet)).toBeCloseTo(3600, 9);
  });

  test('an outline on two layers belongs to both', () => {
    const bay = roundedRectangle(10, 10, 60, 60, 5);
    const { part } = found([closed('BAYS', bay), closed('ABUTMENT', bay)]);
    expect(part.regions.map(({ layer, layers }) => [layer, layers])).toEqual([
      ['ABUTMENT', ['ABUTMENT', 'BAYS']],
    ]);
  });
});

describe('findings of the linework', () => {
  test('no-closed-region', () => {
    expect(found([line('A', 0, 0, 10, 0)]).codes).toEqual(['line-leads-nowhere', 'no-closed-region']);
  });

  test('outline-not-closed', () => {
    const open = exploded('TRIM', rectangle(0, 0, 50, 40)).slice(0, 3);
    const { codes } = found([...open, closed('A', rectangle(5, 5, 10, 10))], { outline: ['TRIM'] });
    expect(codes).toEqual([
      'line-leads-nowhere',
      'line-leads-nowhere',
      'line-leads-nowhere',
      'outline-not-closed',
    ]);
  });

  test('region-outside-sheet', () => {
    const { part, codes } = found([TRIM, closed('A', rectangle(180, 40, 220, 60))], { outline: ['TRIM'] });
    expect(codes).toEqual(['region-outside-sheet']);
    expect(part.regions).toHaveLength(2);
    expect(part.regionOfFace.filter((region) => region === -1)).toHaveLength(2);
  });

  test('outline-crosses-itself', () => {
    const eight = polygon([
      [0, 0],
      [20, 10],
      [20, 0],
      [0, 10],
    ]);
    expect(found([closed('TRIM', eight)], { outline: ['TRIM'] }).codes).toEqual(['outline-crosses-itself']);
  });
});
