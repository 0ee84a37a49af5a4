/** Lines that come back: our own come back as they went, and what was done to them is found and placed. */

import { beforeAll, describe, expect, test } from 'vitest';
import type { Finding } from '#findings/finding.ts';
import { compareReturned } from '#run/compare/compare-returned.ts';
import { readProgram } from '#run/compare/read-program.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

const codesOf = (findings: readonly Finding[]) => findings.map(({ code }) => code);
const bytesOf = (text: string) => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

const lid = {
  jobText: JSON.stringify({ ...buoyLidJob, handoff: { files: ['program'] } }),
  drawingName: 'buoy-lid.dxf',
  drawingBytes: bytesOf(buoyLidDrawing),
};

let scribe = '';
let program = '';
beforeAll(async () => {
  const { files } = await runJob(lid);
  scribe = textOf(files.find(({ name }) => name === 'scribe.dxf')?.bytes);
  program = textOf(files.find(({ name }) => name === 'scribe.nc')?.bytes);
});

const compare = (text: string, kind: 'scribe' | 'program' = 'scribe') =>
  compareReturned(lid, { kind, name: `back.${kind}`, bytes: bytesOf(text) });

/** The entities of a DXF of ours: each from its `0` to the next. */
function polylines(text: string): { head: string; lines: string[]; tail: string } {
  const start = text.indexOf('  0\r\nLWPOLYLINE') >= 0 ? '  0\r\nLWPOLYLINE' : '0\nLWPOLYLINE';
  const [head = '', ...others] = text.split(start);
  const last = others.at(-1) ?? '';
  const end = last.search(/\n\s*0\r?\n(?!LWPOLYLINE)/);
  return {
    head,
    lines: others.map((each, index) => start + (index === others.length - 1 ? last.slice(0, end + 1) : each)),
    tail: last.slice(end + 1),
  };
}

const isOfStage = (number: number) => (entity: string) => entity.includes(`SCRIBE-0${number}`);

/** One scribe line changed: all of its vertices, by tags 10 and 20. */
function changed(text: string, stage: number, change: (entity: string) => string): string {
  const { head, lines, tail } = polylines(text);
  const at = lines.findIndex(isOfStage(stage));
  if (at < 0) throw new Error(`no line of stage ${stage}`);
  return head + lines.map((each, index) => (index === at ? change(each) : each)).join('') + tail;
}

const movedBy = (dx: number) => (entity: string) =>
  entity.replace(/(\n\s*10\r?\n\s*)(-?[\d.]+)/g, (_, tag, x) => `${tag}${(Number(x) + dx).toFixed(6)}`);

describe('our own lines', () => {
  test('scribe.dxf comes back with every edge within 2 µm, every floor as it was, and not a word', async () => {
    const { comparison, findings } = await compare(scribe);
    expect(codesOf(findings)).toEqual([]);
    expect(comparison?.floors).toEqual([]);
    expect(comparison?.edges.length).toBeGreaterThan(1);
    for (const { outward, inward, lost, places } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
      expect([lost, places > 10]).toEqual([undefined, true]);
    }
  });

  test('so does the program', async () => {
    const { comparison, findings } = await compare(program, 'program');
    expect(codesOf(findings)).toEqual([]);
    for (const { outward, inward } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
    }
  });
});

