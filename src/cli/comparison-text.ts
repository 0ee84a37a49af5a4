/** Lines that came back against the plan, as text: how far each drawn edge moves, and which floors change. */

import type { Comparison, EdgeCompared, FloorCompared } from '#run/compare/compare-returned.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';

export function comparisonText({ lines, edges, floors }: Comparison): string {
  return [
    `${lines} ${lines === 1 ? 'line' : 'lines'} read; the part that they would etch, against the plan, mm:`,
    ...edges.map(edgeText),
    ...(floors.length === 0 ? ['no floor changes'] : floors.map(floorText)),
    '',
  ].join('\n');
}

function edgeText({ level, beside, outward, inward, lost }: EdgeCompared): string {
  const neighbour = beside === 0 ? 'land' : beside.toFixed(3);
  const gone = lost === undefined ? '' : `; lost at ${placeText(lost.at)}`;
  return `edge ${level.toFixed(3)} beside ${neighbour}: ${moveText(outward, '+')}, ${moveText(inward, '−')}${gone}`;
}

function moveText({ by, at }: EdgeCompared['outward'], sign: '+' | '−'): string {
  return `${sign}${by.toFixed(3)}${by < PRINTED_AS_NOTHING ? '' : ` at ${placeText(at)}`}`;
}

function floorText({ id, level, planned, returned }: FloorCompared): string {
  const [before, after] = [planned, returned].map(({ share }) => `${(share * 100).toFixed(1)} %`);
  return `floor of ${id}, ${level.toFixed(3)}: ${before} of the region planned, ${after} with these lines; deepest ${returned.deepest.toFixed(3)}`;
}

function placeText({ x, y }: { readonly x: number; readonly y: number }): string {
  return `${x.toFixed(2)}, ${y.toFixed(2)}`;
}
