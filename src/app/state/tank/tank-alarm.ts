/** What must be reported first at the tank: a part that is in too long, then what the readings say, the most serious alone. */
import { type Finding, hasStop } from '#findings/finding.ts';
import type { Severity } from '#findings/severity.ts';
import type { StageAim } from './stage-aim.ts';

export interface TankAlarm {
  readonly severity: Exclude<Severity, 'note'>;
  /** What to do about it: take the part out, or look at what the readings say. */
  readonly action: 'out' | 'readings' | 'result';
  /** Minutes past when it should have come out: past its gauging, or past the end of the stage once that has come; undefined of a finding. */
  readonly past?: number;
  readonly pastWhat?: 'gauging' | 'end';
  readonly finding?: Finding;
  /** Findings as serious, beside this one. */
  readonly more: number;
}

/** Minutes after which a part that should be out is reported. */
const LATE = 0.05;

export function tankAlarm(
  now: { readonly isIn: boolean; readonly had: number; readonly aim: StageAim },
  findings: readonly Finding[],
): TankAlarm | undefined {
  const { had, aim } = now;
  if (now.isIn && had - aim.outAt > LATE) {
    if (had <= aim.minutes) {
      return { severity: 'warn', action: 'out', past: had - aim.outAt, pastWhat: 'gauging', more: 0 };
    }
    return { severity: 'stop', action: 'out', past: had - aim.minutes, pastWhat: 'end', more: 0 };
  }
  const serious = findings.filter(({ severity }) => severity !== 'note');
  const same = hasStop(serious) ? serious.filter(({ severity }) => severity === 'stop') : serious;
  const [finding] = same;
  if (finding === undefined || finding.severity === 'note') return undefined;
  const isReading = finding.code.startsWith('reading');
  return {
    severity: finding.severity,
    action: isReading ? 'readings' : 'result',
    finding,
    more: same.length - 1,
  };
}
