/** A file that a run gives: what it is called, what it is, in a few words, and its bytes. */
export interface OutputFile extends MadeFile {
  readonly bytes: Uint8Array;
}

/** The same, a large one not yet written. */
export interface MadeFile {
  readonly name: string;
  readonly what: string;
  readonly mime: string;
  readonly bytes: Uint8Array | InPieces;
}

/** Bytes that need not be in memory all at once: each call writes them anew, one piece after the other. */
export interface InPieces {
  readonly pieces: () => Iterable<Uint8Array>;
}

/** By the ending of its name; programs are plain text, whatever their machine calls them. */
const MIMES: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  dxf: 'image/vnd.dxf',
  glb: 'model/gltf-binary',
  json: 'application/json',
  pdf: 'application/pdf',
  stl: 'model/stl',
  svg: 'image/svg+xml',
};

export function outputFile<Bytes extends MadeFile['bytes']>({
  name,
  what,
  bytes,
}: {
  readonly name: string;
  readonly what: string;
  readonly bytes: Bytes;
}): MadeFile & { readonly bytes: Bytes } {
  return { name, what, mime: MIMES[name.split('.').at(-1) ?? ''] ?? 'text/plain', bytes };
}

/** With all its bytes in memory. */
export function wholeFile({ bytes, ...file }: MadeFile): OutputFile {
  return { ...file, bytes: bytes instanceof Uint8Array ? bytes : joined([...bytes.pieces()]) };
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
