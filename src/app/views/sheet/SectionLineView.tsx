/**
 * The section line over the sheet, dragged at either end, or in its middle as a whole: regions below the line stay in
 * reach. Arrow keys move what is in focus, with Shift ten times as far. The line stays on its place of the part while the view
 * moves, without a render for each frame.
 */

import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, pointSeenAt, type ViewPose } from '#app/scene/view-pose.ts';
import { drawingOrigin } from '#app/state/region-targets.ts';
import { shownCut } from '#app/state/shown-cut.ts';
import type { SectionLine } from '#app/state/workbench-state.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { SHORTEST_SECTION } from '#geometry/tolerances.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';

interface SectionLineViewProps {
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

type Held = 'from' | 'to' | 'both';

const HANDLES: readonly { readonly held: Held; readonly name: string }[] = [
  { held: 'from', name: 'Start of the section line' },
  { held: 'to', name: 'End of the section line' },
  { held: 'both', name: 'Section line' },
];
const PIXELS_PER_KEY = 4;
const ARROWS: Record<string, Point> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

export function SectionLineView({ pose, size }: SectionLineViewProps) {
  const { store, actions } = useWorkbench();
  const cut = useWorkbenchState(shownCut);
  const isOpen = useWorkbenchState(
    ({ session }) => session.view === 'relief' && session.reliefView === 'cut',
  );
  const unit = useWorkbenchState((state) => state.session.unit);
  const origin = useWorkbenchState(drawingOrigin);
  const overlay = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (cut === undefined || size === undefined) return undefined;
    const draw = (now: ViewPose) => drawLine(overlay.current, cut, now, size);
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [pose, size, cut]);
  const moveBy = (held: Held, pixels: Point) => {
    const now = store.getState().session.cut;
    if (now === undefined || size === undefined) return;
    const next = movedLine(now, { held, pixels, pose: pose.getState(), size });
    if (next !== undefined) actions.cutAlong(next);
  };
  const grip = useGrip(moveBy);
  if (cut === undefined || size === undefined) return null;

  const onKeyDown = (held: Held) => (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (arrow === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const step = event.shiftKey ? 10 * PIXELS_PER_KEY : PIXELS_PER_KEY;
    moveBy(held, { x: arrow.x * step, y: arrow.y * step });
  };
  return (
    <div className={isOpen ? 'section-line open' : 'section-line'} ref={overlay}>
      <svg aria-hidden="true">
        <path className="casing" />
        <path className="core" />
      </svg>
      {HANDLES.map(({ held, name }) => (
        <button
          key={held}
          type="button"
          className={`cut-handle ${held}`}
          aria-label={`${name}, ${placeWords(cut, held, { unit, origin })}; arrow keys move it`}
          {...grip(held)}
          onKeyDown={onKeyDown(held)}
        >
          {held === 'both' ? '' : 'A'}
        </button>
      ))}
    </div>
  );
}

/** Pointer handlers that report how far the pointer moved since the last event. */
function useGrip(moveBy: (held: Held, pixels: Point) => void) {
  const last = useRef<Point>(undefined);
  const release = () => {
    last.current = undefined;
  };
  return (held: Held) => ({
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      last.current = { x: event.clientX, y: event.clientY };
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      const before = last.current;
      if (before === undefined || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
      last.current = { x: event.clientX, y: event.clientY };
      moveBy(held, { x: event.clientX - before.x, y: event.clientY - before.y });
    },
    onPointerUp: release,
    onPointerCancel: release,
  });
}

interface CutMove {
  readonly held: Held;
  readonly pixels: Point;
  readonly pose: ViewPose;
  readonly size: Size;
}

function movedLine(
  { from, to }: SectionLine,
  { held, pixels, pose, size }: CutMove,
): SectionLine | undefined {
  const moved = (point: Point) => {
    const { x, y } = pixelOf(pose, size, point);
    return pointSeenAt(pose, size, { x: x + pixels.x, y: y + pixels.y });
  };
  const next = { from: held === 'to' ? from : moved(from), to: held === 'from' ? to : moved(to) };
  return Math.hypot(next.to.x - next.from.x, next.to.y - next.from.y) < SHORTEST_SECTION ? undefined : next;
}

function placeWords(
  { from, to }: SectionLine,
  held: Held,
  { unit, origin }: { readonly unit: ShownUnit; readonly origin: Point },
): string {
  const words = (point: Point) => {
    const { x, y } = movePoint(point, origin);
    return `x ${lengthFigure(x, unit)} y ${lengthFigure(y, unit)} ${unit}`;
  };
  if (held === 'both') return `from ${words(from)} to ${words(to)}`;
  return words(held === 'from' ? from : to);
}

function drawLine(overlay: HTMLElement | null, { from, to }: SectionLine, pose: ViewPose, size: Size): void {
  if (overlay === null) return;
  const [a, b] = [pixelOf(pose, size, from), pixelOf(pose, size, to)];
  for (const path of overlay.querySelectorAll('path')) path.setAttribute('d', `M${a.x} ${a.y}L${b.x} ${b.y}`);
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const turn = Math.atan2(b.y - a.y, b.x - a.x);
  const put = (selector: string, { x, y }: Point, turned = 0) => {
    const element = overlay.querySelector(selector);
    if (element instanceof HTMLElement)
      element.style.transform = `translate(${x}px, ${y}px) rotate(${turned}rad)`;
  };
  put('.cut-handle.from', a);
  put('.cut-handle.to', b);
  put('.cut-handle.both', middle, turn);
}
