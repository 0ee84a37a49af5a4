/** A border to show a sheet without end by: the box of all that the front reaches, with room around it. */

import { type FrontIndex, featureBox } from '#front/front-index.ts';
import { itemAt } from '#geometry/assert.ts';
import { EMPTY_BOX, growBox, joinBoxes } from '#geometry/box.ts';
import { type Loop, lineSpan } from '#geometry/span.ts';

/** mm of untouched land left around. */
const ROOM = 10;

export function endlessSheet({ features, reaches }: FrontIndex): Loop[] {
  let box = EMPTY_BOX;
  for (const feature of features)
    box = joinBoxes(box, growBox(featureBox(feature), itemAt(reaches, feature.stage)));
  if (features.length === 0) box = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const { minX, minY, maxX, maxY } = growBox(box, ROOM);
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  return [corners.map((corner, i) => lineSpan(corner, itemAt(corners, (i + 1) % 4)))];
}
