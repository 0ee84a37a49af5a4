/** Hands bytes to the browser to save under a name. */

/** Long enough for any browser to have taken the bytes, ms. */
const PATIENCE = 60_000;

export function saveBytes(file: {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}): void {
  const url = URL.createObjectURL(new Blob([file.bytes as Uint8Array<ArrayBuffer>], { type: file.mime }));
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  // A busy browser fetches the bytes a while after the click.
  setTimeout(() => URL.revokeObjectURL(url), PATIENCE);
}
