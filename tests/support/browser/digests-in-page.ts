/**
 * Runs in a page of the built app, bundled (`page-module.ts`): SHA-256 of what the worker makes of each sample, and of the
 * portable functions in the page itself. Lines as in `tests/golden/same-bytes`.
 */
import * as Comlink from 'comlink';
import type { WorkerService } from '#app/worker/plan-service.ts';
import { portableResults } from '#support/maths/maths-digest.ts';

export interface PageSample {
  readonly name: string;
  readonly jobText: string;
  readonly drawingName: string;
  /** A letter a byte. */
  readonly drawing: string;
}

export interface DigestRequest {
  /** Address of the built worker. */
  readonly worker: string;
  readonly samples: readonly PageSample[];
}

/** By name of a golden file, its text. */
export async function digestsInPage({ worker, samples }: DigestRequest): Promise<Record<string, string>> {
  const digests: Record<string, string> = {
    maths: `${await sha256(new Uint8Array(portableResults().buffer))}\n`,
  };
  const service = Comlink.wrap<WorkerService>(new Worker(worker, { type: 'module' }));
  for (const [index, { name, jobText, drawingName, drawing }] of samples.entries()) {
    const bytes = Uint8Array.from(drawing, (letter) => letter.charCodeAt(0));
    const request = {
      run: index + 1,
      jobText,
      drawingName,
      drawings: { near: { name: drawingName, bytes }, far: undefined },
    };
    const end = await service.plan(
      request,
      Comlink.proxy(() => undefined),
      Comlink.proxy(() => undefined),
      Comlink.proxy(() => undefined),
    );
    const lines = (end?.files ?? []).map(async (file) => `${await sha256(file.bytes)}  ${file.name}\n`);
    const sorted = (await Promise.all(lines)).sort((a, b) => (a.slice(64) < b.slice(64) ? -1 : 1));
    digests[name] = sorted.join('');
  }
  return digests;
}

async function sha256(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
