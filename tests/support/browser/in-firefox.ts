/**
 * Runs a module's function in Firefox, on a page beside the built app, and gives what it answers. Playwright drives no stock
 * Firefox, but a page can send its answer to the server that it came from.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, extname, join } from 'node:path';

/** Undefined where none is on the PATH. */
export function findFirefox(): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return ['firefox', 'firefox-esr']
    .flatMap((name) => folders.map((folder) => join(folder, name)))
    .find(existsSync);
}

export interface PageCall {
  /** Text of the module. */
  readonly module: string;
  readonly name: string;
  readonly argument: unknown;
}

const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript' };

export async function inFirefox(program: string, call: PageCall): Promise<unknown> {
  const pages: Readonly<Record<string, string>> = {
    '/call.html': pageFor(call.name),
    '/call.js': call.module,
    '/argument.json': JSON.stringify(call.argument),
  };
  const give = (answer: ServerResponse, path: string): void => {
    const file = join('dist/app', path);
    answer.setHeader('content-type', TYPES[extname(path)] ?? 'application/json');
    if (pages[path] !== undefined) answer.end(pages[path]);
    else if (extname(path) !== '' && existsSync(file)) answer.end(readFileSync(file));
    else answer.writeHead(404).end();
  };
  let take: (text: string) => void = () => undefined;
  const answered = new Promise<string>((resolve) => {
    take = resolve;
  });
  const server = createServer(async (request, answer) => {
    if (request.method !== 'POST') return give(answer, new URL(request.url ?? '/', 'http://page').pathname);
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk);
    answer.end();
    take(Buffer.concat(chunks).toString('utf8'));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const profile = mkdtempSync(join(tmpdir(), 'isobath-firefox-'));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/call.html`;
  const browser = spawn(program, ['--headless', '--no-remote', '--profile', profile, address], {
    stdio: 'ignore',
  });
  try {
    const { result, failed } = JSON.parse(await answered);
    if (failed !== undefined) throw new Error(failed);
    return result;
  } finally {
    const ended = new Promise((resolve) => browser.once('exit', resolve));
    browser.kill();
    await ended;
    server.close();
    rmSync(profile, { recursive: true, force: true });
  }
}

function pageFor(name: string): string {
  return `<!doctype html><script type="module">
    import { ${name} } from './call.js';
    const send = (answer) => fetch('./answer', { method: 'POST', body: JSON.stringify(answer) });
    try {
      await send({ result: await ${name}(await (await fetch('./argument.json')).json()) });
    } catch (error) {
      await send({ failed: String(error) });
    }
  </script>`;
}
