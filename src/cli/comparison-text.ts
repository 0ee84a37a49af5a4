/** Lines that came back against the plan, as text: how far each drawn edge moves, and which floors change. */

import type { Comparison, EdgeCompared, FloorCompared } from '#run/compare/compare-returned.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';
import { gaugedFigure, lengthFigure, type ShownUnit } from '#units/show-length.ts';

export function comparisonText({ face, hand, lines, edges, floors }: Comparison, unit: ShownUnit): string {
  return [
    `${lines} ${lines === 1 ? 'line' : 'lines'} read${hand === 'opposite' ? ', of the opposite hand, mirrored' : ''}; the part that they would etch, against the plan${face === 'far' ? '’s far face' : ''}, ${unit}:`,
    ...edges.map((edge) => edgeText(edge, unit)),
    ...(floors.length === 0 ? ['no floor changes'] : floors.map((floor) => floorText(floor, unit))),
    '',
  ].join('\n');
}

function edgeText({ level, beside, outward, inward, lost }: EdgeCompared, unit: ShownUnit): string {
  const neighbour = beside === 0 ? 'land' : gaugedFigure(beside, unit);
  const gone = lost === undefined ? '' : `; lost at ${placeText(lost.at, unit)}`;
  return `edge ${gaugedFigure(level, unit)} beside ${neighbour}: +${moveText(outward, unit)}, −${moveText(inward, unit)}${gone}`;
}

function moveText({ by, at }: EdgeCompared['outward'], unit: ShownUnit): string {
  return `${gaugedFigure(by, unit)}${by < PRINTED_AS_NOTHING ? '' : ` at ${placeText(at, unit)}`}`;
}

function floorText({ id, level, planned, returned }: FloorCompared, unit: ShownUnit): string {
  const [before, after] = [planned, returned].map(({ share }) => `${(share * 100).toFixed(1)} %`);
  return `floor of ${id}, ${gaugedFigure(level, unit)}: ${before} of the region planned, ${after} with these lines; deepest ${gaugedFigure(returned.deepest, unit)}`;
}

function placeText({ x, y }: { readonly x: number; readonly y: number }, unit: ShownUnit): string {
  return `${lengthFigure(x, unit)}, ${lengthFigure(y, unit)}`;
}
