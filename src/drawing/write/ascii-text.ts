/** Text for drawings, which hold ASCII; control characters become spaces, for a line break would end the value. */

/** What ASCII lacks in the format's own escape, known from release 2000 on. */
export function asciiText(text: string): string {
  return spelled(text, (code) => `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`);
}

/** For readers that know ASCII alone: accents left off, typographic signs as the plain ones, all else as question marks. */
export function asciiOnly(text: string): string {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '');
  return spelled(plain, (code) => PLAIN_SIGNS[String.fromCharCode(code)] ?? '?');
}

const PLAIN_SIGNS: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '–': '-',
  '—': '-',
  '−': '-',
  '×': 'x',
};

function spelled(text: string, other: (code: number) => string): string {
  let out = '';
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    if (code < 32 || code === 127) out += ' ';
    else if (code < 127) out += text.charAt(index);
    else out += other(code);
  }
  return out;
}
