/**
 * The handle of a level: dragging it, or the arrow keys and Enter, moves the level. The move counts when it ends, as one
 * step; meanwhile the level shows whether its regions would still accept it.
 */
import { type KeyboardEvent, type PointerEvent, useState } from 'react';
import { isAccepted } from '#app/state/planned-levels.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { showLength } from '#units/show-length.ts';
import type { SideLevel } from './ladder-sides.ts';

interface LevelHandleProps {
  readonly planned: SideLevel;
  readonly thickness: number;
  readonly yOf: (depth: number) => number;
  readonly bar: { readonly left: number; readonly right: number };
  readonly onMove: (to: number) => void;
  readonly onShow: (planned: SideLevel | undefined) => void;
  /** A press that moved nothing. */
  readonly onPick: () => void;
}

/** Levels move in steps of a hundredth of a millimetre: a fifth of the usual tolerance. With Page keys ten at a time, always the way of the key. */
const STEP = 0.01;
const KEY_STEPS: Record<string, number> = { ArrowUp: -1, ArrowDown: 1, PageUp: -10, PageDown: 10 };

export function LevelHandle({ planned, thickness, yOf, bar, onMove, onShow, onPick }: LevelHandleProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const [draft, setDraft] = useState<number>();
  const { level, number } = planned.stage;
  const shown = draft ?? level;
  const bounded = (depth: number) =>
    Math.min(thickness - STEP, Math.max(STEP, Number((Math.round(depth / STEP) * STEP).toFixed(4))));

  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    setDraft(level);
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (draft === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const top = event.currentTarget.parentElement?.getBoundingClientRect().top ?? 0;
    setDraft(bounded((event.clientY - top - yOf(0)) / (yOf(1) - yOf(0))));
  };
  const finish = () => {
    setDraft(undefined);
    if (draft !== undefined && draft !== level) onMove(draft);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const steps = KEY_STEPS[event.key];
    if (steps !== undefined) {
      event.preventDefault();
      setDraft(bounded(shown + steps * STEP * Math.sign(yOf(1) - yOf(0))));
    }
    if (event.key === 'Enter') finish();
    if (event.key === 'Escape') setDraft(undefined);
  };
  const isGood = isAccepted(planned, shown);
  return (
    <div
      className={isGood ? 'level-handle' : 'level-handle broken'}
      data-level={level}
      role="slider"
      tabIndex={0}
      aria-label={`Level of stage ${number}`}
      aria-orientation="vertical"
      aria-valuemin={STEP}
      aria-valuemax={thickness - STEP}
      aria-valuenow={shown}
      aria-valuetext={`${showLength(shown, unit)} deep${isGood ? '' : ', outside the tolerance of a region'}`}
      style={{ top: yOf(shown), left: bar.left, width: bar.right - bar.left + 4 }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        if (draft === level) onPick();
        finish();
      }}
      onPointerCancel={() => setDraft(undefined)}
      onKeyDown={onKeyDown}
      onFocus={() => onShow(planned)}
      onBlur={() => {
        finish();
        onShow(undefined);
      }}
      onPointerEnter={() => onShow(planned)}
      onPointerLeave={() => onShow(undefined)}
    >
      {draft !== undefined && <output className="level-draft">{showLength(shown, unit)}</output>}
    </div>
  );
}
