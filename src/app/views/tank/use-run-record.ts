/** The record of the run of one plan, kept in the browser under the plan's hash, and what it comes to. */
import { useMemo, useState } from 'react';
import { NO_READINGS, type RunReadings, resultOf, type Taken } from '#app/state/tank/run-readings.ts';
import type { CorrectResult } from '#run/correct-run.ts';
import { sha256Of } from '#run/sha256-of.ts';
import { useKept } from './use-kept.ts';

export interface RunRecord {
  readonly run: RunReadings;
  /** Undefined before the first row. */
  readonly result: CorrectResult | undefined;
  /** Keeps a record that has grown. */
  readonly keep: (taken: Taken) => void;
  /** Takes a record from elsewhere in place of this one. */
  readonly replace: (run: RunReadings) => void;
}

export function useRunRecord(planText: string): RunRecord {
  const name = useMemo(() => `isobath-run ${sha256Of(planText)}`, [planText]);
  const [run, setRun] = useKept<RunReadings>(name, NO_READINGS);
  const [result, setResult] = useState(() => resultOf(run, planText));
  return {
    run,
    result,
    keep: (taken) => {
      setRun(taken.run);
      setResult(taken.result);
    },
    replace: (next) => {
      setRun(next);
      setResult(resultOf(next, planText));
    },
  };
}
