/** The edge of a step in words, as all findings about drawn edges call it. */
import { mm, type Shown } from './shown-figures.ts';

export interface StepEdge {
  /** mm; of the deeper side. */
  readonly level: number;
  /** mm; 0 for land. */
  readonly beside: number;
}

export function edgeWords({ level, beside }: StepEdge, show: Shown): string {
  return `The edge of level ${mm(level, show)} beside ${beside === 0 ? 'land' : mm(beside, show)}`;
}
