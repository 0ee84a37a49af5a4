/** The name of a file without its folders: what people are shown of a path. */
export function fileNameOf(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}
