/** Drawings of our own, each named for what it shows: the regions, their layers and ids, and the exact findings. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { loopsArea } from '#geometry/span.ts';
import { closed, exploded, found, line } from '#support/drawings/find-in-drawing.ts';
import { anyOutline } from '#support/geometry/random-linework.ts';
import { circle, polygon, rectangle, roundedRectangle } from '#support/geometry/shapes.ts';

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

describe('regions in awkward places', () => {
  test('a region that only lines of two layers together enclose belongs to the one with more of its border', () => {
    const half = (layer: string, from: number, to: number) =>
      exploded(layer, rectangle(0, 0, 40, 20)).slice(from, to);
    const { part, codes } = found([...half('A', 0, 3), ...half('B', 3, 4)]);
    expect(codes).toEqual([]);
    expect(part.regions.map(({ layer }) => layer)).toEqual(['A']);
  });

  test('where two outlines of different layers overlap, the smaller one names the common part', () => {
    const { part } = found([
      closed('WIDE', rectangle(0, 0, 60, 30)),
      closed('SMALL', rectangle(50, 10, 70, 20)),
    ]);
    expect(part.regions.map(({ layer, area }) => [layer, area])).toEqual([
      ['WIDE', 1700],
      ['SMALL', 100],
      ['SMALL', 100],
    ]);
  });

  test('a cutout that touches the outline, or takes a bite out of a pocket, is no metal', () => {
    const { part, codes } = found(
      [TRIM, closed('TRIM', rectangle(80, 0, 120, 30)), closed('A', rectangle(60, 10, 140, 60))],
      { outline: ['TRIM'] },
    );
    expect(codes).toEqual([]);
    expect(loopsArea(part.sheet)).toBeCloseTo(20_000 - 1200, 9);
    expect(part.regions.map(({ layer, area }) => [layer, area])).toEqual([
      ['TRIM', 20_000 - 4000 - 400],
      ['A', 4000 - 800],
    ]);
  });

  test('an outline inside a cutout is metal again', () => {
    const { part } = found([TRIM, closed('TRIM', circle(100, 50, 40)), closed('TRIM', circle(100, 50, 10))], {
      outline: ['TRIM'],
    });
    expect(part.regions.map(({ area }) => Math.round(area))).toEqual([
      Math.round(20_000 - 1600 * Math.PI),
      314,
    ]);
  });

  test.each([
    ['the region first', ['POCKETS', 'TRIM']],
    ['the outline first', ['TRIM', 'POCKETS']],
  ])('a cutout drawn on two layers is a cutout, %s', (_, layers) => {
    const hole = layers.map((layer) => closed(layer, circle(100, 50, 10)));
    const { part } = found([TRIM, ...hole], { outline: ['TRIM'] });
    expect(part.regions.map(({ area }) => area)).toEqual([expect.closeTo(20_000 - 100 * Math.PI, 6)]);
  });

  test('slivers-merged: a pocket drawn again a hair inside itself is one pocket, and that is reported', () => {
    const { part, codes, findings } = found(
      [
        TRIM,
        closed('POCKETS', rectangle(20, 20, 90, 70)),
        closed('POCKETS', rectangle(20.002, 20.003, 89.999, 69.998)),
      ],
      { outline: ['TRIM'] },
    );
    expect(codes).toEqual(['slivers-merged']);
    expect(findings[0]?.facts).toMatchObject({ count: 1, limit: 0.005 });
    expect(part.regions.map(({ area }) => area).sort((a, b) => a - b)).toEqual([
      expect.closeTo(70 * 50, 0),
      expect.closeTo(200 * 100 - 70 * 50, 0),
    ]);
  });

  test('a pocket that comes a hair short of the edge runs to the edge', () => {
    const { part } = found([TRIM, closed('POCKETS', rectangle(150, 20, 199.998, 70))], {
      outline: ['TRIM'],
    });
    expect(part.regions).toHaveLength(2);
    expect(loopsArea(part.sheet)).toBeCloseTo(20_000, 0);
  });

  test('an outline drawn twice is one outline', () => {
    const { part, codes } = found([TRIM, TRIM], { outline: ['TRIM'] });
    expect(codes).toEqual(['line-doubled']);
    expect(part.regions.map(({ area }) => area)).toEqual([20_000]);
  });

  test('ids get a third digit from the hundredth region on', () => {
    const many = Array.from({ length: 100 }, (_, i) => closed('A', rectangle(i * 20, 0, i * 20 + 10, 10)));
    const ids = found(many).part.regions.map(({ id }) => id);
    expect([ids[0], ids[99]]).toEqual(['R001', 'R100']);
  });

  test('ids, layers and labels do not depend on the order of entities', () => {
    const curves = [
      TRIM,
      ...exploded('BAYS', rectangle(10, 10, 60, 50)),
      ...exploded('BAYS', rectangle(60, 10, 110, 50)),
      closed('DEEP', roundedRectangle(20, 20, 40, 40, 4)),
      closed('DEEP', circle(85, 30, 9)),
      line('BAYS', 10, 70, 190, 90),
      line('BAYS', 150, 0, 150, 100),
    ];
    const reported = ({ part, codes }: ReturnType<typeof found>) => ({
      regions: part.regions.map(({ id, layers, label, area }) => ({ id, layers, label, area })),
      codes: [...codes].sort(),
    });
    const wanted = reported(found(curves, { outline: ['TRIM'] }));
    fc.assert(
      fc.property(fc.shuffledSubarray(curves, { minLength: curves.length }), (shuffled) => {
        expect(reported(found(shuffled, { outline: ['TRIM'] }))).toEqual(wanted);
      }),
      { numRuns: 50 },
    );
  });

  test('what is metal adds up: regions fill the sheet, and no face belongs to two', {
    tags: ['long'],
  }, () => {
    const outlines = fc.array(anyOutline(true), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(outlines, outlines, (sheet, pockets) => {
        const { part } = found(
          [...sheet.map((loop) => closed('TRIM', loop)), ...pockets.map((loop) => closed('A', loop))],
          { outline: ['TRIM'] },
        );
        const area = part.regions.reduce((sum, region) => sum + region.area, 0);
        expect(loopsArea(part.sheet)).toBeCloseTo(area, 6);
        part.regions.forEach(({ face, label, loops }, index) => {
          expect(part.regionOfFace[face]).toBe(index);
          expect(isInsideLoops(loops, label)).toBe(true);
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('findings of the linework', () => {
  test('no-closed-region', () => {
    expect(found([line('A', 0, 0, 10, 0)]).codes).toEqual(['line-leads-nowhere', 'no-closed-region']);
  });

  test('linework-too-crossed: a hatching of 300 lines each way, on the only layer', () => {
    const hatching = Array.from({ length: 300 }, (_, i) => [
      line('A', 0, i, 300, i),
      line('A', i, 0, i, 300),
    ]);
    const { part, findings } = found(hatching.flat());
    expect(findings).toMatchObject([
      { code: 'linework-too-crossed', severity: 'stop', place: { layer: 'A' }, facts: { limit: 50_000 } },
    ]);
    expect(part.regions).toEqual([]);
  });

  test('outline-not-closed', () => {
    const open = exploded('TRIM', rectangle(0, 0, 50, 40)).slice(0, 3);
    const { codes } = found([...open, closed('A', rectangle(5, 5, 10, 10))], { outline: ['TRIM'] });
    expect(codes).toEqual(['line-leads-nowhere', 'outline-not-closed']);
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
    const pocket = found([closed('POCKETS', eight)], {});
    expect(pocket.codes).toEqual(['outline-crosses-itself']);
    expect(pocket.part.regions).toHaveLength(2);
  });

  test('line-without-length', () => {
    const { codes } = found([closed('A', [...rectangle(0, 0, 9, 9)]), line('A', 5, 5, 5, 5)]);
    expect(codes).toEqual(['line-without-length']);
  });

  test('line-doubled: a note with both lines of the file', () => {
    const bay = closed('A', rectangle(0, 0, 9, 9));
    const { findings } = found([bay, { ...bay, line: 77 }]);
    expect(findings).toMatchObject([
      { code: 'line-doubled', severity: 'note', facts: { otherLine: 1 }, place: { line: 77, layer: 'A' } },
    ]);
  });

  test('line-over-itself', () => {
    const way: [number, number][] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [10, 5],
      [10, 10],
    ];
    expect(found([closed('A', polygon(way))]).codes).toEqual(['line-over-itself']);
  });

  test('line-overshoots: a line that runs 0.03 mm past the border', () => {
    const { part, codes } = found([closed('A', rectangle(0, 0, 20, 10)), line('A', 10, 0, 10, 10.03)]);
    expect(codes).toEqual(['line-overshoots']);
    expect(part.regions.map(({ area }) => area)).toEqual([100, 100]);
  });

  test('line-leads-nowhere', () => {
    const { part, codes } = found([closed('A', rectangle(0, 0, 20, 10)), line('A', 10, 5, 10, 10)]);
    expect(codes).toEqual(['line-leads-nowhere']);
    expect(part.regions).toHaveLength(1);
  });

  test('gap-joined: with the gap, its place and the limit', () => {
    const sides = exploded('A', rectangle(0, 0, 20, 10)).slice(1);
    const { part, findings } = found([...sides, line('A', 0, 0, 19.96, 0)]);
    expect(findings).toMatchObject([
      {
        code: 'gap-joined',
        facts: { gap: expect.closeTo(0.04, 9), joinTolerance: 0.05 },
        place: { at: { x: 20, y: 0 } },
      },
    ]);
    expect(part.regions).toHaveLength(1);
  });

  test('gap-open: reported as the gap alone, not also as lines that lead nowhere', () => {
    const sides = exploded('A', rectangle(0, 0, 20, 10)).slice(1);
    const { codes, findings } = found([...sides, line('A', 0, 0, 19.8, 0), closed('B', circle(50, 50, 5))]);
    expect(codes).toEqual(['gap-open']);
    expect(findings[0]).toMatchObject({ facts: { gap: expect.closeTo(0.2, 9) } });
  });

  test('layer-missing and outline-layer-missing: with the name that was meant', () => {
    const { findings } = found([TRIM], { outline: ['TRIMM'], regions: ['POCKETS'] });
    expect(findings).toMatchObject([
      {
        code: 'outline-layer-missing',
        severity: 'stop',
        facts: { meant: 'TRIM' },
        place: { path: 'layers.outline[0]' },
      },
      {
        code: 'layer-missing',
        severity: 'warn',
        facts: { meant: undefined },
        place: { path: 'layers.regions[0]' },
      },
      { code: 'no-closed-region' },
    ]);
  });

  test('forty stray lines: twenty-five are reported one by one, the rest counted', () => {
    const strays = Array.from({ length: 40 }, (_, i) => line('A', i, 20, i, 25));
    const { findings } = found([closed('A', rectangle(0, 0, 9, 9)), ...strays]);
    expect(findings).toHaveLength(26);
    expect(findings.at(-1)).toMatchObject({
      code: 'more-of-the-same',
      facts: { of: 'line-leads-nowhere', more: 15 },
    });
  });
});
