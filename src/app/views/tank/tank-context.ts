/** What the parts of the tank page share: the plan, the stage on show, the clock, the record, and who is at work. */
import { createContext, useContext } from 'react';
import type { StageStep } from '#app/state/stage-steps.ts';
import type { StageAim } from '#app/state/tank/stage-aim.ts';
import type { StageClock, TankClock, TankStep } from '#app/state/tank/tank-clock.ts';
import { assert } from '#geometry/assert.ts';
import type { ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import type { ShownUnit } from '#units/show-length.ts';
import type { RunRecord } from './use-run-record.ts';

export interface Hand {
  readonly who: string;
  readonly gauge: string;
}

export type TankTab = 'readings' | 'result' | 'factor' | 'rework';

/** What a reading is taken of. */
export interface GaugeAt {
  /** 0 before the first dip. */
  readonly stage: number;
  readonly region: string;
}

export interface Tank {
  readonly plan: ShownPlan;
  readonly planText: string;
  readonly job: JobFile;
  /** The job's: lengths are shown in it, whatever the workbench reads in. */
  readonly unit: ShownUnit;
  readonly steps: readonly StageStep[];
  readonly index: number;
  readonly step: StageStep;
  readonly stage: ShownStage;
  /** Regions that are etched in this stage. */
  readonly floors: readonly ShownRegion[];
  readonly record: RunRecord;
  readonly clock: TankClock;
  readonly setClock: (next: TankClock) => void;
  readonly now: number;
  /** Of the stage on show. */
  readonly own: StageClock;
  /** Minutes that it had, by the clock or by the record, whichever is more. */
  readonly had: number;
  /** Numbers of the stages that run by the clock. */
  readonly byClock: ReadonlySet<number>;
  readonly aim: StageAim;
  readonly goTo: (step: TankStep) => void;
  readonly showStage: (index: number) => void;
  readonly hand: Hand;
  readonly setHand: (hand: Hand) => void;
  readonly gaugeAt: GaugeAt;
  readonly setGaugeRegion: (region: string) => void;
  readonly tab: TankTab;
  readonly setTab: (tab: TankTab) => void;
}

export const TankContext = createContext<Tank | undefined>(undefined);

export function useTank(): Tank {
  const tank = useContext(TankContext);
  assert(tank !== undefined, 'the parts of the tank page stand inside it');
  return tank;
}
