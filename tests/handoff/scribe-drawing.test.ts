import { parseString } from 'dxf';
import { describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { scribeDrawing } from '#handoff/scribe-drawing.ts';
import { curveGap } from '#support/geometry/curve-gap.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';
import { millimetresIn } from '#units/length-unit.ts';

const text = (unit: 'mm' | 'in', release: '2000' | 'r12' = '2000'): string =>
  new TextDecoder().decode(
    scribeDrawing({
      name: 'Gondola lid ±',
      planHash: 'ab'.repeat(32),
      plan: handMadePlan,
      unit,
      depthUnit: unit,
      release,
    }),
  );

/** Group code and value, line by line. */
function tagsOf(dxf: string): (readonly [number, string])[] {
  const lines = dxf.split('\r\n');
  expect(lines.pop()).toBe('');
  return lines.flatMap((line, index) =>
    index % 2 === 0 ? [[Number(line), itemAt(lines, index + 1)] as const] : [],
  );
}

describe.each(['mm', 'in'] as const)('scribe.dxf of a drawing in %s', (unit) => {
  const dxf = text(unit);
  const read = parseString(dxf);
  const outlines = read.entities.filter(({ type }) => type === 'LWPOLYLINE');

  it('gives an independent reader (npm package dxf 5.3.1) the same curves within 0.001 mm', () => {
    const lines = [
      ...handMadePlan.sheet.map((spans) => ({ layer: 'OUTLINE', closed: true, spans })),
      ...handMadePlan.stages.flatMap(({ number, lines }) =>
        lines.map((line) => ({ layer: `SCRIBE-0${number}`, ...line })),
      ),
    ];
    expect(outlines).toHaveLength(lines.length);
    const scale = millimetresIn(unit);
    for (const [index, line] of lines.entries()) {
      const { layer, closed, vertices = [] } = itemAt(outlines, index);
      expect(layer).toBe(line.layer);
      expect(closed).toBe(line.closed);
      const back = pathOfContour({
        closed: closed === true,
        vertices: vertices.map(({ x, y, bulge = 0 }) => [x * scale, y * scale, bulge]),
      });
      expect(curveGap(back.spans, line.spans)).toBeLessThan(1e-6);
    }
  });

  it('states the unit, the system of measures and the true extents', () => {
    expect(read.header.insUnits).toBe(unit === 'mm' ? 4 : 1);
    const tags = tagsOf(dxf);
    const measurement = tags.findIndex(([, value]) => value === '$MEASUREMENT');
    expect(itemAt(tags, measurement + 1)).toEqual([70, unit === 'mm' ? '1' : '0']);
    const box = boxOfSpans(itemAt(handMadePlan.sheet, 0));
    const scale = millimetresIn(unit);
    expect((read.header.extMin?.x ?? Number.NaN) * scale).toBeCloseTo(box.minX, 5);
    expect((read.header.extMax?.x ?? Number.NaN) * scale).toBeCloseTo(box.maxX, 5);
    expect((read.header.extMax?.y ?? Number.NaN) * scale).toBeCloseTo(box.maxY, 5);
  });

  it('has a layer a stage with a colour of its own, the outline, and notes that are off', () => {
    const { layers } = read.tables;
    expect(Object.keys(layers)).toEqual(['0', 'SCRIBE-01', 'SCRIBE-02', 'OUTLINE', 'NOTES']);
    const colors = ['SCRIBE-01', 'SCRIBE-02'].map((name) => layers[name]?.colorNumber);
    expect(new Set(colors).size).toBe(2);
    expect(layers['NOTES']?.colorNumber).toBeLessThan(0);
    const notes = read.entities.filter(({ type }) => type === 'TEXT');
    expect(notes.map(({ layer }) => layer)).toEqual(notes.map(() => 'NOTES'));
    expect(notes.map((note) => note.string).join('\n')).toMatch(
      /Gondola lid \\U\+00B1\nPlan (ab){32}\n[\s\S]*not an approval/,
    );
  });

  it('is plain ASCII in fixed point: no exponent, no minus zero, no colour or unit left to chance', () => {
    expect(dxf).toMatch(/^[\x20-\x7e\r\n]*$/);
    for (const [code, value] of tagsOf(dxf)) {
      if (code >= 10 && code < 60) expect(value).toMatch(/^-?\d+(\.\d+)?$/);
      expect(value).not.toMatch(/^-0(\.0*)?$/);
    }
    expect(dxf).toContain('$ACADVER\r\n  1\r\nAC1015\r\n');
    expect(dxf.endsWith('  0\r\nEOF\r\n')).toBe(true);
  });

  it('closes by flag alone, counts its vertices, and keeps each arc to half a turn', () => {
    const tags = tagsOf(dxf);
    const counts = tags.filter(([code]) => code === 90).map(([, value]) => Number(value));
    expect(counts).toEqual(outlines.map(({ vertices = [] }) => vertices.length));
    for (const { vertices = [] } of outlines) {
      const first = itemAt(vertices, 0);
      const last = itemAt(vertices, vertices.length - 1);
      expect(Math.hypot(last.x - first.x, last.y - first.y)).toBeGreaterThan(0);
      for (const { bulge = 0 } of vertices) expect(Math.abs(bulge)).toBeLessThanOrEqual(1);
    }
  });

  it('gives every object a handle of its own, below the seed', () => {
    const tags = tagsOf(dxf);
    const seedAt = tags.findIndex(([, value]) => value === '$HANDSEED');
    const seed = Number.parseInt(itemAt(tags, seedAt + 1)[1], 16);
    const handles = tags
      .filter(([code], index) => (code === 5 || code === 105) && index !== seedAt + 1)
      .map(([, value]) => value);
    expect(new Set(handles).size).toBe(handles.length);
    for (const handle of handles) expect(Number.parseInt(handle, 16)).toBeLessThan(seed);
  });
});

describe.each(['mm', 'in'] as const)('scribe-r12.dxf of a drawing in %s', (unit) => {
  const dxf = text(unit, 'r12');
  const read = parseString(dxf);
  const outlines = read.entities.filter(({ type }) => type === 'POLYLINE');

  it('gives an independent reader (npm package dxf 5.3.1) the curves, layers and colours of scribe.dxf', () => {
    const newer = parseString(text(unit));
    const same = newer.entities.filter(({ type }) => type === 'LWPOLYLINE');
    expect(outlines).toHaveLength(same.length);
    outlines.forEach(({ layer, closed, vertices = [] }, index) => {
      const other = itemAt(same, index);
      expect([layer, closed]).toEqual([other.layer, other.closed]);
      const plain = (each: typeof vertices) => each.map(({ x, y, bulge = 0 }) => [x, y, bulge]);
      expect(plain(vertices)).toEqual(plain(other.vertices ?? []));
    });
    const colors = (layers: typeof read.tables.layers) =>
      Object.entries(layers).map(([name, { colorNumber }]) => [name, colorNumber]);
    expect(colors(read.tables.layers)).toEqual(colors(newer.tables.layers));
  });

  it('is AC1009 in ASCII, states its unit and its plan in the notes, and holds nothing that release does not know', () => {
    expect(dxf).toContain('$ACADVER\r\n  1\r\nAC1009\r\n');
    expect(dxf).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(dxf).not.toMatch(/\$INSUNITS|LWPOLYLINE|AcDb|\\U\+/);
    const notes = read.entities.filter((each) => each.type === 'TEXT').map((each) => each.string);
    expect(notes.join('\n')).toMatch(
      new RegExp(`Gondola lid \\?\\nPlan (ab){32}\\nUnit: ${unit}\\.[\\s\\S]*not an approval`),
    );
    for (const [code, value] of tagsOf(dxf)) {
      if (code >= 10 && code < 60) expect(value).toMatch(/^-?\d+(\.\d+)?$/);
      expect(value).not.toMatch(/^-0(\.0*)?$/);
    }
  });
});

it('depths in the notes are in the job’s unit, whatever the drawing’s', () => {
  const input = { name: 'Lid', planHash: '0', plan: handMadePlan, unit: 'mm' } as const;
  const notes = (depthUnit: 'mm' | 'in') =>
    new TextDecoder().decode(scribeDrawing({ ...input, depthUnit })).match(/SCRIBE-\d\d: to .*? (?:mm|in)/g);
  const levels = handMadePlan.stages.map(({ level }) => level);
  expect(notes('mm')).toEqual(
    levels.map((level, index) => `SCRIBE-0${index + 1}: to ${level.toFixed(3)} mm`),
  );
  expect(notes('in')).toEqual(
    levels.map((level, index) => `SCRIBE-0${index + 1}: to ${(level / 25.4).toFixed(4)} in`),
  );
});
