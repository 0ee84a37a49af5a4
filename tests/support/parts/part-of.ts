/** A part drawn in a test: outlines in, regions out, and what is asked of them by points. */
import { arrange } from '#geometry/arrangement/arrange.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { type Loop, pointAlong, tangentAlong } from '#geometry/span.ts';
import type { Asked, Part, Region, RegionId } from '#part/part.ts';
import { sourced } from '#support/geometry/shapes.ts';

/** The part whose sheet and pockets are drawn by the given loops, all within the sheet; without one the land goes on for ever. */
export function partOf(drawn: { readonly sheet?: Loop; readonly outlines: readonly Loop[] }): Part {
  const sheet = drawn.sheet === undefined ? [] : [drawn.sheet];
  const { arrangement, trouble } = arrange(sourced([...sheet, ...drawn.outlines]), { joinTolerance: 0.01 });
  const regions = arrangement.faces.slice(1).map(({ loops, area }, index): Region => {
    return {
      id: `R${index + 1}`,
      face: index + 1,
      layer: '',
      layers: [],
      label: besideBorder(loops),
      area,
      loops,
    };
  });
  return { arrangement, regions, regionOfFace: [-1, ...regions.keys()], sheet, trouble };
}

/** A point just inside the middle of the first span. */
function besideBorder([loop]: readonly Loop[]) {
  const [span] = loop ?? [];
  if (span === undefined) throw new Error('a face has a border');
  const middle = pointAlong(span, 0.5);
  const along = tangentAlong(span, 0.5);
  return { x: middle.x - along.y * 1e-3, y: middle.y + along.x * 1e-3 };
}

/** Depths by points: every region that holds none of them is land. More may be etched too little than too much, so that a swap shows. */
export function askedAt(
  part: Part,
  depths: readonly (readonly [x: number, y: number, depth: number])[],
  { plus, minus }: { readonly plus: number; readonly minus: number } = { plus: 0.04, minus: 0.06 },
): ReadonlyMap<RegionId, Asked> {
  return new Map(
    part.regions.map(({ id, loops }) => {
      const hit = depths.find(([x, y]) => isInsideLoops(loops, { x, y }));
      return [id, { depth: hit?.[2] ?? 0, plus, minus }];
    }),
  );
}
