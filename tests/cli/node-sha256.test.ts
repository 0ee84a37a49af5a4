import { expect, test } from 'vitest';
import { nodeSha256 } from '#cli/node-sha256.ts';
import { sha256Of } from '#run/sha256-of.ts';

// FIPS 180-4, appendix B.1: the digest of "abc".
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

test('Node names a file as the core does', () => {
  expect(nodeSha256([new TextEncoder().encode('abc')])).toBe(ABC);
  for (const length of [0, 1, 55, 56, 63, 64, 65, 119, 120, 4097]) {
    const bytes = Uint8Array.from({ length }, (_, at) => (at * 89 + 7) % 256);
    expect(nodeSha256([bytes])).toBe(sha256Of([bytes]));
    // In pieces of unequal lengths.
    const pieces = [bytes.subarray(0, 3), bytes.subarray(3, 61), bytes.subarray(61)];
    expect(nodeSha256(pieces)).toBe(sha256Of([bytes]));
    expect(sha256Of(pieces)).toBe(sha256Of([bytes]));
    // A part of a larger buffer, as files read in one piece are.
    expect(nodeSha256([bytes.subarray(3)])).toBe(sha256Of([bytes.subarray(3)]));
  }
});
