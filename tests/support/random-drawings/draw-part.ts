/** A random part by seed and number: eleven kinds in turn, each with its own coincidences. */
import { type Dice, rollDice } from './dice.ts';
import type { DrawnCurve, DrawnPart } from './drawn-part.ts';
import { bigArcs } from './kinds/big-arcs.ts';
import { edgePockets } from './kinds/edge-pockets.ts';
import { grids } from './kinds/grids.ts';
import { necks } from './kinds/necks.ts';
import { nested } from './kinds/nested.ts';
import { splines } from './kinds/splines.ts';
import { splits } from './kinds/splits.ts';
import { staircases } from './kinds/staircases.ts';
import { stars } from './kinds/stars.ts';
import { touching } from './kinds/touching.ts';

type Kind = readonly [name: string, draw: (dice: Dice, allowance: number) => DrawnCurve[]];

const KINDS: readonly Kind[] = [
  ['nested', nested],
  ['stars', stars],
  ['grid', grids],
  ['touching', touching],
  ['necks', necks],
  ['big arcs', bigArcs],
  ['edge pockets', edgePockets],
  ['splines', splines],
  ['many levels', staircases],
  ['near levels', grids],
  ['splits', splits],
];

const WHOLE_DEPTHS = [0, 1, 1.5, 2, 3];

export function drawPart(seed: number, index: number): DrawnPart {
  const dice = rollDice(seed, index);
  const [kind, draw] = KINDS[index % KINDS.length] ?? KINDS[0] ?? ['nested', nested];
  const factor = dice.chance(0.6) ? dice.pick([0.5, 0.8, 1, 1, 1.5]) : dice.between(0.5, 2);
  const depths = depthsFor(dice, kind);
  return {
    kind,
    curves: draw(dice, factor * (depths.find((depth) => depth > 0) ?? 1)),
    depths,
    plus: 0.06,
    minus: 0.04,
    factor,
    edgeDatum: dice.pick(['shallow-edge', 'shallow-edge', 'mid-wall', 'deep-foot'] as const),
    masking: dice.chance(0.2) ? 're-mask' : 'peel-next',
    levels: kind === 'many levels' ? dice.pick(['as-drawn', 'fewest'] as const) : 'as-drawn',
  };
}

function depthsFor(dice: Dice, kind: string): number[] {
  const count = 12;
  if (kind === 'near levels') {
    const level = dice.pick([1, 2]);
    const apart = dice.pick([0.0005, 0.001, 0.003, 0.006, 0.01, 0.05]);
    return Array.from({ length: count }, () => dice.pick([0, level, level + apart, level + 2 * apart, 3]));
  }
  if (kind === 'many levels')
    return Array.from({ length: count }, (_, i) => 0.4 + 0.2 * i + dice.pick([0, 0.01]));
  if (kind === 'necks') return [dice.pick(WHOLE_DEPTHS.slice(1))];
  const deal = dice.chance(0.6)
    ? () => dice.pick(WHOLE_DEPTHS)
    : () => (dice.chance(0.2) ? 0 : dice.between(0.4, 3.2));
  return Array.from({ length: count }, deal);
}
