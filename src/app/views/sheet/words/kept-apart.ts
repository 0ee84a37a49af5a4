/** What is left of texts that stand at places of their own, so that no two run into each other: the first of two stays. Pixels; pure. */
import type { Box } from '#geometry/box.ts';
import { grown, overlap } from './place-labels.ts';

const CLEAR = 2;

export function keptApart<Text extends { readonly box: Box }>(texts: readonly Text[]): Text[] {
  const kept: Text[] = [];
  for (const text of texts) {
    const box = grown(text.box, CLEAR);
    if (!kept.some((other) => overlap(box, other.box))) kept.push(text);
  }
  return kept;
}
