/** A text DXF put into binary form, in either layout, for tests. Source: DXF reference, binary DXF files. */

const SENTINEL = 'AutoCAD Binary DXF\r\n\x1a\0';

export function toBinary(text: string, layout: 'release 12' | 'later'): Uint8Array {
  const out: number[] = [...SENTINEL].map((letter) => letter.charCodeAt(0));
  const lines = text.split('\n');
  for (let n = 0; n + 1 < lines.length; n += 2) {
    const code = Number(lines[n]);
    if (layout === 'later') out.push(code & 255, code >> 8);
    else if (code < 255) out.push(code);
    else out.push(255, code & 255, code >> 8);
    out.push(...valueBytes(code, lines[n + 1] ?? ''));
  }
  return Uint8Array.from(out);
}

function valueBytes(code: number, value: string): number[] {
  const view = new DataView(new ArrayBuffer(8));
  const take = (count: number): number[] => [...new Uint8Array(view.buffer, 0, count)];
  if ((code >= 10 && code < 60) || (code >= 210 && code < 240) || (code >= 1010 && code < 1060)) {
    view.setFloat64(0, Number(value), true);
    return take(8);
  }
  if ((code >= 60 && code < 80) || (code >= 170 && code < 180) || (code >= 270 && code < 290)) {
    view.setInt16(0, Number(value), true);
    return take(2);
  }
  if ((code >= 90 && code < 100) || code === 1071) {
    view.setInt32(0, Number(value), true);
    return take(4);
  }
  if (code >= 290 && code < 300) return [Number(value)];
  if (code >= 310 && code < 320)
    return [value.length / 2, ...(value.match(/../g) ?? []).map((hex) => Number(`0x${hex}`))];
  return [...[...value].map((letter) => letter.charCodeAt(0)), 0];
}
