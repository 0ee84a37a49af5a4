/** The scribe lines of a piece: what of its border a knife has to follow. */
import { coverSpan } from '#geometry/cover-span.ts';
import { spansOf, type TracedLoop } from '#geometry/rebuild-loops.ts';
import type { Path, Span } from '#geometry/span.ts';
import type { BorderKind } from './largest-opening.ts';

/** What of the piece's border has to be cut: all but earlier lines and the sheet's edge, in chains as long as can be. */
export function scribeLines(piece: readonly TracedLoop<BorderKind>[], earlier: readonly Span[]): Path[] {
  return piece.flatMap((loop): Path[] => {
    const parts = loop.flatMap(({ span, tag }) =>
      tag === 'sheet-edge' ? [{ span, isCovered: true }] : coverSpan(span, earlier),
    );
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
  });
}
