/** Readings over the sheet that follow the pointer: written straight to their elements, without a render for each move. */
import type { Picked } from '#app/scene/pick-region.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';

/** How the sheet is read: `origin`, where the sheet on show has its own in the drawing; `scale`, pixels a millimetre. */
export interface ReadingFrame {
  readonly unit: ShownUnit;
  readonly origin: Point;
  readonly scale: number;
}

export function sayHover(
  element: HTMLElement | null,
  picked: Picked | undefined,
  { unit, origin, scale }: ReadingFrame,
): void {
  if (element === null) return;
  if (picked === undefined) {
    element.textContent = '';
    return;
  }
  const { point, shape } = picked;
  const { x, y } = movePoint(point, origin);
  const words = [
    `x ${lengthFigure(x, unit, morePlaces(scale))}  y ${lengthFigure(y, unit, morePlaces(scale))} ${unit}`,
  ];
  if (shape !== undefined) {
    const { id, level } = shape.region;
    words.push(`${id} ${level === 0 ? 'land' : `to ${showLength(level, unit)}`}`);
  }
  element.textContent = words.join('   ');
}

/** Figures of a place resolve a tenth of a pixel: past 10 pixels a millimetre they have more places. */
function morePlaces(scale: number): number {
  return Math.min(3, Math.max(0, Math.ceil(Math.log10(scale) - 1)));
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

/** What is carried, beside the pointer; nothing without a place. */
export function showCarried(element: HTMLElement | null, place: Point | undefined, words: string): void {
  if (element === null) return;
  element.hidden = place === undefined;
  if (place === undefined) return;
  element.textContent = words;
  element.style.left = `${place.x + 14}px`;
  element.style.top = `${place.y + 10}px`;
}
