/** One file to hand off: what it is for, a look at it that opens in place, and a way to save it. */
import { useState } from 'react';
import { saveBytes } from '#app/views/save-bytes.ts';
import type { OutputFile } from '#run/output-file.ts';
import { FilePreview } from './FilePreview.tsx';

interface FileItemProps {
  readonly file: OutputFile;
  readonly isReady: boolean;
}

export function FileItem({ file, isReady }: FileItemProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <li>
      <button type="button" className="save" disabled={!isReady} onClick={() => saveBytes(file)}>
        save<span className="unseen"> {file.name}</span>
      </button>
      <details onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>
          <strong>{file.name}</strong> <span className="aside">{sizeWords(file.bytes.length)}</span>
          <span className="purpose">{file.what}</span>
        </summary>
        {isOpen && <FilePreview file={file} />}
      </details>
    </li>
  );
}

function sizeWords(bytes: number): string {
  return bytes < 1000 ? `${bytes}\u00a0B` : `${(bytes / 1000).toFixed(bytes < 10_000 ? 1 : 0)}\u00a0kB`;
}
