/**
 * For the build: runs the program with the arguments given, and writes beside its chunks what V8 has compiled of them by then. Only
 * what that run comes by is kept: all of it would take longer to read than a small part takes to plan.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import v8 from 'node:v8';
import type { Script } from 'node:vm';
import type { Around } from './compiled-chunk.ts';

const require = createRequire(import.meta.url);
/** The module itself, so that the chunks call what is set here. */
const chunks: typeof import('./compiled-chunk.ts') = require('./compiled-chunk.js');
const scripts = new Map<string, Script>();

Object.assign(chunks, {
  runChunk: (path: string, around: Around) => {
    const script = chunks.chunkScript(path, readFileSync(path));
    scripts.set(path, script);
    chunks.runScript(script, path, around);
  },
});

// The program may change how V8 runs; what is compiled must be taken by one that runs as it starts.
Object.assign(v8, { setFlagsFromString: () => undefined });

process.on('exit', () => {
  for (const [path, script] of scripts) {
    const compiled = chunks.sealCompiled(readFileSync(path), script.createCachedData());
    writeFileSync(chunks.compiledPath(path), compiled);
  }
});

require('./isobath.js');
