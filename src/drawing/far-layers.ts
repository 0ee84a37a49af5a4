/**
 * Layers that by words in their names draw the far face of the sheet. Only ever an offer, for a name says nothing for sure. Words from
 * memory, English, German and French.
 */
import type { DrawingLayer } from './drawing.ts';
import { layerWords } from './layer-words.ts';

const WORDS: ReadonlySet<string> = new Set(
  [
    'far farside back backside backface rear rearside reverse underside bottom bottomside bot verso',
    'rück rückseite rueckseite hinten hinterseite unten unterseite',
    'arrière arriere dos verso dessous envers',
  ].flatMap((words) => words.split(' ')),
);

/** Names, in the order of the drawing: of shown layers that have something on them and are not among the others. */
export function farLayers(layers: readonly DrawingLayer[], others: readonly string[]): string[] {
  return layers
    .filter(({ name, shown, counts }) => shown && Object.keys(counts).length > 0 && !others.includes(name))
    .filter(({ name }) => layerWords(name).some((word) => WORDS.has(word)))
    .map(({ name }) => name);
}
