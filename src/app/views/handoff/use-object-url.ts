/** An address for a file's bytes, as long as it is on show. */
import { useEffect, useMemo } from 'react';
import type { OutputFile } from '#run/output-file.ts';

export function useObjectUrl({ bytes, mime }: Pick<OutputFile, 'bytes' | 'mime'>): string {
  const url = useMemo(
    () => URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mime })),
    [bytes, mime],
  );
  useEffect(() => () => URL.revokeObjectURL(url), [url]);
  return url;
}
