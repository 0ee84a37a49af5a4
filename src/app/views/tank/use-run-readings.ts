/** The readings of the run of one plan, kept in the browser under the plan's hash: a tablet put down loses none. */
import { useCallback, useMemo, useState } from 'react';
import {
  correctedBy,
  NO_READINGS,
  type ReadingPut,
  type RunReadings,
  type Taken,
  takeReading,
} from '#app/state/run-readings.ts';
import { planHash } from '#run/review.ts';

export function useRunReadings(planText: string) {
  const key = useMemo(() => `isobath-run ${planHash(planText)}`, [planText]);
  const [taken, setTaken] = useState<Taken>(() => {
    const run = kept(key);
    return { run, corrected: correctedBy(run, planText), findings: [], isTaken: true };
  });
  const take = useCallback(
    (reading: ReadingPut): boolean => {
      const next = takeReading(taken.run, reading, planText);
      setTaken(next);
      if (next.isTaken) localStorage.setItem(key, JSON.stringify(next.run));
      return next.isTaken;
    },
    [taken, planText, key],
  );
  return { ...taken, take };
}

function kept(key: string): RunReadings {
  const text = localStorage.getItem(key);
  return text === null ? NO_READINGS : (JSON.parse(text) as RunReadings);
}
