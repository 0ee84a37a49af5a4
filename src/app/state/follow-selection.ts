/** What stays picked when a new plan cuts a picked region into strips, or joins strips again: all that the region is now. */

import { wholeId } from '#app/state/keeping/whole-id.ts';
import type { RegionShape } from './region-shape.ts';

/** The very same list where nothing picked has gone. */
export function followSelection(
  selection: readonly string[],
  shapes: readonly RegionShape[],
): readonly string[] {
  if (selection.length === 0) return selection;
  const ids = shapes.map(({ region }) => region.id);
  const there = new Set(ids);
  if (selection.every((id) => there.has(id))) return selection;
  const now = selection.flatMap((id) =>
    there.has(id) ? [id] : ids.filter((other) => wholeId(other) === wholeId(id)),
  );
  return [...new Set(now)];
}
