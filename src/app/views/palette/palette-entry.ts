/** Something that the palette finds by its words, and does. */
export interface PaletteEntry {
  readonly key: string;
  readonly words: string;
  readonly aside?: string;
  readonly keys?: string;
  readonly run: () => void;
}
