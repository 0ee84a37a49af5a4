/** What the figures in the regions say: as most of the job's requirements say it, until someone chooses. */
import { useState } from 'react';
import { useDocument } from '#app/views/workbench-context.ts';
import type { FigureMeaning } from './SheetStrip.tsx';

export function useFigures(): {
  readonly figures: FigureMeaning;
  readonly setFigures: (figures: FigureMeaning) => void;
} {
  const requirements = useDocument()?.job.requirements ?? [];
  const [chosen, setChosen] = useState<FigureMeaning>();
  const left = requirements.filter(({ thickness }) => thickness !== undefined).length;
  return { figures: chosen ?? (2 * left > requirements.length ? 'left' : 'depth'), setFigures: setChosen };
}
