/** The drawing's own texts at their places, in grey, when switched on. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import type { Size } from '#app/views/use-size.ts';
import type { DrawnNote } from '#drawing/drawing.ts';

interface DrawnTextsProps {
  readonly notes: readonly DrawnNote[];
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

export function DrawnTexts({ notes, pose, size }: DrawnTextsProps) {
  const svg = useRef<SVGSVGElement>(null);
  useEffect(() => {
    if (size === undefined) return undefined;
    const texts = [...(svg.current?.children ?? [])];
    const draw = (now: ViewPose) => {
      notes.forEach(({ at }, index) => {
        const { x, y } = pixelOf(now, size, at);
        texts[index]?.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [notes, pose, size]);
  return (
    <svg className="drawn-texts" ref={svg} aria-hidden="true">
      {notes.map(({ text, at, layer }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two texts may say the same at one place
        <text key={`${layer} ${at.x} ${at.y} ${index}`}>{text}</text>
      ))}
    </svg>
  );
}
