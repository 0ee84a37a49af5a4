/** Reports a run's progress once it has taken long enough to matter, also when the run itself reports nothing. */
import type { Progress } from './workbench-state.ts';

/** Runs shorter than this pass without a word. */
const WORTH_A_WORD_MS = 500;

export interface ProgressReporter {
  readonly report: (share: number, what: string) => void;
  /** What is reported after this was on its way when the run ended: it is not reported. */
  readonly end: () => void;
}

export function delayedReporter(
  notify: (progress: Progress | undefined) => void,
  what = 'planning',
): ProgressReporter {
  let last: Progress = { share: 0, what };
  let state: 'quiet' | 'reporting' | 'over' = 'quiet';
  const timer = setTimeout(() => {
    state = 'reporting';
    notify(last);
  }, WORTH_A_WORD_MS);
  return {
    report: (share, now) => {
      last = { share, what: now };
      if (state === 'reporting') notify(last);
    },
    end: () => {
      clearTimeout(timer);
      state = 'over';
      notify(undefined);
    },
  };
}
