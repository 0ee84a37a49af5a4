/** `isobath section JOB.json --from X,Y --to X,Y`: the front along a line, as CSV in millimetres. */
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { etchJob } from '#cli/etch-job.ts';
import { columnsOf, farColumns } from '#cli/far-columns.ts';
import { giveRows } from '#cli/give-rows.ts';
import { readMinutes, readPoint, readSamples } from '#cli/read-number.ts';
import type { Terminal } from '#cli/terminal.ts';
import { finding } from '#findings/finding.ts';
import { sectionOf } from '#run/section-job.ts';

export interface SectionArguments {
  readonly job: string;
  readonly from: string;
  readonly to: string;
  readonly minutes?: string | undefined;
  readonly samples?: string | undefined;
  readonly out?: string | undefined;
  readonly json: boolean;
}

const COLUMNS = ['distance', 'x', 'y', 'depth', 'target', 'thickness', 'stage'];

export async function sectionCommand(asked: SectionArguments, terminal: Terminal): Promise<CommandEnd> {
  const from = readPoint('--from', asked.from);
  const to = readPoint('--to', asked.to);
  const minutes = readMinutes(asked.minutes);
  const samples = readSamples(asked.samples);
  const wrong = [from, to, minutes, samples].flatMap((each) => ('refused' in each ? [each.refused] : []));
  if ('refused' in from || 'refused' in to || 'refused' in minutes || 'refused' in samples) {
    return refused(...wrong);
  }
  const [[x0, y0], [x1, y1]] = [from.value, to.value];
  if (x0 === x1 && y0 === y1) return refused(finding('cut-without-length', { at: [x0, y0] }));

  const etched = await etchJob(asked.job, terminal);
  if ('refused' in etched) return refused(...etched.refused);
  const { part, findings, unit, paths, origin } = etched;
  const section = sectionOf(part, {
    from: { x: x0 * unit - origin.x, y: y0 * unit - origin.y },
    to: { x: x1 * unit - origin.x, y: y1 * unit - origin.y },
    minute: minutes.value,
    samples: samples.value,
  });
  if (!section.meetsMetal) {
    return refused(finding('cut-misses-sheet', { length: Math.hypot(x1 - x0, y1 - y0) * unit }));
  }
  const rows = section.points.map(({ distance, x, y, depth, target, thickness, stage, far }) => ({
    distance,
    x: x + origin.x,
    y: y + origin.y,
    depth,
    target,
    thickness,
    stage,
    ...farColumns(far),
  }));
  const { out, json } = asked;
  return giveRows({ columns: columnsOf(COLUMNS, part), rows, findings, inputs: paths, out, json }, terminal);
}
