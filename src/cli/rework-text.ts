/** What rework comes to, as text, in the job's unit; nothing is called acceptable. */

import type { TimedForecast } from '#run/rework/edges-at-factor.ts';
import type { Leak } from '#run/rework/maskant-damage.ts';
import type { Rework, ReworkedFloor } from '#run/rework/rework-run.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { gaugedFigure, type ShownUnit, signedFigure } from '#units/show-length.ts';

export function reworkText({ floors, dips, edges, laps }: Rework, unit: ShownUnit): string {
  const length = lengthIn(unit);
  const lost = floors.filter(({ extra }) => extra === undefined);
  return [
    dips.length === 0
      ? 'No extra dip.'
      : `${dips.length} extra ${dips.length === 1 ? 'dip' : 'dips'}, with all else still masked:`,
    ...dips.map(
      ({ etch, minutes, cover, open }, index) =>
        `dip ${index + 1}: ${length(etch)} ${unit}, ${minutes.toFixed(1)} min; cover before it: ${listed(cover)}; etches ${listed(open)}`,
    ),
    ...laps.map(
      ({ cover, onto, height, undercut }) =>
        `cover ${cover} to its edge: what laps onto ${onto} by more than ${length(undercut)} ${unit} leaves a rib ${length(height)} high there`,
    ),
    ...floors.filter(({ extra }) => extra !== undefined).map((floor) => floorText(floor, unit)),
    ...edges.map(
      ({ level, beside, regions, off }) =>
        `edge of ${listed(regions)}, ${length(level)} beside ${neighbour(beside, unit)}: comes out ${signedFigure(off, unit)} ${unit} off its line`,
    ),
    ...(lost.length === 0
      ? []
      : ['Not to be saved by etching, for whoever decides:', ...lost.map((floor) => lostText(floor, unit))]),
    '',
  ].join('\n');
}

function floorText(floor: ReworkedFloor, unit: ShownUnit): string {
  const { over, read, extra = 0, extraBehind, after, thickness, plus, minus } = floor;
  const length = lengthIn(unit);
  const faces = over === undefined ? '' : ` of the near face and ${length(extraBehind)} of the far`;
  return `${nameOf(floor)}: read ${length(read)}, etch ${length(extra)} more${faces}, leaves ${length(after)} where ${length(thickness)} +${length(minus)}/−${length(plus)} ${unit} is required`;
}

function nameOf({ id, over }: ReworkedFloor): string {
  return over === undefined ? id : `${id} over ${over}`;
}

function lostText(floor: ReworkedFloor, unit: ShownUnit): string {
  const { read, thickness, plus, area, label } = floor;
  const length = lengthIn(unit);
  const [x, y] = label.map(length);
  const square = area / (millimetresIn(unit) * millimetresIn(unit));
  return `${nameOf(floor)}: read ${length(read)} ${unit}, least ${length(thickness - plus)}; at ${x}, ${y}; ${square.toFixed(unit === 'mm' ? 0 : 2)} ${unit}²`;
}

export function forecastText(
  { edges, levels, minutes, roomTaken }: TimedForecast,
  { stages, unit }: { readonly stages: readonly { readonly level: number }[]; readonly unit: ShownUnit },
): string {
  const length = lengthIn(unit);
  const planned = stages.map(({ level }) => level).sort((a, b) => b - a);
  const isMoved = levels.some((level, index) => Math.abs(level - (planned[index] ?? 0)) > SAME_LEVEL);
  return [
    `With lines cut as planned and that factor, edges come out off their lines by, in ${unit}:`,
    ...edges.map(({ level, beside, off, best, allowed }) => {
      const asked =
        allowed === undefined
          ? ''
          : ` of +${length(allowed.plus)}/−${length(allowed.minus)}${verdict(off, allowed)}`;
      const moved = isMoved ? `; ${signedFigure(best, unit)} with the depths below` : '';
      return `${length(level)} beside ${neighbour(beside, unit)}: ${signedFigure(off, unit)}${asked}${moved}`;
    }),
    isMoved
      ? [
          `Depths within tolerance that hold the edges best: ${levels.map(length).join(', ')}`,
          `Minutes for them, at the planned rate: ${minutes.map(({ planned: before, instead }) => `${instead.toFixed(1)} instead of ${before.toFixed(1)}`).join(', ')}`,
          `They take ${Math.round(roomTaken * 100)} % of the room that the floors’ tolerances leave; what the run itself is off comes on top.`,
        ].join('\n')
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

export function damageText({ leak, scratches = [] }: Damage, unit: ShownUnit): string {
  const length = lengthIn(unit);
  return [
    ...(leak === undefined
      ? []
      : [
          `The maskant has been open there for ${leak.since.toFixed(1)} min of etching; the crater is ${length(leak.depth)} ${unit} deep.`,
        ]),
    ...scratches.map(
      ({ level, halfWidth }) =>
        `A scratch in a floor of ${length(level)} ${unit} comes out ${length(halfWidth)} ${unit} wide to each side, as deep below the floor as it was.`,
    ),
    ...(leak === undefined && scratches.length === 0 ? [] : ['']),
  ].join('\n');
}

function listed(ids: readonly string[]): string {
  return ids.length === 0 ? 'none' : ids.join(' ');
}

function neighbour(beside: number, unit: ShownUnit): string {
  return beside === 0 ? 'land' : gaugedFigure(beside, unit);
}

/** Of millimetres, without the unit. */
function lengthIn(unit: ShownUnit): (millimetres: number) => string {
  return (millimetres) => gaugedFigure(millimetres, unit);
}
