/** Puts together what the parts of the tank page share. */
import { useEffect, useMemo, useState } from 'react';
import { stageSteps } from '#app/state/stage-steps.ts';
import { stageAim } from '#app/state/tank/stage-aim.ts';
import { bathMinutes, goToStep, stageClock, stageInHand } from '#app/state/tank/tank-clock.ts';
import { useMode, useWorkbench } from '#app/views/workbench-context.ts';
import { itemAt } from '#geometry/assert.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import type { GaugeAt, Hand, Tank, TankTab } from './tank-context.ts';
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
  const [chosen, setGaugeAt] = useState<GaugeAt>();
  // The stage that was in hand when the tablet was put down.
  const [first] = useState(() => firstStage(record.result?.readings, stageInHand(clock)));
  useEffect(() => {
    const at = steps.findIndex(({ stage: { number } }) => number === first);
    if (at >= 0) mode.setState({ step: at });
  }, [mode, steps, first]);
  const own = stageClock(clock, stage.number);
  const isOfStage = chosen !== undefined && (chosen.stage === 0 || chosen.stage === stage.number);
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
    had: bathMinutes(own, now),
    aim: stageAim(stage, own, record.result?.corrected),
    goTo: (to) => setClock(goToStep(clock, stage.number, to)),
    showStage: (at) => mode.setState({ step: at }),
    hand,
    setHand,
    gaugeAt: isOfStage ? chosen : { stage: stage.number, region: floors[0]?.id ?? '' },
    setGaugeAt,
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
