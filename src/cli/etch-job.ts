/** Plans the job that a command asks about, and gives its part to ask places and minutes of. */
import type { Finding } from '#findings/finding.ts';
import { type EtchedPart, etchedPart } from '#run/etched-part.ts';
import { runJob } from '#run/run-job.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { nodeSha256 } from './node-sha256.ts';
import { optimizeLate } from './optimize-late.ts';
import { progressLine } from './progress-line.ts';
import { readJobInput } from './read-job-input.ts';
import type { Terminal } from './terminal.ts';

export interface EtchedJob {
  readonly part: EtchedPart;
  readonly findings: readonly Finding[];
  /** mm: where the part's frame has its origin in the drawing's own. */
  readonly origin: { readonly x: number; readonly y: number };
  /** Millimetres in the drawing's unit. */
  readonly unit: number;
  /** Paths that were read. */
  readonly paths: readonly string[];
}

export async function etchJob(
  job: string,
  terminal: Terminal,
): Promise<EtchedJob | { readonly refused: readonly Finding[] }> {
  optimizeLate();
  const input = readJobInput(job);
  if ('refused' in input) return input;
  const progress = progressLine(terminal);
  const { plan, planFile, drawing, kit, farKit, thickness, findings } = await runJob(input, {
    progress: progress.report,
    sha256: nodeSha256,
    withoutFiles: true,
  }).finally(progress.clear);
  if (plan === undefined || planFile === undefined || kit === undefined || thickness === undefined)
    return { refused: findings };
  return {
    part: etchedPart(plan, thickness, kit, farKit),
    findings,
    origin: drawing?.origin ?? { x: 0, y: 0 },
    unit: millimetresIn(planFile.drawing.unit as LengthUnit),
    paths: input.paths,
  };
}
