/** What the figures of a drawing would give, while it is asked what they mean; none at any other time. */
import { useMemo } from 'react';
import { useFigureRows } from '#app/views/opening/use-figures.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { lengthFigure } from '#units/show-length.ts';
import type { TriedFigure } from './tried-figures.ts';

export function useTriedFigures(): readonly TriedFigure[] {
  const { unsaid } = useDocument() ?? {};
  const { tried, unit } = useWorkbenchState((state) => state.session);
  const rows = useFigureRows();
  const isAsked = unsaid?.length === 1 && unsaid[0] === 'figures';
  return useMemo(() => {
    if (!isAsked) return [];
    return rows.map(({ region, text, at, said, other, stops }) => {
      const figure = lengthFigure(other, unit);
      const only = said ?? tried;
      const lines = [
        { meaning: 'thickness', words: `${figure} deep` },
        { meaning: 'depth', words: `leaves ${figure}` },
      ] as const;
      return {
        region,
        text,
        at,
        lines: lines
          .filter(({ meaning }) => only === undefined || meaning === only)
          .map(({ meaning, words }) => ({ words, isStop: stops[meaning] })),
      };
    });
  }, [isAsked, rows, tried, unit]);
}
