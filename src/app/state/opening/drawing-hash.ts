/** SHA-256 of drawings, hexadecimal, by the browser itself and off the page's own thread; of each drawing once. */

export type HashDrawing = (bytes: Uint8Array) => Promise<string>;

export function drawingHasher(): HashDrawing {
  const known = new WeakMap<Uint8Array, string>();
  return async (bytes) => {
    const kept = known.get(bytes);
    if (kept !== undefined) return kept;
    const digest = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
    const hash = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    known.set(bytes, hash);
    return hash;
  };
}
