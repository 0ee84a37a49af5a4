import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type WriteOrder, writeFiles } from '#cli/write-files.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
let home = '';
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'isobath-write-'));
});
afterEach(() => rmSync(home, { recursive: true }));

function order(special: Partial<WriteOrder> = {}): WriteOrder {
  const files = [
    { name: 'plan.json', bytes: bytes('plan') },
    { name: 'scribe.dxf', bytes: bytes('lines') },
  ];
  return { folder: join(home, 'out'), files, stale: () => [], inputs: [], ...special };
}

const codeOf = (outcome: ReturnType<typeof writeFiles>): string | undefined =>
  'refused' in outcome ? outcome.refused.code : undefined;

/** A change of `scribe.svg` by a process that runs (this one's parent), `scribe.svg` set aside. */
function beginElsewhere(at: Date): void {
  const changing = join(home, 'out', '.isobath-writing');
  for (const part of ['new', 'old']) mkdirSync(join(changing, part), { recursive: true });
  writeFileSync(join(changing, 'new', 'scribe.svg'), 'new');
  writeFileSync(join(changing, 'old', 'scribe.svg'), 'old');
  const manifest = join(changing, `set-${process.ppid}.json`);
  writeFileSync(manifest, JSON.stringify(['scribe.svg']));
  utimesSync(manifest, at, at);
}

describe('files are written whole or not at all', () => {
  it('makes the folder and leaves nothing beside the files', () => {
    expect(writeFiles(order({ folder: join(home, 'a', 'b') }))).toEqual({
      replaced: [],
      removed: [],
      findings: [],
    });
    expect(readdirSync(join(home, 'a', 'b')).sort()).toEqual(['plan.json', 'scribe.dxf']);
  });

  it('writes a file of several pieces as they come; one that fails half-way leaves nothing', () => {
    const pieces = () => ['facet ', '', 'normal'].map(bytes);
    writeFiles(order({ files: [{ name: 'etched-part.stl', bytes: { pieces } }] }));
    expect(readFileSync(join(home, 'out', 'etched-part.stl'), 'utf8')).toBe('facet normal');
    function* broken() {
      yield bytes('facet ');
      throw new Error('no more');
    }
    const half = { name: 'etched-part.stl', bytes: { pieces: broken } };
    expect(codeOf(writeFiles(order({ files: [half] })))).toBe('out-not-writable');
    expect(readdirSync(join(home, 'out'))).toEqual(['etched-part.stl']);
    expect(readFileSync(join(home, 'out', 'etched-part.stl'), 'utf8')).toBe('facet normal');
  });

  it('replaces the files of an earlier run and leaves strangers alone', () => {
    writeFiles(order());
    writeFileSync(join(home, 'out', 'letter.txt'), 'keep');
    writeFiles(order({ files: [{ name: 'plan.json', bytes: bytes('new') }] }));
    expect(readFileSync(join(home, 'out', 'plan.json'), 'utf8')).toBe('new');
    expect(readdirSync(join(home, 'out')).sort()).toEqual(['letter.txt', 'plan.json', 'scribe.dxf']);
  });

  it('takes away a cut file that no longer belongs to the plan, and says so', () => {
    writeFiles(order());
    const outcome = writeFiles(
      order({ files: [{ name: 'plan.json', bytes: bytes('stopped') }], stale: () => ['scribe.dxf'] }),
    );
    expect(outcome).toEqual({ replaced: ['plan.json'], removed: ['scribe.dxf'], findings: [] });
    expect(readdirSync(join(home, 'out'))).toEqual(['plan.json']);
  });

  it('out-not-a-folder: a file stands where the folder should be', () => {
    writeFileSync(join(home, 'out'), 'a file');
    expect(codeOf(writeFiles(order()))).toBe('out-not-a-folder');
    expect(codeOf(writeFiles(order({ folder: join(home, 'out', 'deeper') })))).toBe('out-not-a-folder');
    expect(readFileSync(join(home, 'out'), 'utf8')).toBe('a file');
  });

  it('out-not-writable: a folder stands where a file should be, and nothing else is written', () => {
    mkdirSync(join(home, 'out', 'scribe.dxf'), { recursive: true });
    expect(codeOf(writeFiles(order()))).toBe('out-not-writable');
    expect(readdirSync(join(home, 'out'))).toEqual(['scribe.dxf']);
  });

  it.skipIf(process.getuid?.() === 0)('out-not-writable: the folder allows no writing', () => {
    mkdirSync(join(home, 'out'));
    chmodSync(join(home, 'out'), 0o500);
    expect(codeOf(writeFiles(order()))).toBe('out-not-writable');
    chmodSync(join(home, 'out'), 0o700);
    expect(readdirSync(join(home, 'out'))).toEqual([]);
  });

  it('out-not-writable: a name longer than any disk takes; folders made for it are gone again', () => {
    expect(codeOf(writeFiles(order({ folder: join(home, 'made', 'x'.repeat(300)) })))).toBe(
      'out-not-writable',
    );
    const files = [{ name: 'y'.repeat(300), bytes: bytes('') }];
    expect(codeOf(writeFiles(order({ folder: join(home, 'made', 'again'), files })))).toBe(
      'out-not-writable',
    );
    expect(existsSync(join(home, 'made', 'again'))).toBe(false);
  });

  it('out-in-use: another run is putting its files in place', () => {
    writeFiles(order());
    beginElsewhere(new Date());
    expect(codeOf(writeFiles(order({ files: [{ name: 'plan.json', bytes: bytes('new') }] })))).toBe(
      'out-in-use',
    );
    expect(readFileSync(join(home, 'out', 'plan.json'), 'utf8')).toBe('plan');
  });

  it('out-put-back: a change begun long ago has stopped, though its process number lives on', () => {
    writeFiles(order());
    beginElsewhere(new Date(Date.now() - 300_000));
    const outcome = writeFiles(order({ stale: () => ['scribe.svg'] }));
    expect('findings' in outcome && outcome.findings.map(({ code }) => code)).toEqual(['out-put-back']);
    // The drawing that the other run had set aside came back, and was then taken away as stale.
    expect('removed' in outcome && outcome.removed).toEqual(['scribe.svg']);
    expect(readdirSync(join(home, 'out')).sort()).toEqual(['plan.json', 'scribe.dxf']);
  });

  it('a temporary file of an earlier version is no fault', () => {
    mkdirSync(join(home, 'out'));
    writeFileSync(join(home, 'out', `plan.json.${process.pid}.tmp`), 'left');
    expect(codeOf(writeFiles(order()))).toBeUndefined();
  });

  it('out-over-input: the drawing itself lies where a result would go, also by way of a link', () => {
    mkdirSync(join(home, 'out'));
    const drawing = join(home, 'out', 'scribe.dxf');
    writeFileSync(drawing, 'original');
    expect(codeOf(writeFiles(order({ inputs: [drawing] })))).toBe('out-over-input');
    symlinkSync(join(home, 'out'), join(home, 'link'));
    expect(codeOf(writeFiles(order({ folder: join(home, 'link'), inputs: [drawing] })))).toBe(
      'out-over-input',
    );
    expect(codeOf(writeFiles(order({ files: [], stale: () => ['scribe.dxf'], inputs: [drawing] })))).toBe(
      'out-over-input',
    );
    expect(readFileSync(drawing, 'utf8')).toBe('original');
  });
});
