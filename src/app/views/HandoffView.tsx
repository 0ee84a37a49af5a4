/** The files to hand off, each with what it is for, a look inside and a way to save it. Cautions stand with them. */
import { useMemo } from 'react';
import { documentText } from '#app/state/job-text.ts';
import { hasStop } from '#findings/finding.ts';
import type { OutputFile } from '#run/run-job.ts';
import { saveBytes } from './save-bytes.ts';
import { useBench, useDocument } from './workbench-context.ts';

const LOOK_BYTES = 4000;

export function HandoffView() {
  const document = useDocument();
  const page = useBench((state) => state.derived.page);
  const isStale = useBench((state) => state.derived.isStale);
  const jobFile = useMemo<OutputFile | undefined>(() => {
    if (document === undefined) return undefined;
    return {
      name: document.jobFileName,
      what: 'what was decided, to open again',
      mime: 'application/json',
      bytes: new TextEncoder().encode(documentText(document)),
    };
  }, [document]);
  const cautions = page?.plan?.cautions ?? [];
  const isStopped = page !== undefined && hasStop(page.findings);
  return (
    <section className="handoff" aria-labelledby="handoff-heading">
      <h2 id="handoff-heading">Hand-off</h2>
      <ul className="file-list">
        {jobFile !== undefined && <FileItem file={jobFile} isReady />}
        {[...(page?.files ?? [])].reverse().map((file) => (
          <FileItem key={file.name} file={file} isReady={!isStale && page?.isWhole === true} />
        ))}
      </ul>
      {isStopped && (
        <p className="kept-back">Files that can be cut from are kept back while a finding says stop.</p>
      )}
      {cautions.length > 0 && (
        <details className="cautions">
          <summary>{cautions[0]}</summary>
          <ul>
            {cautions.slice(1).map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function FileItem({ file, isReady }: { readonly file: OutputFile; readonly isReady: boolean }) {
  return (
    <li>
      <button type="button" className="save" disabled={!isReady} onClick={() => saveBytes(file)}>
        save<span className="unseen"> {file.name}</span>
      </button>
      <details>
        <summary>
          <strong>{file.name}</strong> <span className="aside">{sizeWords(file.bytes.length)}</span>
          <span className="purpose">{file.what}</span>
        </summary>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so that keys must reach it */}
        <section tabIndex={0} className="look-inside" aria-label={`First lines of ${file.name}`}>
          <pre>{lookInside(file.bytes)}</pre>
        </section>
      </details>
    </li>
  );
}

function sizeWords(bytes: number): string {
  return bytes < 1000 ? `${bytes}\u00a0B` : `${(bytes / 1000).toFixed(bytes < 10_000 ? 1 : 0)}\u00a0kB`;
}

function lookInside(bytes: Uint8Array): string {
  const text = new TextDecoder().decode(bytes.subarray(0, LOOK_BYTES));
  return bytes.length > LOOK_BYTES ? `${text}\n…` : text;
}
