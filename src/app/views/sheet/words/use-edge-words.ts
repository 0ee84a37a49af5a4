/** Words at drawn edges and at lines: how far an edge may be off, and what became of a line that came back. */
import { useMemo } from 'react';
import { useShownBands } from '#app/views/sheet/use-shown-bands.ts';
import { useShownReturned } from '#app/views/sheet/use-shown-returned.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { unpackContours } from '#app/worker/pack-contours.ts';
import { gaugedFigure } from '#units/show-length.ts';
import type { MarksAsk } from './sheet-marks.ts';

export function useEdgeWords(): NonNullable<MarksAsk['edges']> {
  const bands = useShownBands();
  const returned = useShownReturned();
  const unit = useWorkbenchState(({ session }) => session.unit);
  return useMemo(
    () => [
      ...bands.map(({ index, at, half, lines }) => ({
        index,
        at,
        says: `±${gaugedFigure(half, unit)}`,
        lines: unpackContours(lines),
      })),
      // Below those of bands, which count from 0.
      ...(returned?.words ?? []).map((word, index) => ({ index: -1 - index, ...word })),
    ],
    [bands, returned, unit],
  );
}
