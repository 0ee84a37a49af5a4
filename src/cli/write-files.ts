/**
 * Writes all files of a run, or none: `file-set.ts` changes the set as one. A fault leaves the folder as it was. Inputs are never
 * written over.
 */
import { mkdirSync, readdirSync, realpathSync, rmdirSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Finding, finding } from '#findings/finding.ts';
import {
  changeSet,
  type FileToWrite,
  FolderInUse,
  LeftAside,
  type SetChanged,
  settleLeftover,
} from './file-set.ts';
import { detailOf } from './read-input.ts';

export interface WriteOrder {
  readonly folder: string;
  readonly files: readonly FileToWrite[];
  /** Names of files of an earlier run to take away: they no longer belong to this plan. Asked where there may be any. */
  readonly stale: () => readonly string[];
  /** Paths that were read. */
  readonly inputs: readonly string[];
}

/** What became of the files of earlier runs, with `out-put-back` where one of them had stopped half-way; or why nothing was written. */
export type WriteOutcome =
  | (SetChanged & { readonly findings: readonly Finding[] })
  | { readonly refused: Finding };

export function writeFiles({ folder, files, stale, inputs }: WriteOrder): WriteOutcome {
  const names = files.map((file) => file.name);
  const made: string[] = [];
  try {
    makeFolders(folder, made);
    if (!statSync(folder).isDirectory()) return { refused: finding('out-not-a-folder', { path: folder }) };
    const overInput = findOverInput(folder, [...names, ...staleIn(folder, names, stale)], inputs);
    if (overInput !== undefined) return { refused: finding('out-over-input', { file: overInput }) };
    const findings = settleLeftover(folder) ? [finding('out-put-back', { path: folder })] : [];
    for (const name of names) {
      const path = join(folder, name);
      if (isThere(path) && statSync(path).isDirectory()) throw systemFault('EISDIR', path);
    }
    return { ...changeSet(folder, { files, stale: staleIn(folder, names, stale) }), findings };
  } catch (fault) {
    removeEmptyFolders(made);
    return { refused: refusal(fault, folder) };
  }
}

/** One file with a text in it. */
export function writeText(path: string, text: string, inputs: readonly string[]): WriteOutcome {
  const files = [{ name: basename(path), bytes: new TextEncoder().encode(text) }];
  return writeFiles({ folder: dirname(path), files, stale: () => [], inputs });
}

function refusal(fault: unknown, path: string): Finding {
  if (fault instanceof FolderInUse) return finding('out-in-use', { path });
  if (fault instanceof LeftAside)
    return finding('out-left-aside', { path, aside: fault.aside, detail: detailOf(codeOf(fault.cause)) });
  const code = codeOf(fault);
  if (code === 'EEXIST' || code === 'ENOTDIR') return finding('out-not-a-folder', { path });
  const held = fault instanceof Error && 'path' in fault ? basename(String(fault.path)) : '';
  const detail = held === '' || held === basename(path) ? detailOf(code) : `${held}: ${detailOf(code)}`;
  return finding('out-not-writable', { path, detail });
}

function codeOf(fault: unknown): string {
  return fault instanceof Error && 'code' in fault ? String(fault.code) : '';
}

/** Those that are there: one look at the folder in place of one for each of many names. */
function staleIn(folder: string, names: readonly string[], stale: WriteOrder['stale']): readonly string[] {
  const others = new Set(readdirSync(folder).filter((name) => !names.includes(name)));
  return others.size === 0 ? [] : stale().filter((name) => others.has(name));
}

function findOverInput(
  folder: string,
  names: readonly string[],
  inputs: readonly string[],
): string | undefined {
  const read = new Set(inputs.map(realPath));
  // What is not there was not read; most names are not, and links are followed only where it matters.
  return names.map((name) => join(folder, name)).find((path) => isThere(path) && read.has(realPath(path)));
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

function systemFault(code: string, path: string): Error {
  return Object.assign(new Error(code), { code, path });
}
