/** A gauge for one view: the reading at the last place requested. A place skipped on the way there is never measured. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { keepLatest } from '#app/state/keeping/keep-latest.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import type { PlaceDepth } from '#run/depth-job.ts';

export interface Gauge {
  readonly reading: PlaceDepth | undefined;
  readonly ask: (at: Point) => void;
  readonly forget: () => void;
}

export function useGauge(): Gauge {
  const { follower } = useWorkbench();
  const minute = useWorkbenchState((state) => state.session.minute);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const [reading, setReading] = useState<PlaceDepth>();
  const place = useRef<Point>(undefined);
  const measure = useMemo(
    () =>
      keepLatest(
        (at: Point) => follower.gauge(at),
        (answer, at) => {
          if (place.current === at) setReading(answer);
        },
        () => setReading(undefined),
      ),
    [follower],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan or minute makes another reading of the same place
  useEffect(() => {
    if (place.current !== undefined) measure(place.current);
  }, [measure, minute, plan]);
  return useMemo(
    () => ({
      reading,
      ask: (at) => {
        place.current = at;
        measure(at);
      },
      forget: () => {
        place.current = undefined;
        setReading(undefined);
      },
    }),
    [reading, measure],
  );
}
