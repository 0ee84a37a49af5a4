/** The drawing's own texts at their places, in grey, when switched on. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import type { Size } from '#app/views/use-size.ts';
import type { DrawnNote, HungText } from '#drawing/drawing.ts';
import { hungOnScreen } from './hung-on-screen.ts';

const BASELINES = {
  base: 'auto',
  middle: 'central',
  top: 'hanging',
} as const satisfies Record<HungText['up'], string>;

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
      notes.forEach((note, index) => {
        const { x, y, turn, anchor } = hungOnScreen(note, now, size);
        const text = texts[index];
        text?.setAttribute(
          'transform',
          `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(2)})`,
        );
        text?.setAttribute('text-anchor', anchor);
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [notes, pose, size]);
  if (notes.length === 0) return null;
  return (
    <svg className="drawn-texts" ref={svg} aria-hidden="true">
      {notes.map(({ text, at, layer, hung }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two texts may say the same at one place
        <text key={`${layer} ${at.x} ${at.y} ${index}`} dominantBaseline={BASELINES[hung.up]}>
          {text}
        </text>
      ))}
    </svg>
  );
}
