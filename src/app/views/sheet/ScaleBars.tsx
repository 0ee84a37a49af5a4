/** Scale bars: one across, and in the relief one for depth, which shows how much heights are exaggerated. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { roundStep } from '#app/views/ladder/ladder-layout.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { millimetresIn } from '#units/length-unit.ts';

/** Shortest a bar may be, in pixels. */
const SHORTEST = { across: 60, deep: 9 };
/** Seen this nearly from above, depth has no length to show. */
const LEAST_TILT = 0.12;

export function ScaleBars({ pose }: { readonly pose: StoreApi<ViewPose> }) {
  const { unit, view, exaggeration } = useWorkbenchState((state) => state.session);
  const across = useRef<HTMLDivElement>(null);
  const deep = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const draw = ({ pixelsPerMm, tilt }: ViewPose) => {
      const pixels = pixelsPerMm * millimetresIn(unit);
      const width = roundStep(SHORTEST.across / pixels);
      setBar(across.current, { length: width * pixels, text: `${figure(width)} ${unit}`, along: 'width' });
      const upright = pixels * exaggeration * Math.sin(tilt);
      const depth = roundStep(SHORTEST.deep / upright);
      setBar(deep.current, {
        length: tilt < LEAST_TILT ? 0 : depth * upright,
        text: tilt < LEAST_TILT ? '' : `${figure(depth)} ${unit} deep, height ×${exaggeration}`,
        along: 'height',
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [pose, unit, exaggeration]);
  return (
    <div className="scale-bars" aria-hidden="true">
      <div className="bar across" ref={across}>
        <i />
        <span />
      </div>
      <div className="bar deep" ref={deep} hidden={view !== 'relief'}>
        <i />
        <span />
      </div>
    </div>
  );
}

interface Bar {
  readonly length: number;
  readonly text: string;
  readonly along: 'width' | 'height';
}

function setBar(element: HTMLElement | null, { length, text, along }: Bar): void {
  const [bar, words] = [element?.querySelector('i'), element?.querySelector('span')];
  if (bar instanceof HTMLElement) bar.style[along] = `${length}px`;
  if (words instanceof HTMLElement) words.textContent = text;
}

function figure(length: number): string {
  return String(Number(length.toPrecision(3)));
}
