/** Drawn edges in the figures of a table: which edge it is, and how far it may be off. */
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

interface Edge {
  /** mm; of the deeper side. */
  readonly level: number;
  /** mm; 0 for land. */
  readonly beside: number;
}

export function edgeName({ level, beside }: Edge, unit: ShownUnit): string {
  return `${gaugedFigure(level, unit)} | ${beside === 0 ? 'land' : gaugedFigure(beside, unit)}`;
}

/** mm to either side; one figure where both are the same. */
export function allowedFigures(outward: number, inward: number, unit: ShownUnit): string {
  const [plus, minus] = [gaugedFigure(outward, unit), gaugedFigure(inward, unit)];
  return plus === minus ? plus : `+${plus} −${minus}`;
}
