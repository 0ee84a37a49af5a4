/** The lines of a stage in an SVG sheet: casing, colour and mark, as the canvas draws them. */
import { memo, useMemo } from 'react';
import { CASING, MARK, SCRIBE_WIDTH } from '#app/scene/line-looks.ts';
import { markTicks } from '#app/scene/mark-groups.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { contourPath } from '#app/views/handoff/contour-path.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownStage } from '#job/formats/plan-file.ts';

interface FlatScribeLinesProps {
  readonly stage: ShownStage;
  readonly pixelsPerMm: number;
  readonly isSealed: boolean;
  readonly isAlone: boolean;
  readonly theme: SceneTheme;
}

export const FlatScribeLines = memo(function FlatScribeLines({
  stage,
  pixelsPerMm,
  isSealed,
  isAlone,
  theme,
}: FlatScribeLinesProps) {
  const { lines, color, number } = stage;
  const path = useMemo(() => lines.map(contourPath).join(''), [lines]);
  const ticks = useMemo(() => tickPath(lines, number, pixelsPerMm), [lines, number, pixelsPerMm]);
  if (isSealed) return <path d={path} stroke={theme.sealed} strokeWidth={1} strokeDasharray="2.5 2.5" />;
  const look = lookOf(color, theme);
  const width = isAlone || theme.isDark ? SCRIBE_WIDTH.strong : SCRIBE_WIDTH.usual;
  return (
    <g data-stage={number}>
      <path d={path} stroke={look.casing} strokeWidth={width + 2 * CASING} />
      <path d={path} stroke={look.line} strokeWidth={width} />
      <path d={ticks} stroke={look.mark} strokeWidth={MARK.width} />
    </g>
  );
});

function tickPath(lines: readonly Contour[], stage: number, pixelsPerMm: number): string {
  const half = MARK.length / pixelsPerMm / 2;
  return lines
    .flatMap((line) =>
      markTicks(pathOfContour(line), { stage, pixelsPerMm, pitch: MARK.pitch, every: MARK.every }),
    )
    .map(({ at, across }) => {
      const [dx, dy] = [across.x * half, across.y * half];
      return `M${at.x - dx} ${-(at.y - dy)}L${at.x + dx} ${-(at.y + dy)}`;
    })
    .join('');
}
