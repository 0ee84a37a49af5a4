/**
 * A pen that draws a page as SVG 1.1, so that what goes on paper goes on screen by the same strokes. Millimetres, four decimals:
 * the size of the picture is true. Letters are the viewer's own sans serif, so widths of text are near, not exact.
 */
import type { Point } from '#geometry/point.ts';
import type { Path, Span } from '#geometry/span.ts';
import type { PageBox, PageSize, Pen, Stroke } from './pdf/pen.ts';

/** Of a letter's body, on average over words and figures: plain of a usual sans serif, bold of a wide one (from memory). */
const LETTER = 0.54;
const BOLD_LETTER = 0.7;

export interface SvgPen extends Pen {
  readonly finish: () => string;
}

/** For one page. */
export function svgPen(size: PageSize, title: string): SvgPen {
  const drawn: string[] = [];
  let clips = 0;
  const place = ({ x, y }: Point): string => `${figure(x)} ${figure(size.height - y)}`;
  const spanTo = (span: Span): string => {
    if (span.kind === 'line') return `L${place(span.end)}`;
    const radius = figure(span.radius);
    // At most half a turn, so never the large arc; y points down on the page.
    return `A${radius} ${radius} 0 0 ${span.sweep > 0 ? 0 : 1} ${place(span.end)}`;
  };
  const pathData = ({ spans, closed }: Path): string => {
    const [first] = spans;
    return first === undefined
      ? ''
      : `M${place(first.start)}${spans.map(spanTo).join('')}${closed ? 'Z' : ''}`;
  };
  const boxText = ({ minX, minY, maxX, maxY }: PageBox): string =>
    `x="${figure(minX)}" y="${figure(size.height - maxY)}" width="${figure(maxX - minX)}" height="${figure(maxY - minY)}"`;
  return {
    page: () => undefined,
    line: (from, to, stroke) => {
      drawn.push(`<path d="M${place(from)}L${place(to)}" ${inkOf({ stroke })}/>`);
    },
    paths: (paths, how) => {
      drawn.push(`<path d="${paths.map(pathData).join('')}" ${inkOf(how)}/>`);
    },
    rectangle: (box, how) => {
      drawn.push(`<rect ${boxText(box)} ${inkOf(how)}/>`);
    },
    text: (text, at, { size: body, color, isBold, align, turn }) => {
      const [x, y] = [figure(at.x), figure(size.height - at.y)];
      const turned =
        turn === undefined ? '' : ` transform="rotate(${figure((-turn * 180) / Math.PI)} ${x} ${y})"`;
      const weight = isBold === true ? ' font-weight="bold"' : '';
      const anchor = { left: 'start', middle: 'middle', right: 'end' }[align ?? 'left'];
      drawn.push(
        `<text x="${x}" y="${y}" font-size="${figure(body)}" text-anchor="${anchor}" fill="${color ?? '#000000'}"${weight}${turned}>${escaped(text)}</text>`,
      );
    },
    textWidth: (text, { size: body, isBold }) =>
      text.length * body * (isBold === true ? BOLD_LETTER : LETTER),
    within: (box, draw) => {
      clips++;
      drawn.push(`<clipPath id="clip-${clips}"><rect ${boxText(box)}/></clipPath>`);
      drawn.push(`<g clip-path="url(#clip-${clips})">`);
      draw();
      drawn.push('</g>');
    },
    finish: () => {
      const [width, height] = [figure(size.width), figure(size.height)];
      const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" font-family="sans-serif" fill="none">`;
      const paper = `<rect width="${width}" height="${height}" fill="#ffffff"/>`;
      return `${[head, `<title>${escaped(title)}</title>`, paper, ...drawn, '</svg>'].join('\n')}\n`;
    },
  };
}

function inkOf({ stroke, fill }: { readonly stroke?: Stroke; readonly fill?: string }): string {
  const ink = [`fill="${fill ?? 'none'}"`];
  if (fill !== undefined) ink.push('fill-rule="evenodd"');
  if (stroke !== undefined) {
    ink.push(`stroke="${stroke.color}" stroke-width="${figure(stroke.width)}"`);
    if (stroke.dash !== undefined) ink.push(`stroke-dasharray="${stroke.dash.map(figure).join(' ')}"`);
  }
  return ink.join(' ');
}

/** Up to four decimals, never an exponent, never −0. */
function figure(value: number): string {
  return String(Math.round(value * 1e4) / 1e4 + 0);
}

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Control characters have no place in XML at all. */
function escaped(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  return text.replace(/[\u0000-\u001f]/g, ' ').replace(/[&<>"]/g, (sign) => ESCAPES[sign] ?? sign);
}
