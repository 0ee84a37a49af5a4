/** Readings over the sheet that follow the pointer: written straight to their elements, without a render for each move. */
import type { Picked } from '#app/scene/pick-region.ts';
import type { Point } from '#geometry/point.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';

export function sayHover(element: HTMLElement | null, picked: Picked | undefined, unit: ShownUnit): void {
  if (element === null) return;
  if (picked === undefined) {
    element.textContent = '';
    return;
  }
  const { point, shape } = picked;
  const place = `x ${lengthFigure(point.x, unit)}  y ${lengthFigure(point.y, unit)} ${unit}`;
  if (shape === undefined) element.textContent = place;
  else {
    const { id, level } = shape.region;
    element.textContent = `${place}   ${id} ${level === 0 ? 'land' : `${showLength(level, unit)} deep`}`;
  }
}

export function drawBox(
  element: HTMLElement | null,
  box: { readonly from: Point; readonly to: Point } | undefined,
): void {
  if (element === null) return;
  element.hidden = box === undefined;
  if (box === undefined) return;
  const { from, to } = box;
  element.style.left = `${Math.min(from.x, to.x)}px`;
  element.style.top = `${Math.min(from.y, to.y)}px`;
  element.style.width = `${Math.abs(to.x - from.x)}px`;
  element.style.height = `${Math.abs(to.y - from.y)}px`;
}
