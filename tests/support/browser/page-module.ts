/** Text of a module with all that it imports, for a page to run. */
import { build } from 'vite';

/** @param entry from the project's root */
export async function pageModule(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, lib: { entry, formats: ['es'], fileName: 'page' } },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (output === undefined || !('output' in output)) throw new Error('nothing was built');
  return output.output[0].code;
}
