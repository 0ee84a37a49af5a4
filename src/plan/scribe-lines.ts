/** The scribe lines of a piece: what of its border a knife has to follow. */

import { type RebuiltLoop, type RebuiltSpan, spansOf } from '#geometry/grow/rebuild-loops.ts';
import { distanceToSpan, type Path, pointAlong, type Span, spansLength } from '#geometry/span.ts';
import { coverSpan } from '#geometry/spans/cover-span.ts';
import { SAGITTA, SCRIBE_ACCURACY } from '#geometry/tolerances.ts';

/**
 * What of the piece's border has to be cut, in chains as long as can be: all but what runs along the given spans.
 * @param known earlier lines, and the sheet's edge, beyond which no maskant lies
 */
export function scribeLines(piece: readonly RebuiltLoop[], known: readonly Span[]): Path[] {
  // A stub no longer than a line may be off in all is rounding where lines meet.
  return piece
    .flatMap((loop) => linesOf(loop, known))
    .filter(({ spans }) => spansLength(spans) > SCRIBE_ACCURACY);
}

function linesOf(loop: RebuiltLoop, known: readonly Span[]): Path[] {
  const parts = loop.flatMap((each) => coverRebuilt(each, known));
  if (parts.every(({ isCovered }) => !isCovered)) return [{ closed: true, spans: spansOf(loop) }];
  const seam = parts.findIndex(({ isCovered }) => isCovered);
  const chains: Span[][] = [];
  let chain: Span[] = [];
  for (const { span, isCovered } of [...parts.slice(seam), ...parts.slice(0, seam + 1)]) {
    if (!isCovered) chain.push(span);
    else if (chain.length > 0) {
      chains.push(chain);
      chain = [];
    }
  }
  return chains.map((spans) => ({ closed: false, spans }));
}

/** A chord of the grid lies along a border of which it is a chord. */
function coverRebuilt({ span, isChord }: RebuiltSpan, known: readonly Span[]) {
  if (!isChord) return coverSpan(span, known);
  const isAlong = known.some((each) =>
    [0, 0.5, 1].every((share) => distanceToSpan(each, pointAlong(span, share)) < SAGITTA),
  );
  return [{ span, isCovered: isAlong }];
}
