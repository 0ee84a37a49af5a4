/** SHA-256 in hexadecimal: by it drawings, plans and records are known wherever they are named. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

export function sha256Of(content: string | readonly Uint8Array[]): string {
  const hash = sha256.create();
  for (const piece of typeof content === 'string' ? [utf8ToBytes(content)] : content) hash.update(piece);
  return bytesToHex(hash.digest());
}
