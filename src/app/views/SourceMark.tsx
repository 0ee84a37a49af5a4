/** How well a figure is known: a pie, the fuller the better, and the word for it; at rest where it comes from. */
import { GRADE, type ProvenanceKind } from '#bath/provenance.ts';

export interface FigureSource {
  readonly source?: string | undefined;
  readonly kind?: ProvenanceKind | undefined;
}

/** Share of the pie; none of a figure that somebody typed, whose ground is not known here. */
const SHARE: Readonly<Record<ProvenanceKind, number>> = {
  measured: 1,
  published: 0.75,
  'common-practice': 0.5,
  memory: 0.25,
  user: 0,
};
const RADIUS = 5;

export function SourceMark({ source, kind }: FigureSource) {
  if (kind === undefined) return null;
  return (
    <span className="source-mark" title={source}>
      <svg width="12" height="12" viewBox="-6 -6 12 12" aria-hidden="true">
        <circle r={RADIUS} className="rim" />
        {SHARE[kind] === 1 ? (
          <circle r={RADIUS} className="pie" />
        ) : (
          <path d={pie(SHARE[kind])} className="pie" />
        )}
      </svg>
      {GRADE[kind]}
    </span>
  );
}

/** From the top, clockwise. */
function pie(share: number): string {
  if (share === 0) return '';
  const [x, y] = [RADIUS * Math.sin(2 * Math.PI * share), -RADIUS * Math.cos(2 * Math.PI * share)];
  return `M0 0V${-RADIUS}A${RADIUS} ${RADIUS} 0 ${share > 0.5 ? 1 : 0} 1 ${x.toFixed(3)} ${y.toFixed(3)}Z`;
}
