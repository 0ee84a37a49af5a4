/** Memory of a process that plans a large drawing. */
import { setFlagsFromString } from 'node:v8';

/** Bytes of a drawing from which on its plan fills hundreds of megabytes. */
const LARGE = 1_000_000;

/**
 * Lets the heap grow by less before it is cleared: 12,800 nested pockets then take 1.4 GB instead of 2, in the same time (measured). Only for
 * large drawings and once the program is loaded: V8 takes no code that was compiled before under other flags.
 */
export function keepMemoryLean(bytes: number): void {
  if (bytes > LARGE) setFlagsFromString('--heap-growing-percent=30');
}
