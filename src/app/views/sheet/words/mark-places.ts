/** Where the marks of stages stand along their lines, and where the tag of a line points that has no room for its own. */
import { MARK } from '#app/scene/line-looks.ts';
import { groupMiddles } from '#app/scene/mark-groups.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, type Span, spanLength, spansLength } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownStage } from '#job/formats/plan-file.ts';
import { tickPlaces } from '#plan/stage-mark.ts';
import { around } from './place-labels.ts';

/** What marks of the stages take of their lines, px. */
export function markBoxes(
  lined: readonly ShownStage[],
  onScreen: (at: Point) => Point,
  pixelsPerMm: number,
): Box[] {
  return lined.flatMap(({ number: stage, lines }) => {
    const half = Math.max(MARK.length, (tickPlaces(stage).at(-1) ?? 0) * MARK.pitch) / 2;
    return lines.flatMap((line) => {
      const path = pathOfContour(line);
      const { pitch, every } = MARK;
      return groupMiddles(path, { stage, pixelsPerMm, pitch, every }).flatMap((middle) => {
        const at = placeAlong(path.spans, middle);
        return at === undefined ? [] : [around(onScreen(at), half, half)];
      });
    });
  });
}

/** Lines longer than this carry any mark somewhere, px. */
export const ALWAYS_MARKED = 260;

/** Where a tag points: the middle of a line that has no room for its mark. */
export function placeOfTag(line: Contour, stage: number, pixelsPerMm: number): Point | undefined {
  const path = pathOfContour(line);
  const length = spansLength(path.spans);
  if (length * pixelsPerMm > ALWAYS_MARKED) return undefined;
  const ask = { stage, pixelsPerMm, pitch: MARK.pitch, every: MARK.every };
  if (groupMiddles(path, ask).length > 0) return undefined;
  return placeAlong(path.spans, length / 2);
}

function placeAlong(spans: readonly Span[], distance: number): Point | undefined {
  let left = distance;
  for (const span of spans) {
    const own = spanLength(span);
    if (left <= own) return pointAlong(span, own === 0 ? 0 : left / own);
    left -= own;
  }
  return undefined;
}
