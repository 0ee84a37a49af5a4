/** What kind of file the first bytes say it is, so that a wrong one is called by its name. */
import type { WrongKind } from '#findings/drawing-findings.ts';

export type Sniffed =
  | { readonly kind: 'text' | 'binary' | 'empty' }
  | { readonly kind: 'wrong'; readonly is: WrongKind };

/** The 22 bytes that open a binary DXF (DXF reference, binary DXF files). */
export const BINARY_SENTINEL = 'AutoCAD Binary DXF\r\n\x1a\0';

/** Opening bytes: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1), GIF89a, PDF (ISO 32000), ZIP and gzip (RFC 1952), TIFF 6.0; DWG by its version word. */
const OPENINGS: readonly (readonly [opening: string, kind: WrongKind])[] = [
  ['AC10', 'DWG'],
  ['%PDF', 'PDF'],
  ['PK\x03\x04', 'ZIP'],
  ['\x1f\x8b', 'gzip'],
  ['\x89PNG', 'picture'],
  ['\xff\xd8\xff', 'picture'],
  ['GIF8', 'picture'],
  ['II*\0', 'picture'],
  ['MM\0*', 'picture'],
  ['\xff\xfe', 'UTF-16 text'],
  ['\xfe\xff', 'UTF-16 text'],
];

const MARKUP: readonly (readonly [opening: string, kind: WrongKind])[] = [
  ['<!doctype html', 'web page'],
  ['<html', 'web page'],
  ['<?xml', 'XML'],
  ['<svg', 'XML'],
];

export function sniffFile(bytes: Uint8Array): Sniffed {
  if (isBlank(bytes)) return { kind: 'empty' };
  const opening = latin(bytes, 0, BINARY_SENTINEL.length);
  if (opening === BINARY_SENTINEL) return { kind: 'binary' };
  for (const [start, is] of OPENINGS) if (opening.startsWith(start)) return { kind: 'wrong', is };
  const start = latin(bytes, 0, 200).replace(/^ï»¿/, '').trimStart().toLowerCase();
  for (const [word, is] of MARKUP) if (start.startsWith(word)) return { kind: 'wrong', is };
  return { kind: 'text' };
}

/** The bytes as text, one character each: enough to recognise an opening or to show one. */
export function latin(bytes: Uint8Array, from: number, to: number): string {
  let text = '';
  for (const byte of bytes.subarray(from, to)) text += String.fromCharCode(byte);
  return text;
}

function isBlank(bytes: Uint8Array): boolean {
  for (const byte of bytes) if (byte > 32) return false;
  return true;
}
