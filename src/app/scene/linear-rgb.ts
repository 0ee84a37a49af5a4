/** A colour as linear light, which is how vertex colours are given. */
import { Color } from 'three';
import type { Rgb } from './plan-arrays.ts';

export function linearRgb(color: string): Rgb {
  const { r, g, b } = new Color(color);
  return [r, g, b];
}
