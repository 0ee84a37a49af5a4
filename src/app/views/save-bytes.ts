/** Hands bytes to the browser to save under a name. */

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
  URL.revokeObjectURL(url);
}
