/** How a command ended: what the process returns and what is still to be reported. */
import type { Finding } from '#findings/finding.ts';
import type { ShownUnit } from '#units/show-length.ts';

/** 0 done; 1 done, but the plan has a `stop`; 2 the input could not be used and nothing was written. */
export type ExitCode = 0 | 1 | 2;

export interface CommandEnd {
  readonly exitCode: ExitCode;
  readonly findings: readonly Finding[];
  /** What the command's own tables are in, and so its findings; millimetres where it is left out. */
  readonly unit?: ShownUnit;
  /** What `--json` prints beside the findings. */
  readonly record?: Readonly<Record<string, unknown>>;
}

/** The input could not be used. */
export function refused(...findings: readonly Finding[]): CommandEnd {
  return { exitCode: 2, findings };
}
