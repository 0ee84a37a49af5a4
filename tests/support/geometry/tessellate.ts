/** Loops as plain coordinates, for engines that know no arcs. */
import { type Loop, pointAlong } from '#geometry/span.ts';

/** @param sagitta farthest that a chord may lie from its arc, mm */
export function tessellate(loop: Loop, sagitta = 0.0005): [number, number][] {
  return loop.flatMap((span): [number, number][] => {
    const chords =
      span.kind === 'line'
        ? 1
        : Math.max(
            2,
            Math.ceil(Math.abs(span.sweep) / (2 * Math.acos(Math.max(0, 1 - sagitta / span.radius)))),
          );
    return Array.from({ length: chords }, (_, index) => {
      const { x, y } = pointAlong(span, index / chords);
      return [x, y];
    });
  });
}
