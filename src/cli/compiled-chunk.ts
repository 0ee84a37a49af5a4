/**
 * Runs a chunk of the built program from what the build has compiled of it: V8 then compiles nothing that the build's trial run came by,
 * which is most of what a small part costs. The same program runs without it, only slower. V8 refuses what another V8 compiled, or
 * the same one with other flags, but checks the bytes neither of it nor of the source: both are checked here, by CRC-32 as Node
 * does for its own.
 */
import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';

/** What Node gives to a CommonJS module. */
export interface Around {
  readonly module: NodeJS.Module;
  readonly require: NodeJS.Require;
  readonly folder: string;
}

/** @param path of a script, in ASCII, that gives a CommonJS module as the function that Node would make of it */
export function runChunk(path: string, around: Around): void {
  const source = readFileSync(path);
  runScript(chunkScript(path, source, readCompiled(path, source)), path, around);
}

export function chunkScript(path: string, source: Buffer, compiled?: Buffer): Script {
  const cachedData = compiled === undefined ? {} : { cachedData: compiled };
  return new Script(source.toString('latin1'), { filename: path, ...cachedData });
}

export function runScript(script: Script, path: string, { module, require, folder }: Around): void {
  script.runInThisContext()(module.exports, require, module, path, folder);
}

const SUMS = 8;

/** What `readCompiled` takes. */
export function sealCompiled(source: Buffer, compiled: Buffer): Buffer {
  const sums = Buffer.alloc(SUMS);
  sums.writeUInt32LE(crc32(source), 0);
  sums.writeUInt32LE(crc32(compiled), 4);
  return Buffer.concat([sums, compiled]);
}

/** Beside the chunk, for this Node alone. */
export function compiledPath(path: string): string {
  return `${path}.${process.version}-${process.arch}`;
}

/** Undefined where there is none for this Node, or it is not what was written for this source. */
function readCompiled(path: string, source: Buffer): Buffer | undefined {
  let file: Buffer;
  try {
    file = readFileSync(compiledPath(path));
  } catch {
    return undefined;
  }
  const compiled = file.subarray(SUMS);
  const isWhole =
    file.length > SUMS && file.readUInt32LE(0) === crc32(source) && file.readUInt32LE(4) === crc32(compiled);
  return isWhole ? compiled : undefined;
}
