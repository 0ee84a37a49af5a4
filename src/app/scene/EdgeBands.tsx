/** Where drawn edges will land: along each a band as wide as it may be off, with a fine border, true to scale at any zoom. */
import { useMemo } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { EdgeBand } from '#app/state/shown-bands.ts';
import { unpackContours } from '#app/worker/pack-contours.ts';
import { askedOutline } from './asked-outline.ts';
import { bandColors } from './band-colors.ts';
import { FatSegments } from './FatSegments.tsx';
import { contourSegments } from './plan-arrays.ts';
import type { SceneTheme } from './scene-theme.ts';
import { ThinSegments } from './ThinSegments.tsx';
import type { ViewPose } from './view-pose.ts';

interface EdgeBandsProps {
  readonly bands: readonly EdgeBand[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
  readonly pixelsPerMm: number;
  readonly restScale: number;
}

/** Of the border on either side, px. */
const BORDER = 1;
/** Dashes of what is allowed, px. */
const DASH = 4;

export function EdgeBands({ bands, ...rest }: EdgeBandsProps) {
  return bands.map((band) => <Band key={band.index} band={band} {...rest} />);
}

type BandProps = Omit<EdgeBandsProps, 'bands'> & { readonly band: EdgeBand };

function Band({ band, theme, pose, pixelsPerMm, restScale }: BandProps) {
  const { lines, half, color, isPicked, allowed } = band;
  const edges = useMemo(() => unpackContours(lines), [lines]);
  const positions = useMemo(() => contourSegments(edges, pixelsPerMm, new WeakMap()), [edges, pixelsPerMm]);
  const asked = useMemo(() => (allowed === undefined ? [] : askedOutline(edges, allowed)), [edges, allowed]);
  const dashes = useMemo(() => contourSegments(asked, pixelsPerMm, new WeakMap()), [asked, pixelsPerMm]);
  const { line, floor } = bandColors(color, { isPicked, theme });
  const wide = { mm: 2 * half, pose };
  return (
    <>
      <FatSegments positions={positions} color={line} width={2 * BORDER} wide={wide} order={0.5} />
      <FatSegments positions={positions} color={floor} width={0} wide={wide} order={0.6} />
      <ThinSegments positions={dashes} color={line} order={2} dash={DASH / restScale} />
    </>
  );
}
