/** Where the plan stands, for the chip at the top of the window: shape, words, and the details behind them. */
import { counted } from '#findings/counted.ts';
import { type Finding, sortFindings } from '#findings/finding.ts';
import type { Severity } from '#findings/severity.ts';
import type { Derived } from './workbench-state.ts';

export type StandingKind = Severity | 'ready' | 'busy' | 'waiting';

export interface Standing {
  readonly kind: StandingKind;
  readonly words: string;
}

export function standingOf(
  { page, isStale, progress, failure }: Pick<Derived, 'page' | 'isStale' | 'progress' | 'failure'>,
  hasDrawing: boolean,
  questions = 0,
): Standing {
  if (failure !== undefined) return { kind: 'stop', words: 'planning failed' };
  if (!hasDrawing) return { kind: 'waiting', words: 'no drawing' };
  if (questions > 0) return { kind: 'waiting', words: `${counted(questions, 'question')} left` };
  if (progress !== undefined)
    return { kind: 'busy', words: `planning, ${Math.round(100 * progress.share)} %` };
  if (isStale) return { kind: 'busy', words: 'out of date' };
  const { stops, warnings } = bySeverity(page?.findings ?? []);
  if (stops.length > 0) return { kind: 'stop', words: counted(stops.length, 'stop') };
  if (page?.plan === undefined || page.plan.stages.length === 0)
    return { kind: 'waiting', words: 'no plan yet' };
  if (!page.isJudged) return { kind: 'busy', words: 'not checked yet' };
  if (warnings.length > 0) return { kind: 'warn', words: counted(warnings.length, 'warning') };
  if (!page.isWhole) return { kind: 'busy', words: 'writing the files' };
  return { kind: 'ready', words: 'ready to hand off' };
}

/** Stops and warnings apart, each in the order of the list; notes are counted only. */
export function bySeverity(findings: readonly Finding[]) {
  const sorted = sortFindings(findings);
  const of = (wanted: Severity) => sorted.filter(({ severity }) => severity === wanted);
  return { stops: of('stop'), warnings: of('warn'), notes: of('note') };
}

/** "2 stops, 1 warning, 3 notes", without what there is none of. */
export function findingWords(findings: readonly Finding[]): string {
  const { stops, warnings, notes } = bySeverity(findings);
  const parts = [
    [stops.length, 'stop'],
    [warnings.length, 'warning'],
    [notes.length, 'note'],
  ] as const;
  const said = parts.flatMap(([count, name]) => (count === 0 ? [] : [counted(count, name)]));
  return said.length === 0 ? 'none' : said.join(', ');
}
