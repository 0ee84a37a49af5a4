/** `isobath open` as a process: what it serves, to whom, and nothing else. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runIsobath } from '#support/process/run-isobath.ts';

const PROGRAM = fileURLToPath(new URL('../../dist/cli/isobath.js', import.meta.url));

function start(args: readonly string[]) {
  const running = spawn(process.execPath, [PROGRAM, 'open', ...args, '--no-browser']);
  const address = new Promise<string>((resolve, reject) => {
    running.stdout.once('data', (text: Buffer) => resolve(text.toString('utf8').split('\n')[0] ?? ''));
    running.once('exit', (code) => reject(new Error(`ended with ${code}`)));
  });
  const stop = () =>
    new Promise<number | null>((resolve) => {
      running.once('exit', resolve);
      running.kill('SIGTERM');
    });
  return { address, stop };
}

/** The status of an answer to a request that names another host, or another way. */
function statusOf(address: string, options: { readonly host?: string; readonly method?: string }) {
  return new Promise<number | undefined>((resolve, reject) => {
    const { host, method = 'GET' } = options;
    const asked = request(address, { method, headers: host === undefined ? {} : { host } }, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    });
    asked.once('error', reject);
    asked.end();
  });
}

describe('isobath open', () => {
  const running = start(['samples/gauge-pod-cover.job.json']);
  let address = '';
  beforeAll(async () => {
    address = await running.address;
  });
  afterAll(() => running.stop());
  const at = (path: string) => new URL(path, address).href;

  it('says an address of this computer with the files to open: the job and its drawing', () => {
    expect(address).toMatch(
      /^http:\/\/127\.0\.0\.1:\d+\/\?open=gauge-pod-cover\.job\.json&open=gauge-pod-cover\.dxf$/,
    );
  });

  it('serves the page and those files, and nothing else of the disk', async () => {
    const page = await fetch(at('/'));
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    const drawing = await fetch(at('/opened/gauge-pod-cover.dxf'));
    expect(Buffer.from(await drawing.arrayBuffer())).toEqual(readFileSync('samples/gauge-pod-cover.dxf'));
    for (const path of [
      '/opened/package.json',
      '/opened/..%2Fpackage.json',
      '/..%2Fcli%2Fisobath.js',
      '/nowhere',
      '/%',
    ])
      expect((await fetch(at(path))).status, path).toBe(404);
  });

  it('answers this computer’s own names alone, and only to be read', async () => {
    expect(await statusOf(address, { host: 'localhost' })).toBe(200);
    expect(await statusOf(address, { host: 'elsewhere.example' })).toBe(403);
    expect(await statusOf(address, { method: 'POST' })).toBe(405);
  });

  it('ends with 0 when it is told to stop', async () => {
    const other = start([]);
    expect(await other.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(await other.stop()).toBe(0);
  });

  it('refuses a file that is not there, and a port that is none', () => {
    expect(runIsobath(['open', 'nowhere.dxf', '--no-browser'], '.').code).toBe(2);
    expect(runIsobath(['open', '--no-browser', '--port', 'x'], '.').code).toBe(2);
  });
});
