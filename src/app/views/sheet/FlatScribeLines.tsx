/** The lines of a stage in an SVG sheet: casing, colour and mark, as the canvas draws them. */
import { memo, useMemo } from 'react';
import { LINE_WIDTH, MARK_ROOM, SCRIBE_WIDTH, TICK } from '#app/scene/line-looks.ts';
import { contourPath } from '#app/views/handoff/contour-path.ts';
import { inkOn } from '#app/views/ink-on.ts';
import { spansLength } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownStage } from '#job/files/plan-file.ts';
import { stageMark } from '#plan/stage-mark.ts';

interface FlatScribeLinesProps {
  readonly stage: ShownStage;
  readonly pixelsPerMm: number;
  /** Set while the line is sealed over. */
  readonly sealedColor: string | undefined;
}

export const FlatScribeLines = memo(function FlatScribeLines({
  stage,
  pixelsPerMm,
  sealedColor,
}: FlatScribeLinesProps) {
  const { lines, color, number } = stage;
  const path = useMemo(() => lines.map(contourPath).join(''), [lines]);
  const meanLength = useMemo(() => meanLengthOf(lines), [lines]) * pixelsPerMm;
  const hasMarks = meanLength > MARK_ROOM.marks;
  const ticks = useMemo(
    () => (hasMarks ? tickPath(lines, number, pixelsPerMm) : ''),
    [lines, number, pixelsPerMm, hasMarks],
  );
  if (sealedColor !== undefined) return <path d={path} stroke={sealedColor} strokeWidth={1} />;
  const casing = inkOn(color);
  // As on the canvas, short lines keep the stage's own colour.
  if (meanLength < MARK_ROOM.casing)
    return <path data-stage={number} d={path} stroke={color} strokeWidth={SCRIBE_WIDTH.far.core} />;
  const width = hasMarks ? SCRIBE_WIDTH.near : SCRIBE_WIDTH.far;
  return (
    <g data-stage={number}>
      <path d={path} stroke={casing} strokeWidth={width.casing} />
      <path d={ticks} stroke={casing} strokeWidth={LINE_WIDTH.tickCasing} />
      <path d={path} stroke={color} strokeWidth={width.core} />
      <path d={ticks} stroke={color} strokeWidth={LINE_WIDTH.tick} />
    </g>
  );
});

/** mm */
function meanLengthOf(lines: readonly Contour[]): number {
  const total = lines.reduce((sum, line) => sum + spansLength(pathOfContour(line).spans), 0);
  return total / Math.max(1, lines.length);
}

function tickPath(lines: readonly Contour[], stage: number, pixelsPerMm: number): string {
  const half = TICK.length / pixelsPerMm / 2;
  return lines
    .flatMap((line) => stageMark(pathOfContour(line).spans, { stage, pitch: TICK.pitch / pixelsPerMm }))
    .map(({ at, across }) => {
      const [dx, dy] = [across.x * half, across.y * half];
      return `M${at.x - dx} ${-(at.y - dy)}L${at.x + dx} ${-(at.y + dy)}`;
    })
    .join('');
}
