/** A file that a run gives: what it is called, what it is, in a few words, and its bytes. */
export interface OutputFile {
  readonly name: string;
  readonly what: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
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

export function outputFile(file: Omit<OutputFile, 'mime'>): OutputFile {
  const { name, what, bytes } = file;
  return { name, what, mime: MIMES[name.split('.').at(-1) ?? ''] ?? 'text/plain', bytes };
}
