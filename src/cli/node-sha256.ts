/** SHA-256 in hexadecimal as Node computes it: the core's own, in JavaScript, takes a tenth of a small plan. */
import { createHash } from 'node:crypto';

export function nodeSha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
