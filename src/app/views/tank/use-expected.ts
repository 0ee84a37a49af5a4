/** What a floor should read by the plan and the readings so far, in the job's unit; undefined where nothing says it. */
import { useMemo } from 'react';
import { expectedOf } from '#app/state/tank/run-readings.ts';
import { showLength } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';
import { useUsualKind } from './use-usual-kind.ts';

interface ReadAt {
  readonly stage: number;
  readonly minutes: number | undefined;
  readonly region: string;
  readonly kind?: 'depth' | 'thickness';
}

export function useExpected({ stage, minutes, region, kind }: ReadAt): string | undefined {
  const { record, planText, unit } = useTank();
  const usual = useUsualKind();
  const { run } = record;
  const of = stage === 0 ? 'thickness' : (kind ?? usual);
  return useMemo(() => {
    if (region === '') return undefined;
    const mm = expectedOf(run, { stage, minutes, region, kind: of }, planText);
    return mm === undefined ? undefined : showLength(mm, unit);
  }, [run, stage, minutes, region, of, planText, unit]);
}
