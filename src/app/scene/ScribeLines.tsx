/**
 * The lines of a stage: always in its colour and seen at every zoom, with a casing against what they lie on, and its mark
 * repeated along them.
 */
import { useMemo } from 'react';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { FatSegments } from './FatSegments.tsx';
import { CASED_FROM, CASING, MARK, SCRIBE_WIDTH } from './line-looks.ts';
import { contourSegments, markSegments, type SegmentCache } from './plan-arrays.ts';
import type { SceneTheme } from './scene-theme.ts';
import { lookOf } from './stage-looks.ts';
import { ThinSegments } from './ThinSegments.tsx';

interface ScribeLinesProps {
  readonly stage: ShownStage;
  readonly pixelsPerMm: number;
  /** That the view rests at. */
  readonly restScale: number;
  readonly isSealed: boolean;
  /** Nothing else may compete with them. */
  readonly isAlone: boolean;
  readonly theme: SceneTheme;
  readonly cache: SegmentCache;
}

/** Numbers of a stage's segments, six each, above which lines that are all very short go without a casing: drawn in software, each costs time. */
const MOST_CASED = 12_000;
/** Dash of a sealed line, px. */
const DASH = 2.5;

export function ScribeLines({
  stage,
  pixelsPerMm,
  restScale,
  isSealed,
  isAlone,
  theme,
  cache,
}: ScribeLinesProps) {
  const { lines, color, number } = stage;
  const segments = useMemo(() => contourSegments(lines, pixelsPerMm, cache), [lines, pixelsPerMm, cache]);
  const marks = useMemo(
    () =>
      markSegments(isSealed ? [] : lines, {
        stage: number,
        pixelsPerMm: restScale,
        pitch: MARK.pitch,
        every: MARK.every,
        length: MARK.length,
      }),
    [lines, number, restScale, isSealed],
  );
  const look = useMemo(() => lookOf(color, theme), [color, theme]);
  const isShort = useMemo(
    () => (segmentsLength(segments) / Math.max(1, lines.length)) * pixelsPerMm < CASED_FROM,
    [segments, lines, pixelsPerMm],
  );
  if (isSealed) {
    return <ThinSegments positions={segments} color={theme.sealed} order={2} dash={DASH / restScale} />;
  }
  const width = isAlone || theme.isDark ? SCRIBE_WIDTH.strong : SCRIBE_WIDTH.usual;
  const isCased = !isShort || segments.length <= MOST_CASED;
  return (
    <>
      {isCased && (
        <FatSegments positions={segments} color={look.casing} width={width + 2 * CASING} order={2} />
      )}
      <FatSegments positions={segments} color={look.line} width={width} order={3} />
      <FatSegments positions={marks} color={look.mark} width={MARK.width} order={4} />
    </>
  );
}

/** mm */
function segmentsLength(segments: Float32Array): number {
  let total = 0;
  for (let at = 0; at < segments.length; at += 6) {
    const [x = 0, y = 0, , toX = 0, toY = 0] = segments.subarray(at, at + 5);
    total += Math.hypot(toX - x, toY - y);
  }
  return total;
}
