/** A slice through a sheet and its maskant: what has been etched, what is bare, what is sealed. One scale both ways. */
import type { ReactNode } from 'react';
import { type SliceOpening, sliceProfile } from './slice-profile.ts';

/** px a mm */
export const SCALE = 28;
/** Maskant is drawn thicker than it is, px. */
const MASKANT = 6;
/** Room above the sheet for the maskant and words, px. */
export const SKY = 34;

/** Metal that one stage took: the fronts before and after it. */
export interface SliceBand {
  readonly color: string;
  readonly before: readonly SliceOpening[];
  readonly after: readonly SliceOpening[];
}

interface SliceFigureProps {
  readonly name: string;
  /** mm */
  readonly width: number;
  readonly thickness: number;
  readonly factor?: number;
  readonly bands: readonly SliceBand[];
  /** Stretches where maskant stands, mm. */
  readonly maskant: readonly (readonly [number, number])[];
  /** Scribed lines that are still sealed over, mm. */
  readonly sealed?: readonly number[];
  /** Words and dimension lines, in px of the figure. */
  readonly children?: ReactNode;
}

export function SliceFigure(props: SliceFigureProps) {
  const { name, width, thickness, factor = 1, bands, maskant, sealed = [], children } = props;
  const last = bands.at(-1);
  const etched = last === undefined ? [] : sliceProfile(last.after, { width, factor });
  return (
    <svg
      role="img"
      aria-label={name}
      viewBox={`-8 0 ${width * SCALE + 16} ${SKY + thickness * SCALE + 4}`}
      width={width * SCALE + 16}
    >
      <rect className="metal" x={0} y={SKY} width={width * SCALE} height={thickness * SCALE} />
      {bands.map(({ color, before, after }) => (
        <path key={color} fill={color} d={bandPath({ before, after, width, factor })} />
      ))}
      {etched.length > 0 && <path className="front" d={`M${etched.map(placeOf).join('L')}`} />}
      {maskant.map(([from, to]) => (
        <rect
          key={from}
          className="maskant"
          x={from * SCALE}
          y={SKY - MASKANT}
          width={(to - from) * SCALE}
          height={MASKANT}
        />
      ))}
      {sealed.map((at) => (
        <ellipse key={at} className="seal" cx={at * SCALE} cy={SKY - MASKANT} rx={6} ry={4} />
      ))}
      {children}
    </svg>
  );
}

function bandPath(band: {
  readonly before: readonly SliceOpening[];
  readonly after: readonly SliceOpening[];
  readonly width: number;
  readonly factor: number;
}): string {
  const after = sliceProfile(band.after, band).map(placeOf);
  const before = sliceProfile(band.before, band).map(placeOf).reverse();
  return `M${[...after, ...before].join('L')}Z`;
}

function placeOf({ x, depth }: { readonly x: number; readonly depth: number }): string {
  return `${(x * SCALE).toFixed(2)} ${(SKY + depth * SCALE).toFixed(2)}`;
}
