/**
 * Writes all files of a run, or none: first every temporary file, then the renames. A fault before the first rename leaves
 * the folder as it was. Inputs are never written over.
 */
import { mkdirSync, realpathSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Finding, finding } from '#findings/finding.ts';
import { detailOf } from './read-input.ts';

export interface FileToWrite {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface WriteOrder {
  readonly folder: string;
  readonly files: readonly FileToWrite[];
  /** Names of files of an earlier run to take away: they no longer belong to this plan. */
  readonly stale: readonly string[];
  /** Paths that were read. */
  readonly inputs: readonly string[];
}

/** Names of stale files taken away; or why nothing was written. */
export type WriteOutcome = { readonly removed: readonly string[] } | { readonly refused: Finding };

export function writeFiles({ folder, files, stale, inputs }: WriteOrder): WriteOutcome {
  const overInput = findOverInput(folder, [...files.map((file) => file.name), ...stale], inputs);
  if (overInput !== undefined) return { refused: finding('out-over-input', { file: overInput }) };
  let made: string | undefined;
  const temporary: { readonly from: string; readonly to: string }[] = [];
  try {
    if (isThere(folder) && !statSync(folder).isDirectory()) {
      return { refused: finding('out-not-a-folder', { path: folder }) };
    }
    made = mkdirSync(folder, { recursive: true });
    for (const file of files) {
      const to = join(folder, file.name);
      if (isThere(to) && statSync(to).isDirectory()) throw systemFault('EISDIR');
      const from = `${to}.${process.pid}.tmp`;
      temporary.push({ from, to });
      writeFileSync(from, file.bytes, { flag: 'wx' });
    }
    for (const { from, to } of temporary) renameSync(from, to);
    return { removed: stale.filter((name) => removeStale(join(folder, name))) };
  } catch (fault) {
    for (const { from } of temporary) rmSync(from, { force: true });
    removeEmptyFolders(folder, made);
    const code = fault instanceof Error && 'code' in fault ? String(fault.code) : '';
    if (code === 'EEXIST' || code === 'ENOTDIR')
      return { refused: finding('out-not-a-folder', { path: folder }) };
    return { refused: finding('out-not-writable', { path: folder, detail: detailOf(code) }) };
  }
}

function findOverInput(
  folder: string,
  names: readonly string[],
  inputs: readonly string[],
): string | undefined {
  const read = new Set(inputs.map(realPath));
  return names.map((name) => join(folder, name)).find((path) => read.has(realPath(path)));
}

/** The path with links followed, as far as it is there. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function isThere(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false }) !== undefined;
}

function removeStale(path: string): boolean {
  if (!isThere(path)) return false;
  rmSync(path);
  return true;
}

/** Takes away the folders that were made for nothing, from the innermost to the first one made. */
function removeEmptyFolders(folder: string, made: string | undefined): void {
  if (made === undefined) return;
  for (let path = folder; path.startsWith(made) && path.length >= made.length; path = dirname(path)) {
    try {
      rmdirSync(path);
    } catch {
      return;
    }
  }
}

function systemFault(code: string): Error {
  return Object.assign(new Error(code), { code });
}
