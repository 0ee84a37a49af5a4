/** The clock of the run, kept in the browser under the plan's hash; it ticks while the part is in the bath. */
import { useEffect, useMemo, useState } from 'react';
import { NO_CLOCK, stageInBath, type TankClock } from '#app/state/tank/tank-clock.ts';
import { sha256Of } from '#run/sha256-of.ts';
import { useKept } from './use-kept.ts';

/** ms */
const TICK = 250;

export interface ClockInHand {
  readonly clock: TankClock;
  readonly setClock: (next: TankClock) => void;
  /** ms since 1970. */
  readonly now: number;
}

export function useTankClock(planText: string): ClockInHand {
  const name = useMemo(() => `isobath-clock ${sha256Of(planText)}`, [planText]);
  const [clock, setClock] = useKept<TankClock>(name, NO_CLOCK);
  const [now, setNow] = useState(Date.now);
  const isRunning = stageInBath(clock) !== undefined;
  useEffect(() => {
    setNow(Date.now());
    if (!isRunning) return undefined;
    const ticking = setInterval(() => setNow(Date.now()), TICK);
    return () => clearInterval(ticking);
  }, [isRunning]);
  return { clock, setClock, now };
}
