/** `isobath new`: from a drawing alone to a job that plans, a plate on one layer too, without an editor. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { box, buoyLid, buoyLidNotes, circle, dxf, line, note } from '#support/drawings/small-drawing.ts';
import { runIsobath } from '#support/process/run-isobath.ts';

const folder = mkdtempSync(join(tmpdir(), 'isobath-new-'));
const job = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as Record<string, unknown>;

/** A hatch of a solar boat, all on layer 0 as such plates are drawn: edge in loose lines, two pockets, centre lines of the round one. */
const HATCH = [
  line('0', [0, 0], [260, 0]),
  line('0', [260, 0], [260, 110]),
  line('0', [260, 110], [220, 150]),
  line('0', [220, 150], [0, 150]),
  line('0', [0, 150], [0, 0]),
  box('0', [20, 30], [140, 120]),
  circle('0', [190, 75], 25),
  line('Mittellinien', [150, 75], [230, 75]),
  note('0', [60, 60], '1.20'),
  note('0', [185, 70], '2.1 ±0.08'),
];

beforeAll(() => {
  writeFileSync(join(folder, 'hatch.dxf'), dxf({ insunits: 4, entities: HATCH }));
  writeFileSync(join(folder, 'hatch-no-unit.dxf'), dxf({ entities: HATCH }));
  writeFileSync(join(folder, 'lid.dxf'), dxf({ insunits: 4, entities: [...buoyLid, ...buoyLidNotes] }));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('isobath new', () => {
  it('a plate on one layer: from the drawing to its scribe lines', () => {
    const begun = runIsobath(
      [
        'new',
        'hatch.dxf',
        '--notes',
        'depth',
        '--thickness',
        '4',
        '--alloy',
        'al-2024-t3',
        '--bath',
        'caustic-aluminium',
      ],
      folder,
    );
    expect(begun.error).toBe('');
    expect(begun.code).toBe(0);
    expect(begun.out).toMatch(/sheet {5}the outermost closed outline/);
    expect(begun.out).toMatch(/left out {2}layer Mittellinien: "mittellinien" in its name/);
    expect(begun.out).not.toContain('still to decide');
    expect(job('hatch.job.json')).toMatchObject({
      drawing: 'hatch.dxf',
      units: 'mm',
      layers: { outline: 'outermost', ignore: ['Mittellinien'] },
      requirements: [{ depth: 1.2 }, { depth: 2.1, plus: 0.08, minus: 0.08 }],
    });
    const planned = runIsobath(['plan', 'hatch.job.json', '--out', 'out'], folder);
    expect(planned.error).not.toMatch(/^stop/m);
    expect(planned.code).toBe(0);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['plan.json', 'scribe.dxf']);
    const scribe = readFileSync(join(folder, 'out', 'scribe.dxf'), 'latin1');
    expect(scribe).toContain('SCRIBE-02');
  });

  it('out-already-there: a job is never written over', () => {
    const before = readFileSync(join(folder, 'hatch.job.json'));
    const { code, error } = runIsobath(['new', 'hatch.dxf'], folder);
    expect(code).toBe(2);
    expect(error).toMatch(/^stop out-already-there: /);
    expect(readFileSync(join(folder, 'hatch.job.json')).equals(before)).toBe(true);
  });

  it('layers of their own: the border’s layer is the outline; notes wait until it is said what they are', () => {
    const { code, out } = runIsobath(['new', 'lid.dxf'], folder);
    expect(code).toBe(0);
    expect(job('lid.job.json')).toMatchObject({
      layers: { outline: ['TRIM'] },
      // A final thickness says so itself; 1.2 and 1.3 in the round one differ, and 2.20 waits.
      requirements: [{ thickness: 1.6 }],
    });
    expect(out).toContain(
      '1 note gives a figure that may be a depth or a final thickness: use --notes depth',
    );
    expect(out).toContain('notes differ in R04');
    expect(out).toContain('stock.thickness');
    const left = runIsobath(['new', 'lid.dxf', '--notes', 'thickness', '--out', 'left.job.json'], folder);
    expect(left.code).toBe(0);
    expect(job('left.job.json')['requirements']).toHaveLength(2);
    expect(job('left.job.json')).toMatchObject({ requirements: [{ thickness: 2.2 }, { thickness: 1.6 }] });
  });

  it('drawing-unit-missing: no unit, no job; with --unit it is there, in inches', () => {
    const none = runIsobath(['new', 'hatch-no-unit.dxf'], folder);
    expect(none.code).toBe(2);
    expect(none.error).toMatch(/^stop drawing-unit-missing: /);
    expect(readdirSync(folder)).not.toContain('hatch-no-unit.job.json');
    expect(runIsobath(['new', 'hatch-no-unit.dxf', '--unit', 'in', '--notes', 'depth'], folder).code).toBe(0);
    expect(job('hatch-no-unit.job.json')).toMatchObject({
      units: 'in',
      drawingUnits: 'in',
      requirements: [{ depth: 1.2 }, { depth: 2.1 }],
    });
  });

  it.each([
    ['--notes', 'deep'],
    ['--thickness', '-4'],
    ['--unit', 'furlong'],
  ])('option-value-wrong: %s %s', (option, value) => {
    const { code, error } = runIsobath(['new', 'lid.dxf', '--out', 'never.job.json', option, value], folder);
    expect(code).toBe(2);
    expect(error).toMatch(/^stop option-value-wrong: /);
    expect(readdirSync(folder)).not.toContain('never.job.json');
  });
});
