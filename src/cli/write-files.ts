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
  const made: string[] = [];
  const temporary: { readonly from: string; readonly to: string }[] = [];
  try {
    if (isThere(folder) && !statSync(folder).isDirectory()) {
      return { refused: finding('out-not-a-folder', { path: folder }) };
    }
    makeFolders(folder, made);
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
    removeEmptyFolders(made);
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

/**
 * Makes the folder and those above it that are missing, and puts what was made on the list. One by one: where a system denies
 * that a folder it just refused exists, as below /proc, Node's own recursive way tries for ever.
 */
function makeFolders(folder: string, made: string[]): void {
  const missing: string[] = [];
  for (let path = folder; !isThere(path) && dirname(path) !== path; path = dirname(path)) missing.push(path);
  for (const path of missing.reverse()) {
    mkdirSync(path);
    made.push(path);
  }
}

/** Takes away the folders that were made for nothing, innermost first; one that others have begun to use stays. */
function removeEmptyFolders(made: readonly string[]): void {
  for (const path of [...made].reverse()) {
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
