/** Trouble in the linework as findings: one for each fault, at most a page of each kind. */
import type { DrawnCurve } from '#drawing/drawing.ts';
import { type Finding, finding, type Place } from '#findings/finding.ts';
import { tallied } from '#findings/finding-tally.ts';
import type { LineworkTrouble } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import type { NoiseLayer } from './noise-layers.ts';

export interface LineworkTaken {
  readonly joinTolerance: number;
  /** Layers that take part and look as if they should not. */
  readonly noise: readonly NoiseLayer[];
}

/**
 * Trouble in the order given; a curve that an open gap keeps from closing is reported as the gap, not as dangling too. What a layer of
 * dimensions, centre lines or borders brings is one finding.
 */
export function lineworkFindings(
  all: readonly LineworkTrouble[],
  curves: readonly DrawnCurve[],
  { joinTolerance, noise }: LineworkTaken,
): Finding[] {
  const noisy = new Map(noise.map(({ layer }) => [layer, 0]));
  const trouble = all.filter((each) => {
    const layers = 'sources' in each ? each.sources.map((source) => itemAt(curves, source).layer) : [];
    const [layer] = layers;
    if (layer === undefined || !layers.every((other) => noisy.has(other))) return true;
    noisy.set(layer, (noisy.get(layer) ?? 0) + 1);
    return false;
  });
  const offers = noise.map(({ layer, why }) =>
    finding('layer-beside-the-part', { layer, why, troubles: noisy.get(layer) ?? 0 }, { layer }),
  );
  const gapped = new Set(trouble.flatMap((each) => (each.kind === 'open-gap' ? each.sources : [])));
  const findings = trouble
    .filter((each) => each.kind !== 'dangling' || !each.sources.some((source) => gapped.has(source)))
    .map((each) => findingOf(each, { curves, joinTolerance }));
  return [...offers, ...tallied(findings)];
}

interface Drawn {
  readonly curves: readonly DrawnCurve[];
  readonly joinTolerance: number;
}

function findingOf(trouble: LineworkTrouble, { curves, joinTolerance }: Drawn): Finding {
  const first = 'sources' in trouble ? trouble.sources[0] : trouble.source;
  const { kind, layer, line } = itemAt(curves, first ?? 0);
  const place: Place = { at: trouble.at, layer, line };
  switch (trouble.kind) {
    case 'zero-length':
      return finding('line-without-length', { kind }, place);
    case 'doubled':
      return trouble.other === trouble.source
        ? finding('line-over-itself', { kind }, place)
        : finding('line-doubled', { kind, otherLine: itemAt(curves, trouble.other).line }, place);
    case 'joined-gap':
      return finding('gap-joined', { gap: trouble.gap, joinTolerance }, place);
    case 'open-gap':
      return finding('gap-open', { gap: trouble.gap, joinTolerance }, place);
    case 'too-crossed':
      return finding('linework-too-crossed', { what: trouble.what, limit: trouble.limit }, place);
    case 'dangling':
      return trouble.length <= joinTolerance
        ? finding('line-overshoots', { kind, length: trouble.length }, place)
        : finding('line-leads-nowhere', { kind, length: trouble.length }, place);
  }
}
