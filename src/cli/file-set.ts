/**
 * Changes a set of files in a folder as one. The new files are prepared in a folder of their own inside it; one rename makes that
 * the folder of the change, which no other run can then begin. All old files are set aside before the first new one is put in
 * place, the key file first out and last in: whenever it stops, names of two sets never stand side by side, and the key file never
 * beside a set that is not whole. What stopped half-way is put back by the next change. Cost: two renames a file.
 */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';

export interface FileToWrite {
  readonly name: string;
  /** A large file is written as its pieces come. */
  readonly bytes: Uint8Array | { readonly pieces: () => Iterable<Uint8Array> };
}

export interface SetChange {
  readonly files: readonly FileToWrite[];
  /** Names of files that no longer belong to the set. */
  readonly stale: readonly string[];
}

export interface SetChanged {
  /** Names of files that were there and have been replaced; and of stale ones taken away. */
  readonly replaced: readonly string[];
  readonly removed: readonly string[];
}

/** Some other run is changing files in this folder. */
export class FolderInUse extends Error {}

/** A change failed, and the old files could not be put back: they lie in `aside`. */
export class LeftAside extends Error {
  readonly aside: string;
  constructor(aside: string, cause: unknown) {
    super('old files are left aside', { cause });
    this.aside = aside;
  }
}

/** Prepared, or done with: with the owner's process number and a random end. */
const PREPARED = '.isobath-new-';
const CHANGING = '.isobath-writing';
/** In the folder of the change, between these the process number of the run that owns it; holds the names of the new set. */
const MANIFEST = { before: 'set-', after: '.json' };
/** The file that says which set this is. */
const KEY_FILE = 'plan.json';
/** The renames of a change take milliseconds. One begun so long ago has stopped, even where its process number lives on, ms. */
const LONGEST_CHANGE = 60_000;

/**
 * On a fault the folder is as it was, and the fault is thrown; `LeftAside` where it could not be put back. What an earlier run
 * left is to be settled first.
 */
export function changeSet(folder: string, { files, stale }: SetChange): SetChanged {
  const names = keyLast(files.map(({ name }) => name));
  const prepared = ownName(folder);
  const changing = join(folder, CHANGING);
  try {
    prepare(prepared, files, names);
    renameSync(prepared, changing);
  } catch (fault) {
    rmSync(prepared, { recursive: true, force: true });
    throw existsSync(changing) ? new FolderInUse() : fault;
  }
  try {
    const replaced = setAside(folder, names);
    const removed = setAside(folder, stale);
    for (const name of names) renameSync(join(changing, 'new', name), join(folder, name));
    discard(folder);
    return { replaced, removed };
  } catch (fault) {
    try {
      putBack(folder, names);
    } catch (second) {
      throw new LeftAside(join(changing, 'old'), second);
    }
    throw fault;
  }
}

/**
 * Puts back what a run left that stopped half-way, and says whether there was anything. Throws `FolderInUse` where that run is
 * still at it, or another has begun to put back.
 */
export function settleLeftover(folder: string): boolean {
  discardPrepared(folder);
  if (!existsSync(join(folder, CHANGING))) return false;
  const names = takeOver(join(folder, CHANGING));
  const isFinished = readdirSync(join(folder, CHANGING, 'new')).length === 0;
  if (isFinished) discard(folder);
  else putBack(folder, names);
  return !isFinished;
}

function ownName(folder: string): string {
  return join(folder, `${PREPARED}${process.pid}-${randomBytes(4).toString('hex')}`);
}

function manifestOf(pid: number): string {
  return `${MANIFEST.before}${pid}${MANIFEST.after}`;
}

function prepare(prepared: string, files: readonly FileToWrite[], names: readonly string[]): void {
  mkdirSync(prepared);
  mkdirSync(join(prepared, 'new'));
  mkdirSync(join(prepared, 'old'));
  for (const { name, bytes } of files) writeNew(join(prepared, 'new', name), bytes);
  writeFileSync(join(prepared, manifestOf(process.pid)), JSON.stringify(names));
}

