/** What is wrong with the words of a template set, measured on polygons of its slots: nothing of the template's own code but its parts. */

import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import { templateLabel } from '#handoff/template/template-label.ts';
import type { TemplateSet } from '#handoff/template/template-set.ts';

interface Box {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
}

/** Words of the label, of holes and of regions that come onto a slot, a hole, the template's edge or each other. */
export function labelFaults(set: TemplateSet): string[] {
  const faults: string[] = [];
  const edge = polygon(set.sheet.outline);
  set.templates.forEach((slots, index) => {
    const { texts } = templateLabel(set, index + 1, 'a'.repeat(64));
    const words = [...texts, ...(set.names[index] ?? [])].map(({ at, height, text }) => ({
      text,
      // Narrower than a square a letter: as DejaVu Sans is wide on the mean, 0.6 of the body.
      box: { minX: at.x, maxX: at.x + (text.length * height * 0.6) / 0.7, minY: at.y, maxY: at.y + height },
    }));
    const shapes = [
      ...slots.map((slot) => slot.outline.flatMap(polygon)),
      ...set.sheet.holes.map(({ center, radius }) =>
        Array.from({ length: 24 }, (_, i) => ({
          x: center.x + radius * Math.cos((i * Math.PI) / 12),
          y: center.y + radius * Math.sin((i * Math.PI) / 12),
        })),
      ),
    ];
    words.forEach(({ text, box }, place) => {
      if (shapes.some((shape) => shape.some((point) => isIn(point, box))))
        faults.push(`${text} over a slot or hole`);
      if (edge.some((point) => isIn(point, box))) faults.push(`${text} over the edge`);
      const other = words.slice(place + 1).find((each) => doMeet(each.box, box));
      if (other !== undefined) faults.push(`${text} over ${other.text}`);
    });
  });
  return faults;
}

function polygon(spans: readonly Span[]) {
  return spans.flatMap((span) => {
    const count = Math.max(1, Math.ceil(spanLength(span) / 0.4));
    return Array.from({ length: count }, (_, i) => pointAlong(span, i / count));
  });
}

function isIn({ x, y }: { x: number; y: number }, { minX, maxX, minY, maxY }: Box): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}

function doMeet(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
