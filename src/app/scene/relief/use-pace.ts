/**
 * How much of a heavy solid a frame may draw. While the view moves, a draft without edges and with few pixels, or where that is slow too
 * the last picture, laid on the sheet; once it settles, the
 * draft with all its edges, smoothed; and all facets when it has rested for as long as they take, because until they are drawn a
 * hand that moves on waits for them.
 */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { KeptPictures } from '#app/scene/large/kept-pictures.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { frameCost } from './frame-cost.ts';
import { quickFrame } from './quick-frame.ts';

type Pace = 'moving' | 'settled' | 'resting';

/** A view that has not moved for so long is settled, ms. */
const SETTLED = 250;
/** Longest wait for all facets from there, ms. */
const LONGEST = 1500;

interface PaceAsk {
  readonly isHeavy: boolean;
  /** Where the draft is slow: what is shown in its place while the view moves. */
  readonly kept: KeptPictures | undefined;
}

/** Also draws the frames. The pace of a solid that is not heavy is always `resting`. */
export function usePace(pose: StoreApi<ViewPose>, { isHeavy, kept }: PaceAsk): () => Pace {
  const invalidate = useThree((state) => state.invalidate);
  const pace = useRef<Pace>('resting');
  const cost = useRef(0);
  const quick = useMemo(quickFrame, []);
  useEffect(() => () => quick.dispose(), [quick]);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const turn = (to: Pace) => {
      pace.current = to;
      invalidate();
    };
    const settle = () => {
      const wait = Math.min(LONGEST, cost.current - SETTLED);
      if (wait <= 0) return turn('resting');
      turn('settled');
      timer = setTimeout(() => turn('resting'), wait);
    };
    const leave = pose.subscribe(() => {
      pace.current = 'moving';
      clearTimeout(timer);
      timer = setTimeout(settle, SETTLED);
    });
    return () => {
      leave();
      clearTimeout(timer);
    };
  }, [pose, invalidate]);
  const now = () => (isHeavy ? pace.current : 'resting');
  // A frame of one's own: this one is drawn after all that is set for it.
  useFrame(({ gl, scene, camera, size }) => {
    if (now() === 'moving')
      return kept?.isAny === true ? gl.render(scene, camera) : quick.draw(gl, scene, camera);
    const begun = performance.now();
    gl.render(scene, camera);
    kept?.forget();
    kept?.keep(gl, pose.getState(), size);
    if (isHeavy && now() === 'resting')
      void frameCost(gl, begun).then((ms) => {
        cost.current = ms;
      });
  }, 1);
  return now;
}
