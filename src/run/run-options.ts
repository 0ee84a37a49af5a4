/** How a long run talks to whoever waits for it. The core knows no clock and starts no thread: it is given them, and is told when to breathe. */
import type { OtherThreads } from './share/other-threads.ts';

export interface RunOptions {
  /** Called with the share done (0 to 1) and what is being worked on. */
  readonly progress?: (share: number, what: string) => void;
  /** Looked at between steps; when aborted the run throws `RunCancelled`. */
  readonly signal?: { readonly aborted: boolean };
  /** Awaited between steps so that the host can do other work. */
  readonly breathe?: () => Promise<void>;
  readonly threads?: OtherThreads;
  /** SHA-256 in hexadecimal, where the host has one of its own; the core's is far slower at first. */
  readonly sha256?: (pieces: readonly Uint8Array[]) => string;
}

/** Thrown when the signal was raised; not a fault. */
export class RunCancelled extends Error {
  override readonly name = 'RunCancelled';
}
