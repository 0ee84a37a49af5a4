import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/**
 * Has the chunks of these names run by src/cli/compiled-chunk.ts, with what a trial run has compiled of them beside.
 * @param trial a job file whose plan comes by what most plans come by
 */
export function compiledChunks(names: readonly string[], trial: string): Plugin {
  return {
    name: 'compiled-chunks',
    generateBundle(_, bundle) {
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk' || !names.includes(chunk.name)) continue;
        const code = chunk.fileName.replace(/\.js$/, '.code.js');
        this.emitFile({ type: 'asset', fileName: code, source: asFunction(inAscii(chunk.code)) });
        chunk.code = `require("./compiled-chunk.js").runChunk(__dirname+"/${code}",{module,require,folder:__dirname});\n`;
      }
    },
    writeBundle({ dir = '' }) {
      const out = mkdtempSync(join(tmpdir(), 'isobath-trial-'));
      // As anyone starts the program: V8 refuses what was compiled with other flags.
      const { NODE_OPTIONS: _, ...env } = process.env;
      const run = spawnSync(process.execPath, [join(dir, 'compile-chunks.js'), 'plan', trial, '--out', out], {
        env,
      });
      rmSync(out, { recursive: true });
      if (run.status !== 0) throw new Error(`the trial run of the command line failed:\n${run.stderr}`);
    },
  };
}

/** As Node wraps CommonJS: done here, V8 need not put the text together at each start. */
function asFunction(code: string): string {
  return `(function(exports,require,module,__filename,__dirname){${code}\n})`;
}

/** A byte a character: V8 then decodes nothing, and keeps half as much. */
function inAscii(code: string): string {
  if (/\\[^\0-\x7f]/.test(code)) throw new Error('a backslash before a character that is not ASCII');
  return code.replace(/[^\0-\x7f]/g, (each) => `\\u${each.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
