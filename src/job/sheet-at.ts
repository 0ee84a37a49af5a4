/** How thick the sheet comes: at a place, and at its thickest and thinnest anywhere. mm */
import type { Point } from '#geometry/point.ts';
import type { Taper } from './taper.ts';
import { taperedAt } from './tapered-at.ts';

export function sheetAt(thickness: number | Taper, at: Point): number {
  return typeof thickness === 'number' ? thickness : taperedAt([thickness], at);
}

export function thickestOf(thickness: number | Taper): number {
  return typeof thickness === 'number' ? thickness : Math.max(thickness.fromValue, thickness.toValue);
}

export function thinnestOf(thickness: number | Taper): number {
  return typeof thickness === 'number' ? thickness : Math.min(thickness.fromValue, thickness.toValue);
}
