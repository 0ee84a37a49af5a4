/** What the traveller of one face states of the other: both are etched in the same dip, and nobody may forget to turn the part over. */
import type { Stage } from '#plan/etch-plan.ts';
import type { TravellerPage } from './traveller-page.ts';

/** What follows once the lines of this face are counted; nothing where one face is etched. */
export function turnOverFirst({ side, plan }: TravellerPage): string {
  if (side === undefined || plan.far === undefined) return '';
  const lines = plan.far.stages.reduce((sum, stage) => sum + stage.lines.length, 0);
  const other = side === 'near' ? 'far' : 'near';
  return lines === 0
    ? ` **Turn over:** no line is cut on the ${other} face.`
    : ` **Turn over:** lay, cut and count the ${lines === 1 ? 'one line' : `${lines} lines`} of the ${other} face by its own traveller.`;
}

/** A step of a stage before its dip. */
export function turnOverWords({ side, plan }: TravellerPage, { number }: Stage): string[] {
  const beyond = plan.far?.stages.find((stage) => stage.number === number);
  if (side === undefined || beyond === undefined) return [];
  const other = side === 'near' ? 'far' : 'near';
  return [
    beyond.piece.length === 0
      ? `**Turn over.** Nothing is peeled on the ${other} face in this stage: its maskant whole.`
      : `**Turn over.** Peel the ${other} face by its own page of this stage, before the dip: both faces are etched at once.`,
  ];
}
