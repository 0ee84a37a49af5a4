/** Plans of one part laid over each other as SVG, to look at when they differ: region borders grey, each plan's lines in a colour of its own. */
import { boxOfSpans } from '#geometry/box.ts';
import type { Span } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface ShownLines {
  readonly color: string;
  readonly width: number;
  /** Lengths of dashes and gaps, as SVG writes them. */
  readonly dashes?: string;
  readonly spans: readonly Span[];
}

export function linesOf(plan: EtchPlan | undefined): Span[] {
  return (plan?.stages ?? []).flatMap(({ lines }) => lines.flatMap(({ spans }) => spans));
}

export function svgOfLines(title: string, layers: readonly ShownLines[]): string {
  const { minX, minY, maxX, maxY } = boxOfSpans(layers.flatMap(({ spans }) => spans));
  const margin = 0.05 * Math.max(maxX - minX, maxY - minY, 1);
  const box = [minX - margin, -maxY - margin, maxX - minX + 2 * margin, maxY - minY + 2 * margin].join(' ');
  const paths = layers.map(
    ({ color, width, dashes = 'none', spans }) =>
      `<path d="${spans.map(pathOf).join('')}" stroke="${color}" stroke-width="${width}" stroke-dasharray="${dashes}" vector-effect="non-scaling-stroke"/>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="1200" fill="none" stroke-linecap="round">`,
    `<title>${title}</title>`,
    ...paths,
    '</svg>',
    '',
  ].join('\n');
}

function pathOf(span: Span): string {
  const { start, end } = span;
  const from = `M${start.x} ${-start.y}`;
  if (span.kind === 'line') return `${from}L${end.x} ${-end.y}`;
  // y points down on the page, so that a counter-clockwise arc runs with flag 0.
  return `${from}A${span.radius} ${span.radius} 0 0 ${span.sweep > 0 ? 0 : 1} ${end.x} ${-end.y}`;
}
