/** Several files as one zip. The same files give the same zip: no time of the clock is in it. */
import { zipSync } from 'fflate';

export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The first day that the form of a zip knows, local time. */
const NO_TIME = new Date(1980, 0, 1);

export function zipFiles(files: readonly NamedBytes[]): Uint8Array {
  return zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), {
    mtime: NO_TIME,
    level: 6,
  });
}
