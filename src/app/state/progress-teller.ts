/** Tells of a run's progress once it has taken long enough to be worth a word, also when the run itself is silent. */
import type { Progress } from './workbench-state.ts';

/** Runs shorter than this pass without a word. */
const WORTH_A_WORD_MS = 500;

export interface ProgressTeller {
  readonly report: (share: number, what: string) => void;
  /** What is reported after this was on its way when the run ended: it is not told. */
  readonly end: () => void;
}

export function tellProgress(
  tell: (progress: Progress | undefined) => void,
  what = 'planning',
): ProgressTeller {
  let last: Progress = { share: 0, what };
  let state: 'quiet' | 'telling' | 'over' = 'quiet';
  const timer = setTimeout(() => {
    state = 'telling';
    tell(last);
  }, WORTH_A_WORD_MS);
  return {
    report: (share, now) => {
      last = { share, what: now };
      if (state === 'telling') tell(last);
    },
    end: () => {
      clearTimeout(timer);
      state = 'over';
      tell(undefined);
    },
  };
}
