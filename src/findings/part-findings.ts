/** Findings about linework and the regions that it makes. Lengths in mm, areas in mm². */
import { figureTo, lengthWriter, type Shown } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

/** Gaps that keep outlines from closing: how many, and the widest, mm. */
interface OpenGaps {
  readonly gaps?: number;
  readonly widest?: number;
}

interface LayerMissing {
  readonly layer: string;
  readonly meant: string | undefined;
  readonly known: readonly string[];
}

/** Up to four decimals, none for nothing. */
const figureOf = figureTo(4);
const mm = lengthWriter(figureOf);

export const partWords = {
  'line-without-length': note<{ kind: string }>({
    title: 'Line without length',
    say: ({ kind }) => ({
      reason: `Part of this ${kind} starts and ends at the same point, so it bounds nothing; it was skipped.`,
      remedy: 'No action is needed. To remove this note, delete the line from the drawing.',
    }),
  }),
  'line-doubled': note<{ kind: string; otherLine: number }>({
    title: 'Line drawn twice',
    say: ({ kind, otherLine }) => ({
      reason: `This ${kind} coincides with the one on line ${otherLine} of the file; the two are used as one.`,
      remedy: 'Delete one of the two, unless both layers need it.',
    }),
  }),
  'line-over-itself': note<{ kind: string }>({
    title: 'Line runs over itself',
    say: ({ kind }) => ({
      reason: `This ${kind} runs back over itself; the repeated length is used once.`,
      remedy: 'Delete the redundant vertices in the drawing.',
    }),
  }),
  'line-overshoots': note<{ kind: string; length: number }>({
    title: 'Line overshoots',
    say: ({ kind, length }, show) => ({
      reason: `This ${kind} runs ${mm(length, show)} past the line that it meets; the end was cut off.`,
      remedy: 'No action is needed. To remove this note, trim the line in the drawing.',
      value: length,
    }),
  }),
  'line-leads-nowhere': warn<{ kind: string; length: number }>({
    title: 'Line leads nowhere',
    say: ({ kind, length }, show) => ({
      reason: `${mm(length, show)} of this ${kind} closes no outline, so it bounds no region; it was left out.`,
      remedy: `Extend it to close the outline, delete it, or put its layer under ${show.field('layers.ignore')}.`,
      value: length,
    }),
  }),
  /** Faces narrower than a line can be placed; the widest of them, mm. */
  'slivers-merged': note<Figures<'count' | 'width' | 'limit'>>({
    title: 'Slivers merged',
    say: ({ count, width, limit }, show) => ({
      reason: [
        `Lines less than ${mm(limit, show)} apart leave ${count === 1 ? 'a face' : `${count} faces`} between them, up to ${mm(width, show)} wide:`,
        `too narrow to scribe on both sides. ${count === 1 ? 'It is' : 'Each is'} merged into the region beside it.`,
      ],
      remedy:
        'No action is needed. To remove this note, draw each outline once, or one line between neighbours.',
      value: width,
      limit,
    }),
  }),
  'gap-joined': note<{ gap: number; joinTolerance: number }>({
    title: 'Gap joined',
    say: ({ gap, joinTolerance }, show) => ({
      reason: `Two ends ${mm(gap, show)} apart were joined.`,
      remedy: `Check that they belong together; a joinTolerance under ${mm(gap, show)} keeps them apart.`,
      value: gap,
      limit: joinTolerance,
    }),
  }),
  'gap-open': warn<{ gap: number; joinTolerance: number }>({
    title: 'Gap left open',
    say: ({ gap, joinTolerance }, show) =>
      gap <= joinTolerance
        ? {
            reason: `An end stops ${mm(gap, show)} short of the nearest line and was not joined, because its own line is hardly longer than the gap.`,
            remedy: 'Close it in the drawing.',
            value: gap,
            limit: joinTolerance,
          }
        : {
            reason: `An end stops ${mm(gap, show)} short of the nearest line; up to ${mm(joinTolerance, show)} would be joined.`,
            remedy: `Close it in the drawing, or set joinTolerance to ${mm(Math.ceil(gap * 100) / 100, show)}.`,
            value: gap,
            limit: joinTolerance,
          },
  }),
  'layer-beside-the-part': warn<{
    layer: string;
    /** What it was recognised by. */
    why: string;
    /** Lines of it that lead nowhere, gaps. */
    troubles: number;
  }>({
    title: 'Layer that may not draw the part',
    say: ({ layer, why, troubles }, show) => ({
      reason: [
        `Layer ${layer} looks like dimensions, centre lines, a border or notes (${why}), but is used as part of the drawing.`,
        ...(troubles === 0
          ? []
          : [`${troubles === 1 ? 'One of its lines closes' : `${troubles} of its lines close`} no outline.`]),
      ],
      remedy: `Put "${layer}" under ${show.field('layers.ignore')}, or list the layers to use under ${show.field('layers.regions')}.`,
      value: troubles,
    }),
  }),
  'layer-missing': warn<LayerMissing>({
    title: 'Layer not in the drawing',
    say: sayMissing,
  }),
  'outline-layer-missing': stop<LayerMissing>({
    title: 'Outline layer not in the drawing',
    say: sayMissing,
  }),
  'sheet-point-unmet': stop<{ names: 'outline' | 'hole'; at: readonly [number, number]; isOnLine: boolean }>({
    title: 'Point selects no part of the sheet',
    say: ({ names, at, isOnLine }, show) => ({
      reason: `The point ${mm(at[0], show)}, ${mm(at[1], show)} ${isOnLine ? 'lies on a line' : 'lies inside no closed outline'}, so it selects no ${names === 'outline' ? 'sheet' : 'hole'}.`,
      remedy: `Give a point well inside, in drawing coordinates; ${show.code('isobath inspect')} lists one for each region.`,
    }),
  }),
  'outline-not-closed': stop<OpenGaps & { layers: readonly string[] }>({
    title: 'Outline not closed',
    say: ({ layers, ...open }, show) => ({
      reason: `${gapsInWords(open, show)}The linework on ${layersInWords(layers)} contains no closed outline, so there is no sheet to etch.`,
      remedy: gapsRemedy(
        open,
        `Close the outline in the drawing, or name its layer under ${show.field('layers.outline')}.`,
        show,
      ),
    }),
  }),
  'outline-crosses-itself': warn<{ kind: string; times: number }>({
    title: 'Outline crosses itself',
    say: ({ kind, times }) => ({
      reason: `This ${kind} passes through ${times === 1 ? 'one point' : `${times} points`} twice, so inside and outside swap there.`,
      remedy: 'Check the place in the plan view; draw each closed outline as a separate curve.',
      value: times,
    }),
  }),
  'outlines-overlap': warn<{ outlines: number }>({
    title: 'Outlines overlap',
    say: ({ outlines }) => ({
      reason: [
        `${outlines} closed outlines of the sheet overlap, none of them inside another.`,
        'They were merged into one: one cutout inside the sheet, or one sheet with what projects beyond its edge.',
      ],
      remedy: 'Trim the outlines in the drawing to the one border that is meant.',
    }),
  }),
  'linework-too-crossed': stop<{ what: 'pairs' | 'meetings'; limit: number }>({
    title: 'Too many crossings in the linework',
    say: ({ what, limit }, show) => ({
      reason:
        what === 'meetings'
          ? `The lines cross or touch each other at more than ${limit} places, so regions were not computed.`
          : `More than ${limit} pairs of lines lie across or close to each other, so regions were not computed.`,
      remedy: `Put hatching, scanned lines and details on separate layers, and list those under ${show.field('layers.ignore')}.`,
      limit,
    }),
  }),
  'no-closed-region': stop<OpenGaps>({
    title: 'No closed region',
    say: (open, show) => ({
      reason: `${gapsInWords(open, show)}The linework in use encloses no area.`,
      remedy: gapsRemedy(open, 'Close the outlines in the drawing, or check which layers are used.', show),
    }),
  }),
  'region-outside-sheet': warn<{ area: number }>({
    title: 'Region outside the sheet',
    say: ({ area }, show) => ({
      reason: `A closed area of ${figureOf(area)} mm² lies outside the outline of the sheet; it is not etched.`,
      remedy: `Move it inside the outline, or put its layer under ${show.field('layers.ignore')}.`,
      value: area,
    }),
  }),
};

function gapsInWords({ gaps = 0, widest = 0 }: OpenGaps, show: Shown): string {
  if (gaps === 0) return '';
  return gaps === 1
    ? `An end stops ${mm(widest, show)} short. `
    : `${gaps} ends stop short of other lines, by ${mm(widest, show)} at most. `;
}

function gapsRemedy({ gaps = 0, widest = 0 }: OpenGaps, otherwise: string, show: Shown): string {
  if (gaps === 0) return otherwise;
  return `Close ${gaps === 1 ? 'the gap' : 'the gaps'} in the drawing, or set joinTolerance to ${mm(Math.ceil(widest * 100) / 100, show)}.`;
}

function sayMissing({ layer, meant, known }: LayerMissing): { reason: string; remedy: string } {
  const all = known.length === 0 ? 'The drawing has no layers.' : `Its layers: ${known.join(', ')}.`;
  return {
    reason: `The drawing has no layer "${layer}".`,
    remedy: meant === undefined ? all : `Did you mean "${meant}"? ${all}`,
  };
}

function layersInWords(layers: readonly string[]): string {
  return `${layers.length === 1 ? 'layer' : 'layers'} ${layers.map((layer) => `"${layer}"`).join(', ')}`;
}
