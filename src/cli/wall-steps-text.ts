/** The walls at each step of the part either way of masking, as lines of text for under the comparison. */
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import type { PlanFile } from './stage-table.ts';
import { alignedLines } from './text-table.ts';

/** A part of many levels has a step for most pairs of them: the deepest are reported, the rest are in plan.json. */
const MOST_STEPS = 8;

export function wallStepsText({ maskings }: Pick<PlanFile, 'maskings'>, unit: ShownUnit): string[] {
  const figure = (length: number) => gaugedFigure(length, unit);
  const [oneCoat, coatByCoat] = maskings ?? [];
  if (oneCoat === undefined || coatByCoat === undefined) return [];
  const rows = oneCoat.walls.slice(0, MOST_STEPS).map((wall, index) => {
    const other = coatByCoat.walls[index] ?? wall;
    const both = (key: 'allowance' | 'fillet' | 'corner') => `${figure(wall[key])} / ${figure(other[key])}`;
    return [
      `${figure(wall.level)} beside ${wall.beside === 0 ? 'land' : figure(wall.beside)}`,
      both('allowance'),
      both('fillet'),
      both('corner'),
    ];
  });
  const more = oneCoat.walls.length - rows.length;
  return [
    ...alignedLines([HEADS, ...rows], ['left']),
    ...(more > 0 ? [`and ${more} more in plan.json`] : []),
  ];
}

/** Lengths: peel-next / re-mask. */
const HEADS = ['floor', 'allowance', 'fillet R', 'inside corners as drawn from R'];
