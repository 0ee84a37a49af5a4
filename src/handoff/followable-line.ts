/**
 * A scribe line without segments too short for a machine to follow: the same line for every file that goes along it, whatever
 * the file's unit and figures, and wherever and whichever way it is started. Lines without such segments stay as they are.
 */
import { type Path, spanLength } from '#geometry/span.ts';
import { SAME_FIGURE } from '#geometry/tolerances.ts';
import { contourOfPath, pathOfContour } from './contour.ts';
import { mergeMicroSegments } from './merge-micro-segments.ts';

/** mm. Shorter moves upset a machine's look-ahead (from memory). */
export const LEAST_SEGMENT = 0.01;

/** Undefined where nothing is left of the line. */
export function followableLine(line: Path): Path | undefined {
  const least = LEAST_SEGMENT + SAME_FIGURE;
  // An arc's chord is shorter than its length, by so little at this size that none is missed.
  if (line.spans.every((span) => spanLength(span) > 2 * least)) return line;
  const merged = mergeMicroSegments(contourOfPath(line), { least, round: (value) => value });
  return merged && pathOfContour(merged);
}
