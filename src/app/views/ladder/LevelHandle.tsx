/**
 * The handle of a level: dragging it, or the arrow keys and Enter, moves the level. The move counts when it ends, as one
 * step; meanwhile the level shows whether its regions would still accept it.
 */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { isAccepted } from '#app/state/planned-levels.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';
import type { SideLevel } from './ladder-sides.ts';

/** A level as far as it is moved: one of the plan, or one of the job's list that came to no stage. */
export interface MovableLevel {
  readonly level: number;
  readonly name: string;
  /** Undefined where no region accepts it. */
  readonly planned: SideLevel | undefined;
}

interface LevelHandleProps {
  readonly movable: MovableLevel;
  readonly thickness: number;
  readonly yOf: (depth: number) => number;
  readonly bar: { readonly left: number; readonly right: number };
  /** It takes the focus: it was moved by keys, and is what was moved. */
  readonly takesFocus: boolean;
  readonly onMove: (to: number, how: 'keys' | 'pointer') => void;
  readonly onShow: (planned: SideLevel | undefined) => void;
  /** A press that moved nothing. */
  readonly onPick: () => void;
}

/** Levels move to round figures of the unit on show, about a fifth of the usual tolerance apart. With Page keys ten at a time, always the way of the key. */
const STEPS: Readonly<Record<ShownUnit, number>> = { mm: 0.01, in: 0.0005 };
const KEY_STEPS: Record<string, number> = { ArrowUp: -1, ArrowDown: 1, PageUp: -10, PageDown: 10 };

export function LevelHandle(props: LevelHandleProps) {
  const { movable, thickness, yOf, bar, takesFocus, onMove, onShow, onPick } = props;
  const { level, name, planned } = movable;
  const unit = useWorkbenchState((state) => state.session.unit);
  const [draft, setDraft] = useState<number>();
  const handle = useTakenFocus(takesFocus);
  const shown = draft ?? level;
  const step = STEPS[unit] * millimetresIn(unit);
  const bounded = (depth: number) => Math.min(thickness - step, Math.max(step, roundTo(step, depth)));

  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    setDraft(level);
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (draft === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const top = event.currentTarget.parentElement?.getBoundingClientRect().top ?? 0;
    setDraft(bounded((event.clientY - top - yOf(0)) / (yOf(1) - yOf(0))));
  };
  const finish = (how: 'keys' | 'pointer') => {
    setDraft(undefined);
    if (draft !== undefined && draft !== level) onMove(draft, how);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const steps = KEY_STEPS[event.key];
    if (steps !== undefined) {
      event.preventDefault();
      setDraft(bounded(shown + steps * step * Math.sign(yOf(1) - yOf(0))));
    }
    if (event.key === 'Enter') finish('keys');
    // What is undone first is the move under way.
    const isTakenBack = draft !== undefined && isUndo(event);
    if (isTakenBack) event.stopPropagation();
    if (isTakenBack || event.key === 'Escape') setDraft(undefined);
  };
  const isGood = planned !== undefined && isAccepted(planned, shown);
  return (
    <div
      ref={handle}
      className={isGood ? 'level-handle' : 'level-handle broken'}
      data-level={level}
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-orientation="vertical"
      aria-valuemin={step}
      aria-valuemax={thickness - step}
      aria-valuenow={shown}
      aria-valuetext={`${showLength(shown, unit)} deep${isGood ? '' : ', outside the tolerance of a region'}`}
      style={{ top: yOf(shown), left: bar.left, width: bar.right - bar.left + 4 }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        if (draft === level) onPick();
        finish('pointer');
      }}
      onPointerCancel={() => setDraft(undefined)}
      onKeyDown={onKeyDown}
      onFocus={() => onShow(planned)}
      onBlur={() => {
        finish('pointer');
        onShow(undefined);
      }}
      onPointerEnter={() => onShow(planned)}
      onPointerLeave={() => onShow(undefined)}
    >
      {draft !== undefined && <output className="level-draft">{showLength(shown, unit)}</output>}
    </div>
  );
}

function useTakenFocus(takesFocus: boolean) {
  const handle = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (takesFocus) handle.current?.focus();
  }, [takesFocus]);
  return handle;
}

function roundTo(step: number, depth: number): number {
  return toMillionth(Math.round(depth / step) * step);
}

function isUndo({ ctrlKey, metaKey, key }: KeyboardEvent): boolean {
  return (ctrlKey || metaKey) && key.toLowerCase() === 'z';
}
