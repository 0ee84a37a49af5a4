/** The clock: immersed minutes from the first dip to the end, with the stages to scale; sheet and section show its minute. */

import { ChevronLast, SkipBack, SkipForward } from 'lucide-react';
import { wordsOn } from '#app/scene/stage-looks.ts';
import { runEnd } from '#app/state/run-end.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import { showMinutes } from '#units/show-length.ts';
import { IconButton } from './controls/IconButton.tsx';
import { scaleTicks } from './ladder/ladder-layout.ts';
import { StageMark } from './StageMark.tsx';
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

/** Steps a minute: each is 3 µm of metal at the usual rate. */
const STEPS = 10;
const STEP = 1 / STEPS;
/** Share of the clock that a stage must have for its number, and for its mark too. */
const ROOM = { number: 0.03, mark: 0.1 };

export function ClockView() {
  const { actions } = useWorkbench();
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const wanted = useWorkbenchState((state) => state.session.minute);
  const litStage = useWorkbenchState((state) => state.lit?.stage);
  const end = plan === undefined ? 0 : runEnd(plan);
  if (plan === undefined || end === 0) return null;
  const minute = Math.min(wanted ?? end, end);
  // The step that holds the end, in tenths so that no rounding falls short of it.
  const last = Math.ceil(end * STEPS) / STEPS;
  const words = clockWords(plan, wanted === undefined ? undefined : minute);
  const now = stageAt(plan, minute);
  return (
    <section className={isStale ? 'clock stale' : 'clock'} aria-label="Clock">
      <div className="clock-words">
        <strong>{showMinutes(minute)}</strong>
        <span title={words}>{wanted === undefined ? words : shortWords(now)}</span>
      </div>
      <div
        className="clock-track"
        onPointerMove={({ clientX, currentTarget }) => {
          const { left, width } = currentTarget.getBoundingClientRect();
          const pointed = stageAt(plan, (end * (clientX - left)) / width);
          if (pointed !== undefined && pointed.number !== litStage)
            actions.light({ regions: pointed.regions, stage: pointed.number });
        }}
        onPointerLeave={() => actions.light(undefined)}
      >
        <div className="clock-stages" aria-hidden="true">
          {plan.stages.map((stage) => (
            <ClockStage
              key={stage.number}
              stage={stage}
              from={stage.startMinute / end}
              share={stage.minutes / end}
              isNow={stage === now && wanted !== undefined}
            />
          ))}
        </div>
        <input
          type="range"
          min={0}
          max={last}
          step={STEP}
          value={wanted === undefined ? last : minute}
          aria-label="Immersed minutes"
          aria-valuetext={`${showMinutes(minute)}, ${words}`}
          onChange={({ target }) => actions.turnClock(Number(target.value))}
        />
        <div className="clock-scale" aria-hidden="true">
          {scaleTicks(end, MOST_TICKS)
            .filter((tick) => tick < end * (1 - 0.25 / MOST_TICKS))
            .map((tick) => (
              <span key={tick} style={{ left: `${(100 * tick) / end}%` }}>
                {Number(tick.toPrecision(4))}
              </span>
            ))}
        </div>
      </div>
      <span className="clock-steps">
        <IconButton
          icon={SkipBack}
          name="stage before"
          onPress={() => actions.turnClock(stepBack(plan, minute))}
        />
        <IconButton
          icon={SkipForward}
          name="next stage"
          isDisabled={wanted === undefined}
          onPress={() => actions.turnClock(stepOn(plan, minute))}
        />
        <IconButton
          icon={ChevronLast}
          name="end"
          isDisabled={wanted === undefined}
          onPress={() => actions.turnClock(undefined)}
        />
      </span>
    </section>
  );
}

/** As many figures as the clock's scale has room for. */
const MOST_TICKS = 12;

function shortWords(now: ShownStage | undefined): string {
  return now === undefined ? 'before the first dip' : `in stage ${now.number}`;
}

interface ClockStageProps {
  readonly stage: ShownStage;
  readonly from: number;
  readonly share: number;
  readonly isNow: boolean;
}

/** Placed by its minutes, so that it stands over the scale to the pixel. */
function ClockStage({ stage, from, share, isNow }: ClockStageProps) {
  const isLit = useWorkbenchState(({ lit }) => lit?.stage === stage.number);
  const { number, color } = stage;
  return (
    <span
      className={`${isNow ? 'now' : ''}${isLit ? ' lit' : ''}`}
      style={{
        left: `${100 * from}%`,
        width: `calc(${100 * share}% - 2px)`,
        background: color,
        color: wordsOn(color),
      }}
    >
      {share >= ROOM.number && number}
      {share >= ROOM.mark && <StageMark stage={number} />}
    </span>
  );
}

/** The stage whose bath that is; at a boundary the one that goes in. */
export function stageAt({ stages }: ShownPlan, minute: number): ShownStage | undefined {
  return stages.findLast((stage) => stage.startMinute <= minute + ROUNDING);
}

function stepBack({ stages }: ShownPlan, minute: number): number {
  return stages.findLast((stage) => stage.startMinute < minute - STEP / 2)?.startMinute ?? 0;
}

function stepOn({ stages }: ShownPlan, minute: number): number | undefined {
  return stages.find((stage) => stage.startMinute > minute + STEP / 2)?.startMinute;
}

function clockWords(plan: ShownPlan, minute: number | undefined): string {
  if (minute === undefined)
    return plan.sizing === undefined
      ? 'end of the run'
      : `end of the run, ${showMinutes(plan.sizing.minutes)} of sizing before it`;
  const stage = stageAt(plan, minute);
  if (stage === undefined) return 'before the first dip';
  if (plan.masking === 're-mask')
    return `stage ${stage.number} in the bath: its window bare, all else coated`;
  const bare = plan.stages.slice(0, plan.stages.indexOf(stage) + 1).map(({ number }) => number);
  const peeled = bare.length === 1 ? `piece ${listOf(bare)} bare` : `pieces ${listOf(bare)} bare`;
  const { sealed } = stage;
  const rest =
    sealed.length === 0
      ? 'nothing sealed any more'
      : `${sealed.length === 1 ? 'line of stage' : 'lines of stages'} ${listOf(sealed)} sealed`;
  return `stage ${stage.number} in the bath: ${peeled}, ${rest}`;
}

function listOf(numbers: readonly number[]): string {
  return numbers.length < 5 ? numbers.join(', ') : `${numbers[0]} to ${numbers.at(-1)}`;
}
