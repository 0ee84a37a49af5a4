/**
 * The letters of every sheet, loaded when the first is drawn: DejaVu Sans Condensed, plain and bold, which has the signs that
 * the trade writes (≤ ± ⌀ φ → ²). The fonts come through the bundler as data, so Node, worker and page read the same bytes.
 */

/** For any number of sheets: what is set on one need not be on the next. */
export interface SheetFonts {
  readonly plain: SheetFont;
  readonly bold: SheetFont;
}

export interface SheetFont {
  readonly bytes: Uint8Array;
  /** Words that have been set, as pdfkit keeps them: by their text. */
  readonly words: Record<string, object>;
}

export async function loadFonts(): Promise<SheetFonts> {
  const [plain, bold] = await Promise.all([
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?inline'),
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?inline'),
  ]);
  return { plain: fontOf(plain.default), bold: fontOf(bold.default) };
}

function fontOf(dataUrl: string): SheetFont {
  // Any text is a word, also the name of what every object has.
  return { bytes: bytesOfDataUrl(dataUrl), words: Object.create(null) };
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 data URL (RFC 4648, section 4). */
export function bytesOfDataUrl(dataUrl: string): Uint8Array {
  const text = dataUrl.slice(dataUrl.indexOf(',') + 1).replace(/=+$/, '');
  const values = new Uint8Array(128);
  for (let digit = 0; digit < DIGITS.length; digit++) values[DIGITS.charCodeAt(digit)] = digit;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  const valueAt = (index: number): number => values[text.charCodeAt(index)] ?? 0;
  for (let index = 0, at = 0; index < text.length; index += 4, at += 3) {
    const held =
      (valueAt(index) << 18) | (valueAt(index + 1) << 12) | (valueAt(index + 2) << 6) | valueAt(index + 3);
    // What lies past the end of the bytes is no part of them.
    bytes[at] = held >> 16;
    bytes[at + 1] = held >> 8;
    bytes[at + 2] = held;
  }
  return bytes;
}
