import { describe, expect, it } from 'vitest';
import { printable } from '#cli/printable.ts';
import { progressLine } from '#cli/progress-line.ts';
import { findingLine } from '#cli/show-findings.ts';
import type { Terminal } from '#cli/terminal.ts';
import { finding } from '#findings/finding.ts';

function watchedTerminal(): { terminal: Terminal; written: string[]; at: (milliseconds: number) => void } {
  const written: string[] = [];
  let now = 0;
  const terminal: Terminal = {
    out: () => {},
    error: (text) => written.push(text),
    outColor: false,
    errorColor: false,
    watched: true,
    columns: 40,
    milliseconds: () => now,
  };
  return {
    terminal,
    written,
    at: (milliseconds) => {
      now = milliseconds;
    },
  };
}

describe('what a terminal is reported', () => {
  it('says nothing about runs under half a second', () => {
    const { terminal, written, at } = watchedTerminal();
    const line = progressLine(terminal);
    line.report(0.1, 'reading');
    at(499);
    line.report(0.9, 'writing');
    line.clear();
    expect(written).toEqual([]);
  });

  it('shows one line from then on, and wipes it', () => {
    const { terminal, written, at } = watchedTerminal();
    const line = progressLine(terminal);
    at(600);
    line.report(0.25, 'finding the regions');
    at(650);
    line.report(0.3, 'too soon to show again');
    line.clear();
    expect(written).toEqual(['\r\u001b[K 25 %  finding the regions', '\r\u001b[K']);
  });

  it('never shows progress to a file or a pipe', () => {
    const { terminal, written, at } = watchedTerminal();
    const line = progressLine({ ...terminal, watched: false });
    at(5000);
    line.report(0.5, 'anything');
    line.clear();
    expect(written).toEqual([]);
  });

  it('puts a finding on one line with code, remedy and place, whatever a file name holds', () => {
    const line = findingLine(
      finding('file-empty', { file: 'a\nb\u001b[31m.dxf' }, { path: 'drawing', line: 3 }),
    );
    expect(line).toBe(
      'stop file-empty: a b [31m.dxf is empty (0 bytes). Copy or request the file again: the transfer was probably interrupted. [drawing; job line 3]',
    );
  });

  it('names eight of the regions that a finding is about, and reports how many more there are', () => {
    const regions = Array.from({ length: 1600 }, (_, index) => `R${index + 1}`);
    const lineOf = (count: number): string =>
      findingLine(finding('file-empty', { file: 'a.dxf' }, { regions: regions.slice(0, count) }));
    expect(lineOf(8)).toContain('[R1 R2 R3 R4 R5 R6 R7 R8]');
    expect(lineOf(9)).toContain('[R1 R2 R3 R4 R5 R6 R7 R8 and 1 more]');
    expect(lineOf(1600)).toContain('R8 and 1592 more]');
  });

  it('leaves letters of every script alone', () => {
    expect(printable('Ø 3 µm – Höhe, 深さ')).toBe('Ø 3 µm – Höhe, 深さ');
  });
});