function writeNew(path: string, bytes: FileToWrite['bytes']): void {
  const file = openSync(path, 'wx');
  try {
    for (const piece of bytes instanceof Uint8Array ? [bytes] : bytes.pieces()) writeFileSync(file, piece);
  } finally {
    closeSync(file);
  }
}

/** Names of those that were there. */
function setAside(folder: string, names: readonly string[]): string[] {
  const there = names.filter((name) => isThere(join(folder, name)));
  for (const name of [...there].reverse())
    renameSync(join(folder, name), join(folder, CHANGING, 'old', name));
  return there;
}

/** New files out again, then old ones in: each step only undoes one, so that this too may be stopped and begun again. */
function putBack(folder: string, names: readonly string[]): void {
  const changing = join(folder, CHANGING);
  for (const name of [...names].reverse()) {
    const prepared = join(changing, 'new', name);
    if (!isThere(prepared) && isThere(join(folder, name))) renameSync(join(folder, name), prepared);
  }
  for (const name of keyLast(readdirSync(join(changing, 'old')).sort()))
    renameSync(join(changing, 'old', name), join(folder, name));
  discard(folder);
}

/** Renamed first: from then on another run may begin. What then can't be deleted is deleted by a later run. */
function discard(folder: string): void {
  const done = ownName(folder);
  renameSync(join(folder, CHANGING), done);
  try {
    removeFolder(done);
  } catch {}
}

/** Node's own way, ready for folders that change meanwhile, takes longer to load than this. */
function removeFolder(path: string): void {
  for (const entry of readdirSync(path, { withFileTypes: true })) {
    const inside = join(path, entry.name);
    if (entry.isDirectory()) removeFolder(inside);
    else unlinkSync(inside);
  }
  rmdirSync(path);
}

/** What runs prepared, or were done with, that have ended. */
function discardPrepared(folder: string): void {
  for (const name of readdirSync(folder)) {
    const pid = name.startsWith(PREPARED) ? Number.parseInt(name.slice(PREPARED.length), 10) : Number.NaN;
    if (Number.isInteger(pid) && !isRunning(pid))
      rmSync(join(folder, name), { recursive: true, force: true });
  }
}

/**
 * Makes this run the owner of what another left, and reads the names of its set: by a rename, so that of two runs only one can.
 * Where they can't be read (a machine that lost power), none: old files then go over new ones of the same names.
 */
function takeOver(changing: string): string[] {
  const { before, after } = MANIFEST;
  const found = readdirSync(changing).find((name) => name.startsWith(before) && name.endsWith(after));
  if (found === undefined) return [];
  const path = join(changing, found);
  if (isRunning(Number.parseInt(found.slice(before.length), 10)) && ageOf(path) < LONGEST_CHANGE)
    throw new FolderInUse();
  const own = join(changing, manifestOf(process.pid));
  try {
    renameSync(path, own);
  } catch {
    throw new FolderInUse();
  }
  utimesSync(own, new Date(), new Date());
  return readNames(own);
}

function readNames(path: string): string[] {
  try {
    const read: unknown = JSON.parse(readFileSync(path, 'utf8'));
    return Array.isArray(read) ? read.filter((name) => typeof name === 'string') : [];
  } catch {
    return [];
  }
}

/** Signal 0 is sent to nobody; a process of another user refuses it, but is there. This run itself has left nothing running. */
function isRunning(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (fault) {
    return fault instanceof Error && 'code' in fault && fault.code === 'EPERM';
  }
}

function ageOf(path: string): number {
  return Date.now() - statSync(path).mtimeMs;
}

function keyLast(names: readonly string[]): string[] {
  return [...names.filter((name) => name !== KEY_FILE), ...names.filter((name) => name === KEY_FILE)];
}

/** A link that leads nowhere is there too. */
function isThere(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}