describe('what was done to them', () => {
  test('returned-edge-moved: a line moved by 0.3 mm moves its edges by 0.3 either side, and no other', async () => {
    const { comparison, findings } = await compare(changed(scribe, 1, movedBy(0.3)));
    expect(codesOf(findings)).toEqual(['returned-edge-moved']);
    const [finding] = findings;
    expect(finding?.facts).toMatchObject({ level: 2.4, beside: 1.2, by: expect.closeTo(0.3, 3) });
    // DEEP goes from (45, 40) to (95, 80): its left or right side.
    expect([45, 95]).toContain(Math.round(finding?.place.at?.x ?? 0));
    const deep = comparison?.edges.find(({ level }) => level === 2.4);
    expect([deep?.outward.by, deep?.inward.by]).toEqual([expect.closeTo(0.3, 3), expect.closeTo(0.3, 3)]);
    const others = comparison?.edges.filter(({ level }) => level !== 2.4) ?? [];
    for (const { outward } of others) expect(outward.by).toBeLessThan(0.002);
  });

  test('returned-piece-missing: one line missing, reported at its place', async () => {
    const { comparison, findings } = await compare(changed(scribe, 1, () => ''));
    expect(codesOf(findings)).toContain('returned-piece-missing');
    const missing = findings.find(({ code }) => code === 'returned-piece-missing');
    expect(missing?.facts).toMatchObject({ stage: 1, isEarly: false });
    const { x = 0, y = 0 } = missing?.place.at ?? {};
    expect(x > 45 && x < 95 && y > 40 && y < 80).toBe(true);
    expect(codesOf(findings)).toContain('returned-edge-lost');
    expect(codesOf(findings)).toContain('returned-floor-changed');
    expect(comparison?.floors.map(({ level }) => level)).toContain(2.4);
  });

  test('returned-line-doubled: one line drawn again', async () => {
    const { findings, comparison } = await compare(changed(scribe, 1, (entity) => entity + entity));
    expect(new Set(codesOf(findings))).toEqual(new Set(['returned-line-doubled']));
    for (const { outward } of comparison?.edges ?? []) expect(outward.by).toBeLessThan(0.002);
  });

  test('returned-line-open: one line left open', async () => {
    // The closing flag, group 70, taken back.
    const open = changed(scribe, 1, (entity) => entity.replace(/(\n\s*70\r?\n\s*)1\b/, '$10'));
    const codes = codesOf((await compare(open)).findings);
    expect(codes).toContain('returned-line-open');
    // The side that is missing is what lies between the two ends: said once.
    expect(codes).not.toContain('returned-piece-missing');
  });

  test('returned-edge-lost: with the outer line open, no wall of the deeper floor is taken for its edge moved in', async () => {
    const { lines } = polylines(scribe);
    // POCKETS round DEEP is the one that goes farthest left.
    const leftMost = (entity: string) =>
      Math.min(...[...entity.matchAll(/\n\s*10\r?\n\s*(-?[\d.]+)/g)].map(([, x]) => Number(x)));
    const outer = lines.filter(isOfStage(2)).toSorted((a, b) => leftMost(a) - leftMost(b))[0] ?? '';
    const opened = outer.replace(/(\n\s*70\r?\n\s*)1\b/, '$10');
    expect(opened).not.toBe(outer);
    const { findings, comparison } = await compare(scribe.replace(outer, opened));
    const codes = codesOf(findings);
    expect(codes.filter((code) => code === 'returned-line-open').length).toBeGreaterThan(0);
    expect(codes).toContain('returned-edge-lost');
    expect(codes).not.toContain('returned-edge-moved');
    expect(codes).not.toContain('returned-piece-missing');
    for (const { outward, inward } of comparison?.edges ?? []) {
      expect(Math.max(outward.by, inward.by)).toBeLessThan(0.002);
    }
  });

  test('returned-without-lines: a drawing of something else', async () => {
    const only = polylines(scribe);
    const sheet = only.head + only.lines.filter((each) => each.includes('OUTLINE')).join('') + only.tail;
    const { findings, comparison } = await compare(sheet);
    expect([codesOf(findings), comparison]).toEqual([['returned-without-lines'], undefined]);
  });

  test('returned-too-crossed: hatching of thousands of lines both ways is refused', {
    tags: ['long'],
    timeout: 60_000,
  }, async () => {
    const lines = Array.from({ length: 3000 }, (_, i) => {
      const [x0, y0, x1, y1] = i % 2 === 0 ? [0, i / 30, 200, i / 30 + 20] : [i / 15, 0, i / 15 - 20, 120];
      return ` 0\nLINE\n 8\nSCRIBE-01\n 10\n${x0}\n 20\n${y0}\n 11\n${x1}\n 21\n${y1}\n`;
    });
    const text = ` 0\nSECTION\n 2\nENTITIES\n${lines.join('')} 0\nENDSEC\n 0\nEOF\n`;
    expect(codesOf((await compare(text)).findings)).toContain('returned-too-crossed');
  });

  test('a file that is no drawing is reported as any drawing is', async () => {
    const { findings, comparison } = await compare('hello');
    expect(comparison).toBeUndefined();
    expect(findings.some(({ severity }) => severity === 'stop')).toBe(true);
  });
});

describe('programs', () => {
  test('inches, increments, radii, whole circles and comments are followed', () => {
    const text = [
      'G17 G20 G91 (in, by increments)',
      'G0 X1 Y1',
      'G1 Z-0.1 F2',
      'G1 X1',
      'G3 X0 Y1 R0.5',
      'G1 X-1 ; back',
      'Y-1',
      'G0 Z0.1',
      'G0 X3',
      'G1 Z-0.1',
      'G2 I0.5 J0',
      'G0 Z0.1',
    ].join('\n');
    const { paths, findings } = readProgram(text);
    expect(findings).toEqual([]);
    expect(paths.map(({ closed, spans }) => [closed, spans.length])).toEqual([
      [true, 4],
      [true, 2],
    ]);
    expect(paths[0]?.spans[1]).toMatchObject({
      kind: 'arc',
      radius: expect.closeTo(12.7, 9),
      sweep: expect.closeTo(Math.PI, 9),
      center: { x: expect.closeTo(50.8, 9), y: expect.closeTo(38.1, 9) },
    });
  });

  test('program-word-unknown: an offset of the tool is reported, with its line', () => {
    const { findings } = readProgram('G21 G90\nG41 D1\nG0 X0 Y0\nG1 Z0\nG1 X5\nG1 X5 Y5\nG1 X0 Y0');
    expect(findings).toMatchObject([
      { code: 'program-word-unknown', facts: { word: 'G41' }, place: { line: 2 } },
    ]);
  });

  test('program-without-lines: nothing but travel', () => {
    expect(codesOf(readProgram('G0 X1 Y2\nM2').findings)).toEqual(['program-without-lines']);
  });
});
