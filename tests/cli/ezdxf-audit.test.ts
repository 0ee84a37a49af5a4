import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { scribeDrawing } from '#handoff/scribe-drawing.ts';
import { templateDrawing } from '#handoff/template/template-drawing.ts';
import { templateOf } from '#support/handoff/template-of.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

/** The independent library ezdxf (MIT; Debian package python3-ezdxf): loads a file, audits it, and reports what it read. */
const SCRIPT = `
import json, sys, ezdxf
document = ezdxf.readfile(sys.argv[1])
audit = document.audit()
lines = [e for e in document.modelspace() if e.dxftype() in ("LWPOLYLINE", "POLYLINE")]
print(json.dumps({
    "errors": [e.message for e in audit.errors], "fixes": [e.message for e in audit.fixes],
    "version": document.dxfversion, "units": document.units,
    "layers": sorted({e.dxf.layer for e in document.modelspace()}),
    "lines": [{"layer": e.dxf.layer, "closed": bool(e.closed) if e.dxftype() == "LWPOLYLINE" else e.is_closed} for e in lines],
}))
`;
const pythons = ['/usr/bin/python3', 'python3'];
const python = pythons.find((each) => spawnSync(each, ['-c', 'import ezdxf']).status === 0);
const folder = mkdtempSync(join(tmpdir(), 'isobath-audit-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe.skipIf(python === undefined)('ezdxf, where it is installed', () => {
  it.each([
    ['scribe.dxf in mm', 'mm', '2000', 'AC1015', 4],
    ['scribe.dxf in inches', 'in', '2000', 'AC1015', 1],
    ['scribe-r12.dxf in mm, whose release knows no unit', 'mm', 'r12', 'AC1009', 0],
    ['scribe-r12.dxf in inches', 'in', 'r12', 'AC1009', 0],
  ] as const)('loads and audits %s without an error or a fix', (_, unit, release, version, units) => {
    const file = join(folder, `scribe-${release}-${unit}.dxf`);
    const planHash = 'ab'.repeat(32);
    writeFileSync(
      file,
      scribeDrawing({ name: 'Gondola lid', planHash, plan: handMadePlan, unit, depthUnit: unit, release }),
    );
    const run = spawnSync(python ?? '', ['-c', SCRIPT, file], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    const read = JSON.parse(run.stdout) as Record<string, unknown> & {
      lines: { layer: string; closed: boolean }[];
    };
    expect(read).toMatchObject({ errors: [], fixes: [], version, units });
    expect(read['layers']).toEqual(['NOTES', 'OUTLINE', 'SCRIBE-01', 'SCRIBE-02']);
    expect(read.lines.map(({ layer, closed }) => [layer, closed])).toEqual([
      ['OUTLINE', true],
      ['SCRIBE-01', true],
      ['SCRIBE-02', true],
      ['SCRIBE-02', false],
    ]);
  });

  it('loads and audits a scribe template without an error or a fix', () => {
    const { set } = templateOf(handMadePlan);
    if (set === undefined) throw new Error('the hand-made plan has templates');
    const file = join(folder, 'template-01.dxf');
    writeFileSync(file, templateDrawing({ set, number: 1, planHash: '0'.repeat(64), unit: 'mm' }));
    const run = spawnSync(python ?? '', ['-c', SCRIPT, file], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    const read = JSON.parse(run.stdout);
    expect(read).toMatchObject({ errors: [], fixes: [], version: 'AC1015', units: 4 });
    const slots = read.lines.filter(({ layer }: { layer: string }) => layer.startsWith('SLOT-'));
    expect(slots).toHaveLength(set.templates[0]?.length ?? 0);
    expect(slots.every(({ closed }: { closed: boolean }) => closed)).toBe(true);
  });
});
