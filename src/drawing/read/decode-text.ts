/**
 * Text values out of bytes. From AC1021 on a DXF is UTF-8; before, it is in the codepage that `$DWGCODEPAGE` names; both may
 * hold `\U+XXXX` and `\M+nXXXX` escapes. What does not fit its encoding is read as windows-1252, which maps every byte, so that a layer
 * name never loses a letter. Source: DXF reference, header variables and text conventions; labels from the WHATWG Encoding Standard.
 */

/** The decoder of the WHATWG Encoding Standard, which browsers and Node share; the core's library of types lacks it. */
declare class TextDecoder {
  constructor(label: string, options?: { fatal?: boolean });
  decode(bytes: Uint8Array): string;
}

export type DecodeText = (bytes: Uint8Array, from: number, to: number) => string;

/** Codepages by the digits of their name; the OEM pages of old DOS files that the standard lacks fall back. */
const LABELS: Readonly<Record<string, string>> = {
  '866': 'ibm866',
  '874': 'windows-874',
  '932': 'shift_jis',
  '936': 'gbk',
  '949': 'euc-kr',
  '950': 'big5',
  '1250': 'windows-1250',
  '1251': 'windows-1251',
  '1252': 'windows-1252',
  '1253': 'windows-1253',
  '1254': 'windows-1254',
  '1255': 'windows-1255',
  '1256': 'windows-1256',
  '1257': 'windows-1257',
  '1258': 'windows-1258',
};

/** The codepages behind the n of `\M+nXXXX`. */
const MULTIBYTE: Readonly<Record<string, string>> = {
  '1': 'shift_jis',
  '2': 'big5',
  '3': 'euc-kr',
  '5': 'gbk',
};

export function textDecoder(file: { version: string; codepage: string; utf8Mark: boolean }): DecodeText {
  const page = LABELS[/(\d+)\s*$/.exec(file.codepage)?.[1] ?? ''];
  const utf8 = file.utf8Mark || file.version >= 'AC1021' || page === undefined;
  const labels = [...(utf8 ? ['utf-8'] : []), ...(page === undefined ? [] : [page])];
  const decoders = labels.map((label) => new TextDecoder(label, { fatal: true }));
  const fallback = new TextDecoder('windows-1252');
  return (bytes, from, to) => {
    let text = '';
    for (let at = from; at < to; at++) {
      const byte = bytes[at] as number;
      if (byte > 126 || byte === 92)
        return spellOut(decodeWith(decoders, fallback, bytes.subarray(from, to)));
      text += byte < 32 ? ' ' : String.fromCharCode(byte);
    }
    return text;
  };
}

function decodeWith(decoders: readonly TextDecoder[], fallback: TextDecoder, bytes: Uint8Array): string {
  for (const decoder of decoders) {
    try {
      return decoder.decode(bytes);
    } catch {
      // Not in this encoding: the next one is tried, and the last one takes every byte.
    }
  }
  return fallback.decode(bytes);
}

function spellOut(text: string): string {
  return text
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/\\U\+([0-9a-fA-F]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\M\+([1235])([0-9a-fA-F]{4})/g, (whole, page: string, hex: string) =>
      multibyte(whole, MULTIBYTE[page], Number.parseInt(hex, 16)),
    );
}

function multibyte(whole: string, label: string | undefined, pair: number): string {
  if (label === undefined) return whole;
  const bytes = pair > 255 ? [pair >> 8, pair & 255] : [pair];
  return new TextDecoder(label).decode(new Uint8Array(bytes));
}
