/**
 * The letters of every sheet, loaded when the first is drawn: DejaVu Sans Condensed, plain and bold, which has the signs that
 * the trade writes (≤ ± ⌀ φ → ²). The fonts come through the bundler as data, so Node, worker and page read the same bytes.
 */
import { itemAt } from '#geometry/assert.ts';

export interface SheetFonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
}

export async function loadFonts(): Promise<SheetFonts> {
  const [plain, bold] = await Promise.all([
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?inline'),
    import('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?inline'),
  ]);
  return { plain: bytesOfDataUrl(plain.default), bold: bytesOfDataUrl(bold.default) };
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 data URL (RFC 4648, section 4). */
export function bytesOfDataUrl(dataUrl: string): Uint8Array {
  const text = dataUrl.slice(dataUrl.indexOf(',') + 1).replace(/=+$/, '');
  const values = new Uint8Array(128);
  for (let digit = 0; digit < DIGITS.length; digit++) values[DIGITS.charCodeAt(digit)] = digit;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (let index = 0; index < text.length; index++) {
    held = ((held << 6) | itemAt(values, text.charCodeAt(index))) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}
