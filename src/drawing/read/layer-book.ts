/** The layers of a drawing while it is read: their state, what is on them, and what of it was hidden. */

import type { DrawingLayer } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { LayerRecord } from './walk-container.ts';

export interface LayerPage {
  readonly name: string;
  readonly state: 'shown' | 'off' | 'frozen';
  readonly counts: Map<string, number>;
  hidden: number;
}

export class LayerBook {
  readonly #pages = new Map<string, LayerPage>();

  readonly #lineTypes: ReadonlyMap<string, string>;

  /** Line types by the layer's name in capitals. */
  constructor(records: Iterable<LayerRecord>, lineTypes: ReadonlyMap<string, string>) {
    this.#lineTypes = lineTypes;
    for (const { name, off, frozen } of records) {
      this.#pages.set(name.toUpperCase(), pageOf(name, frozen ? 'frozen' : off ? 'off' : 'shown'));
    }
  }

  /** The layer by name, capitals or not; one that the file never declared is shown. */
  page(name: string): LayerPage {
    const key = name.toUpperCase();
    const known = this.#pages.get(key);
    if (known !== undefined) return known;
    const page = pageOf(name, 'shown');
    this.#pages.set(key, page);
    return page;
  }

  /** In the order of the file's table, then of first use. */
  layers(): DrawingLayer[] {
    return [...this.#pages].map(([key, { name, state, counts }]) => ({
      name,
      shown: state === 'shown',
      ...lineTypeOf(this.#lineTypes.get(key)),
      counts: Object.fromEntries([...counts].sort(([a], [b]) => (a < b ? -1 : 1))),
    }));
  }

  findings(): Finding[] {
    return [...this.#pages.values()].flatMap(({ name, state, hidden }) =>
      state === 'shown' || hidden === 0
        ? []
        : [finding('layer-not-shown', { layer: name, state, entities: hidden }, { layer: name })],
    );
  }
}

function lineTypeOf(lineType: string | undefined): { readonly lineType?: string } {
  return lineType === undefined ? {} : { lineType };
}

function pageOf(name: string, state: LayerPage['state']): LayerPage {
  return { name, state, counts: new Map(), hidden: 0 };
}

export function countOn(page: LayerPage, kind: string): void {
  page.counts.set(kind, (page.counts.get(kind) ?? 0) + 1);
}
