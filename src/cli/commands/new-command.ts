/** `isobath new DRAWING.dxf`: begins a job from its drawing, and says what is still to be decided. */
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { newJobText } from '#cli/new-job-text.ts';
import { readInput } from '#cli/read-input.ts';
import { readNumber } from '#cli/read-number.ts';
import { readUnit } from '#cli/read-unit.ts';
import type { Terminal } from '#cli/terminal.ts';
import { writeText } from '#cli/write-files.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { newJob } from '#run/new-job.ts';
import { MOST_DRAWING_BYTES } from '#run/run-limits.ts';

export interface NewArguments {
  readonly drawing: string;
  readonly out?: string | undefined;
  readonly unit?: string | undefined;
  readonly notes?: string | undefined;
  readonly notePrefix: string;
  readonly thickness?: string | undefined;
  readonly alloy?: string | undefined;
  readonly bath?: string | undefined;
  readonly json: boolean;
}

export function newCommand(given: NewArguments, terminal: Terminal): CommandEnd {
  const unit = readUnit('--unit', given.unit);
  if ('refused' in unit) return refused(unit.refused);
  const notes = readNotes(given.notes);
  if (typeof notes === 'object') return refused(notes);
  const thickness = readThickness(given.thickness);
  if (typeof thickness === 'object') return refused(thickness);
  const path = resolve(given.drawing);
  const out = resolve(given.out ?? join(dirname(path), `${basename(path).replace(/\.dxf$/i, '')}.job.json`));
  if (existsSync(out)) return refused(finding('out-already-there', { file: given.out ?? out }));
  const read = readInput(given.drawing, { path, most: MOST_DRAWING_BYTES });
  if ('refused' in read) return refused(read.refused);
  const { alloy, bath, notePrefix } = given;
  const begun = newJob({
    drawingName: basename(path),
    drawingBytes: read.bytes,
    unit: unit.value,
    notes,
    notePrefix,
    alloy,
    bath,
    thickness,
  });
  const { jobFile, findings } = begun;
  if (jobFile === undefined) return { exitCode: 2, findings };
  const outcome = writeText(out, `${JSON.stringify(jobFile, undefined, 2)}\n`, [path]);
  if ('refused' in outcome) return refused(outcome.refused);
  if (!given.json) terminal.out(newJobText({ ...begun, jobFile }, { file: out, color: terminal.outColor }));
  return { exitCode: 0, findings, record: { file: out, job: jobFile } };
}

function readNotes(text: string | undefined): 'depth' | 'thickness' | undefined | Finding {
  if (text === undefined || text === 'depth' || text === 'thickness') return text;
  const expected = '"depth" if the figures are depths, "thickness" if they are final thicknesses';
  return finding('option-value-wrong', { option: '--notes', found: text, expected });
}

function readThickness(text: string | undefined): number | undefined | Finding {
  if (text === undefined) return undefined;
  const value = readNumber(text);
  if (value !== undefined && value > 0) return value;
  const expected = 'the thickness of the sheet, above 0: 4.06';
  return finding('option-value-wrong', { option: '--thickness', found: text, expected });
}
