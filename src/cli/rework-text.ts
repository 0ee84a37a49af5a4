/** What rework comes to, as text. Lengths in mm; nothing is called acceptable. */

import type { FactorForecast } from '#run/rework/edges-at-factor.ts';
import type { Leak } from '#run/rework/maskant-damage.ts';
import type { Rework, ReworkedFloor } from '#run/rework/rework-run.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';

export function reworkText({ floors, dips, edges }: Rework): string {
  const lost = floors.filter(({ extra }) => extra === undefined);
  return [
    dips.length === 0
      ? 'No extra dip.'
      : `${dips.length} extra ${dips.length === 1 ? 'dip' : 'dips'}, with all else still masked:`,
    ...dips.map(
      ({ etch, minutes, cover, open }, index) =>
        `dip ${index + 1}: ${etch.toFixed(3)} mm, ${minutes.toFixed(1)} min; cover before it: ${listed(cover)}; etches ${listed(open)}`,
    ),
    ...floors.filter(({ extra }) => extra !== undefined).map(floorText),
    ...edges.map(
      ({ level, beside, off }) =>
        `edge ${level.toFixed(3)} beside ${neighbour(beside)}: comes out ${signed(off)} off its line`,
    ),
    ...(lost.length === 0 ? [] : ['Not to be saved by etching, for whoever decides:', ...lost.map(lostText)]),
    '',
  ].join('\n');
}

function floorText({ id, read, extra = 0, after, thickness, plus, minus }: ReworkedFloor): string {
  return `${id}: read ${read.toFixed(3)}, etch ${extra.toFixed(3)} more, leaves ${after.toFixed(3)} where ${thickness.toFixed(3)} +${minus}/−${plus} is asked`;
}

function lostText({ id, read, thickness, plus, area, label: [x, y] }: ReworkedFloor): string {
  return `${id}: read ${read.toFixed(3)}, least ${(thickness - plus).toFixed(3)}; at ${x.toFixed(1)}, ${y.toFixed(1)}; ${area.toFixed(0)} mm²`;
}

export function forecastText(
  { edges, levels }: FactorForecast,
  stages: readonly { readonly level: number }[],
): string {
  const planned = stages.map(({ level }) => level).sort((a, b) => b - a);
  const isMoved = levels.some((level, index) => Math.abs(level - (planned[index] ?? 0)) > SAME_LEVEL);
  return [
    'With lines cut as planned and that factor, edges come out off their lines by:',
    ...edges.map(({ level, beside, off, best, allowed }) => {
      const asked =
        allowed === undefined ? '' : ` of +${allowed.plus}/−${allowed.minus}${verdict(off, allowed)}`;
      const moved = isMoved ? `; ${signed(best)} with the depths below` : '';
      return `${level.toFixed(3)} beside ${neighbour(beside)}: ${signed(off)}${asked}${moved}`;
    }),
    isMoved
      ? `Depths within tolerance that hold the edges best: ${levels.map((level) => level.toFixed(3)).join(', ')}`
      : 'No other depths within tolerance hold the edges better.',
    'A new coat and new lines, placed with this factor, put every edge back on its line where maskant can be renewed.',
    '',
  ].join('\n');
}

function verdict(off: number, { plus, minus }: { readonly plus: number; readonly minus: number }): string {
  return off > plus || -off > minus ? ', passed' : '';
}

interface Damage {
  readonly leak?: Leak;
  readonly scratches?: readonly { readonly level: number; readonly halfWidth: number }[];
}

export function damageText({ leak, scratches = [] }: Damage): string {
  return [
    ...(leak === undefined
      ? []
      : [
          `The maskant has been open there for ${leak.since.toFixed(1)} min of etching; the crater is ${leak.depth.toFixed(3)} mm deep.`,
        ]),
    ...scratches.map(
      ({ level, halfWidth }) =>
        `A scratch in a floor of ${level.toFixed(3)} mm comes out ${halfWidth.toFixed(3)} mm wide to each side, as deep below the floor as it was.`,
    ),
    ...(leak === undefined && scratches.length === 0 ? [] : ['']),
  ].join('\n');
}

function listed(ids: readonly string[]): string {
  return ids.length === 0 ? 'none' : ids.join(' ');
}

function neighbour(beside: number): string {
  return beside === 0 ? 'land' : beside.toFixed(3);
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(3)}`;
}
