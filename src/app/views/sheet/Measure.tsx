/** Two points measured while M is held: from where the pointer was when it went down to where it is now. */
import { type RefObject, useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, pointSeenAt, type ViewPose } from '#app/scene/view-pose.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { lengthFigure } from '#units/show-length.ts';

interface MeasureProps {
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly pose: StoreApi<ViewPose>;
  readonly size: RefObject<Size>;
}

const KEY = 'm';

export function Measure({ frame, pose, size }: MeasureProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const svg = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    let pointer: Point | undefined;
    let from: Point | undefined;
    const draw = () => {
      if (svg.current === null) return;
      const isOn = from !== undefined && pointer !== undefined;
      svg.current.style.display = isOn ? '' : 'none';
      if (from === undefined || pointer === undefined) return;
      const to = pointSeenAt(pose.getState(), size.current, pointer);
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const words = `${lengthFigure(length, unit)} ${unit} (${lengthFigure(to.x - from.x, unit)}, ${lengthFigure(to.y - from.y, unit)})`;
      drawMeasure(svg.current, pixelOf(pose.getState(), size.current, from), pointer, words);
    };
    const listening = new AbortController();
    const { signal } = listening;
    const move = (event: PointerEvent) => {
      const { left, top } = element.getBoundingClientRect();
      pointer = { x: event.clientX - left, y: event.clientY - top };
      draw();
    };
    const down = ({ key, target, ctrlKey, metaKey, altKey }: KeyboardEvent) => {
      const isTyping = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
      if (key.toLowerCase() !== KEY || ctrlKey || metaKey || altKey || isTyping) return;
      if (from !== undefined || pointer === undefined) return;
      from = pointSeenAt(pose.getState(), size.current, pointer);
      draw();
    };
    const end = () => {
      from = undefined;
      draw();
    };
    element.addEventListener('pointermove', move, { signal });
    element.addEventListener(
      'pointerleave',
      () => {
        pointer = undefined;
      },
      { signal },
    );
    document.addEventListener('keydown', down, { signal });
    document.addEventListener('keyup', ({ key }) => key.toLowerCase() === KEY && end(), { signal });
    window.addEventListener('blur', end, { signal });
    return () => listening.abort();
  }, [frame, pose, size, unit]);
  return (
    <svg className="measure" ref={svg} aria-hidden="true" style={{ display: 'none' }}>
      <path className="casing" />
      <path className="core" />
      <text />
    </svg>
  );
}

function drawMeasure(svg: SVGSVGElement, a: Point, b: Point, words: string): void {
  for (const path of svg.querySelectorAll('path')) path.setAttribute('d', `M${a.x} ${a.y}L${b.x} ${b.y}`);
  const text = svg.querySelector('text');
  if (text === null) return;
  text.textContent = words;
  text.setAttribute('x', String((a.x + b.x) / 2));
  text.setAttribute('y', String((a.y + b.y) / 2 - 8));
}
