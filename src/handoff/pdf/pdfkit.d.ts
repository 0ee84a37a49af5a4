/**
 * The part of pdfkit that the pen uses. Lengths are PostScript points, y down from the page's upper edge. Without `rotate`,
 * `arc`, `circle`, `ellipse`, `path` and `oblique`: they take sines and cosines from the engine.
 */
declare module 'pdfkit' {
  interface DocumentOptions {
    readonly autoFirstPage: boolean;
    readonly compress: boolean;
    /** Undefined would load a standard font from disk. */
    readonly font: null;
    readonly info: {
      // biome-ignore lint/style/noRestrictedGlobals: the type that pdfkit asks for.
      readonly CreationDate: Date;
      readonly Title?: string;
      readonly Producer?: string;
      readonly Creator?: string;
    };
  }

  interface TextOptions {
    readonly lineBreak: boolean;
    readonly baseline: 'alphabetic';
  }

  export default class PDFDocument {
    constructor(options: DocumentOptions);
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    text(text: string, x: number, y: number, options: TextOptions): this;
    widthOfString(text: string): number;
    /** The font set last, as fontkit opened it. */
    readonly _font: {
      readonly font: { hasGlyphForCodePoint(code: number): boolean };
      /** Words as they were set, by their text: the same in every document that has the font. */
      layoutCache: Record<string, object>;
      /** What of it goes into the file; a method that may be put in place of another. */
      readonly subset: { encode: () => Uint8Array };
    };
    /** Operators as they stand in the file, a line each; all that draws writes by way of it, and another may be put in its place. */
    addContent: (operators: string) => this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    clip(): this;
    lineWidth(points: number): this;
    lineCap(cap: 'butt' | 'round'): this;
    lineJoin(join: 'miter' | 'round'): this;
    dash(length: number, options: { readonly space: number }): this;
    undash(): this;
    strokeColor(color: string): this;
    fillColor(color: string): this;
    stroke(): this;
    fill(rule: 'even-odd'): this;
    transform(a: number, b: number, c: number, d: number, e: number, f: number): this;
    save(): this;
    restore(): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }
}
