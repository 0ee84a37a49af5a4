/** Reads a file whole, or says in a finding why it can't be had. */
import { readFileSync, statSync } from 'node:fs';
import { type Finding, finding } from '#findings/finding.ts';

export type InputRead = { readonly bytes: Uint8Array } | { readonly refused: Finding };

/** `file` is the path as the engineer gave it, for words. At most `most` bytes are read. */
export function readInput(file: string, { path, most }: { path: string; most: number }): InputRead {
  try {
    const facts = statSync(path);
    if (!facts.isFile()) return { refused: finding('file-not-regular', { file }) };
    if (facts.size === 0) return { refused: finding('file-empty', { file }) };
    if (facts.size > most) return { refused: finding('file-too-large', { file, bytes: facts.size, most }) };
    return { bytes: readFileSync(path) };
  } catch (fault) {
    return { refused: refusal(fault, file) };
  }
}

export type TextRead = { readonly text: string } | { readonly refused: Finding };

/** As `readInput`, and as text. */
export function readText(file: string, limits: { path: string; most: number }): TextRead {
  const read = readInput(file, limits);
  return 'refused' in read ? read : decodeText(file, read.bytes);
}

/** The text of a job file: UTF-8, a byte order mark is left out. */
export function decodeText(file: string, bytes: Uint8Array): TextRead {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { refused: finding('file-not-utf-8', { file, byte: firstStrayByte(bytes) }) };
  }
}

/** Number of the first byte, from 1, that no character can hold: the longest decodable beginning ends before it. */
function firstStrayByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (good < bad) {
    const middle = Math.ceil((good + bad) / 2);
    if (decodes(bytes.subarray(0, middle))) good = middle;
    else bad = middle - 1;
  }
  return good + 1;
}

/** A character cut off at the end still counts as decodable: `stream` waits for its rest. */
function decodes(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function refusal(fault: unknown, file: string): Finding {
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
  if (code === 'ENOENT' || code === 'ENOTDIR') return finding('file-missing', { file });
  if (code === 'ERR_INVALID_ARG_VALUE') return finding('file-missing', { file });
  return finding('file-unreadable', { file, detail: detailOf(code) });
}

const DETAILS: Readonly<Record<string, string>> = {
  EACCES: 'no permission',
  EPERM: 'no permission, or another program has it open',
  EBUSY: 'another program has it open',
  EISDIR: 'a folder has its name',
  EDQUOT: 'the disk quota is used up',
  ENOSPC: 'no space left',
  EROFS: 'the disk is read-only',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'circular links',
  EMFILE: 'too many open files',
};

/** A system fault's code in words. */
export function detailOf(code: string): string {
  return DETAILS[code] ?? (code === '' ? 'the system refused' : `the system refused (${code})`);
}
