/** Puts together what the parts of the tank page share. */
import { useEffect, useMemo, useState } from 'react';
import { stageSteps } from '#app/state/stage-steps.ts';
import { floorToGauge } from '#app/state/tank/gauge-floor.ts';
import { stageAim } from '#app/state/tank/stage-aim.ts';
import { bathMinutes, goToStep, stageClock, stageInHand } from '#app/state/tank/tank-clock.ts';
import { useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { itemAt } from '#geometry/assert.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { stagesByClock } from '#run/stages-by-clock.ts';
import type { Hand, Tank, TankTab } from './tank-context.ts';
import { useKept } from './use-kept.ts';
import { useRunRecord } from './use-run-record.ts';
import { useTankClock } from './use-tank-clock.ts';

const NOBODY: Hand = { who: '', gauge: '' };

interface TankOf {
  readonly plan: ShownPlan;
  readonly planText: string;
  readonly job: JobFile;
}

/** The plan has a stage at least. */
export function useTankOf({ plan, planText, job }: TankOf): Tank {
  const { mode } = useWorkbench();
  const wanted = useMode((state) => state.step);
  const steps = useMemo(() => stageSteps(plan), [plan]);
  const index = Math.min(wanted, steps.length - 1);
  const step = itemAt(steps, index);
  const { stage } = step;
  const record = useRunRecord(planText);
  const { clock, setClock, now } = useTankClock(planText);
  const [hand, setHand] = useKept<Hand>('isobath-at-the-tank', NOBODY);
  const [tab, setTab] = useState<TankTab>('readings');
  const floors = useMemo(
    () => plan.regions.filter(({ level }) => level > 0 && level >= stage.level),
    [plan, stage],
  );
  const byClock = useMemo(() => stagesByClock(plan), [plan]);
  const offered = useMemo(() => floorToGauge(floors), [floors]);
  const [chosen, setGaugeRegion] = useState<string>();
  // The stage that was in hand when the tablet was put down.
  const [first] = useState(() => firstStage(record.result?.readings, stageInHand(clock)));
  useEffect(() => {
    const at = steps.findIndex(({ stage: { number } }) => number === first);
    if (at >= 0) mode.setState({ step: at });
  }, [mode, steps, first]);
  const own = stageClock(clock, stage.number);
  const isSheet = own.step === 'sheet';
  const region = (isSheet ? plan.regions : floors).find(({ id }) => id === chosen) ?? offered;
  const corrected = record.result?.corrected;
  const recorded = corrected?.stages.find(({ number }) => number === stage.number)?.had ?? 0;
  return {
    plan,
    planText,
    job,
    unit: job.units ?? 'mm',
    steps,
    index,
    step,
    stage,
    floors,
    record,
    clock,
    setClock,
    now,
    own,
    byClock,
    had: Math.max(bathMinutes(own, now), recorded),
    aim: stageAim(stage, own, { corrected, byClock }),
    goTo: (to) => setClock(goToStep(clock, stage.number, to)),
    showStage: (at) => mode.setState({ step: at }),
    hand,
    setHand,
    gaugeAt: { stage: isSheet ? 0 : stage.number, region: region?.id ?? '' },
    setGaugeRegion,
    tab,
    setTab,
  };
}

function firstStage(
  readings: readonly { readonly stage: number }[] = [],
  begun: number | undefined,
): number | undefined {
  const numbers = [...readings.map(({ stage }) => stage), begun ?? 0];
  return Math.max(...numbers) > 0 ? Math.max(...numbers) : undefined;
}
