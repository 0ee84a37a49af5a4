import { useEffect, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from './view-pose.ts';

/** The scale in steps of a factor √2: marks keep their size on screen to that, and are remade only at a step. */
export function useScaleStep(pose: StoreApi<ViewPose>): number {
  const [step, setStep] = useState(() => stepOf(pose.getState()));
  useEffect(() => pose.subscribe((now) => setStep(stepOf(now))), [pose]);
  return 2 ** (step / 2);
}

function stepOf({ pixelsPerMm }: ViewPose): number {
  return Math.round(2 * Math.log2(pixelsPerMm));
}
