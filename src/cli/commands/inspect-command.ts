/** `isobath inspect DRAWING.dxf`: what a drawing holds and what is wrong with it, before there is a job. */
import { resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { inspectionText } from '#cli/inspection-text.ts';
import { progressLine } from '#cli/progress-line.ts';
import { readInput } from '#cli/read-input.ts';
import { readUnit } from '#cli/read-unit.ts';
import type { Terminal } from '#cli/terminal.ts';
import { hasStop } from '#findings/finding.ts';
import { inspectDrawing } from '#run/inspect-drawing.ts';
import { MOST_DRAWING_BYTES } from '#run/run-limits.ts';

export interface InspectArguments {
  readonly drawing: string;
  readonly json: boolean;
  readonly notePrefix: string;
  /** The unit that the drawing is drawn in, whatever it says itself. */
  readonly unit?: string | undefined;
}

export async function inspectCommand(
  { drawing, json, notePrefix, unit }: InspectArguments,
  terminal: Terminal,
): Promise<CommandEnd> {
  const known = readUnit('--unit', unit);
  if ('refused' in known) return refused(known.refused);
  const read = readInput(drawing, { path: resolve(drawing), most: MOST_DRAWING_BYTES });
  if ('refused' in read) return refused(read.refused);
  const progress = progressLine(terminal);
  const { findings, ...inspection } = await inspectDrawing(read.bytes, {
    progress: progress.report,
    notePrefix,
    unit: known.value,
  }).finally(progress.clear);
  if (!json) terminal.out(inspectionText(inspection, terminal.outColor));
  return { exitCode: hasStop(findings) ? 2 : 0, findings, record: { ...inspection } };
}
