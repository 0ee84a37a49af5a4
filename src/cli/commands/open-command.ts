/** `isobath open [FILE]`: the workbench in the browser, from this computer alone, with a job or drawing opened in it. */
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { openBrowser } from '#cli/open/open-browser.ts';
import { serveWorkbench } from '#cli/open/serve-workbench.ts';
import { readInput } from '#cli/read-input.ts';
import { readJobInput } from '#cli/read-job-input.ts';
import type { Terminal } from '#cli/terminal.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { MOST_DRAWING_BYTES } from '#run/run-limits.ts';

export interface OpenArguments {
  readonly file: string | undefined;
  readonly port: string;
  /** False: only say the address. */
  readonly browser: boolean;
}

const MOST_PORT = 65_535;
/** Built beside the program. */
const APP = join(dirname(fileURLToPath(import.meta.url)), '..', 'app');

export async function openCommand(
  { file, port, browser }: OpenArguments,
  terminal: Terminal,
): Promise<CommandEnd> {
  const at = Number(port);
  if (!Number.isInteger(at) || at < 0 || at > MOST_PORT) {
    return refused(finding('command-unclear', { detail: `--port ${port} is no port` }));
  }
  const named = file === undefined ? { files: new Map<string, string>() } : filesToOpen(file);
  if ('refused' in named) return refused(...named.refused);
  const served = await serveWorkbench({ folder: APP, port: at, files: named.files });
  terminal.out(`${served.address}\nServed to this computer only. Ctrl C ends it.\n`);
  if (browser) openBrowser(served.address);
  await served.ended;
  return { exitCode: 0, findings: [] };
}

/** Paths by the names that the page asks for: a job with all that it names, or a drawing alone. */
function filesToOpen(
  file: string,
): { readonly files: Map<string, string> } | { readonly refused: readonly Finding[] } {
  const path = resolve(file);
  if (!/\.json$/i.test(path)) {
    const read = readInput(file, { path, most: MOST_DRAWING_BYTES });
    return 'refused' in read ? { refused: [read.refused] } : { files: new Map([[basename(path), path]]) };
  }
  const job = readJobInput(file);
  if ('refused' in job) return job;
  return { files: new Map(job.paths.map((each) => [basename(each), each])) };
}
