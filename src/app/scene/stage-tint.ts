/** Stage colours as the sheet shows them. */
import { Color, SRGBColorSpace } from 'three';
import type { Rgb } from './plan-arrays.ts';
import { TINT } from './scene-theme.ts';

const BLACK_CASING = '#0d1013';
const WHITE_CASING = '#ffffff';

/** Mixed as the eye sees it (sRGB values); given as linear light, as three takes vertex colours. */
export function tintOf(color: string | undefined, metal: string): Rgb {
  const [from, to] = [displayed(metal), displayed(color ?? metal)];
  const mixed = { r: mix(from.r, to.r), g: mix(from.g, to.g), b: mix(from.b, to.b) };
  const { r, g, b } = new Color().setRGB(mixed.r, mixed.g, mixed.b, SRGBColorSpace);
  return [r, g, b];
}

/** The colour itself, as linear light. */
export function plainColor(color: string): Rgb {
  const { r, g, b } = new Color(color);
  return [r, g, b];
}

function displayed(color: string): { readonly r: number; readonly g: number; readonly b: number } {
  return new Color(color).getRGB({ r: 0, g: 0, b: 0 }, SRGBColorSpace);
}

function mix(from: number, to: number): number {
  return from + (to - from) * TINT;
}

/** Casing that makes a line of this colour stand out, on metal as on a floor of the same colour. */
export function casingFor(color: string): string {
  const { r, g, b } = new Color(color);
  const luminance = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return luminance > 0.16 ? BLACK_CASING : WHITE_CASING;
}
