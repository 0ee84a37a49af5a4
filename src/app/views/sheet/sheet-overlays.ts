/** Readings over the sheet that follow the pointer: written straight to their elements, without a render for each move. */
import type { Picked } from '#app/scene/pick-region.ts';
import { gaugeWords } from '#app/views/section/gauge-words.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';

/** `origin`: where the sheet on show has its own in the drawing. */
export function sayHover(
  element: HTMLElement | null,
  picked: Picked | undefined,
  { unit, origin }: { readonly unit: ShownUnit; readonly origin: Point },
  reading?: PlaceDepth,
): void {
  if (element === null) return;
  if (picked === undefined) {
    element.textContent = '';
    return;
  }
  const { point, shape } = picked;
  const { x, y } = movePoint(point, origin);
  const words = [`x ${lengthFigure(x, unit)}  y ${lengthFigure(y, unit)} ${unit}`];
  if (shape !== undefined) {
    const { id, level } = shape.region;
    words.push(`${id} ${level === 0 ? 'land' : `to ${showLength(level, unit)}`}`);
  }
  if (reading !== undefined) words.push(gaugeWords(reading, unit));
  element.textContent = words.join('   ');
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
