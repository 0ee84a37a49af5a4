/** The files to hand off, each with what it is for, a look inside and a way to save it. Cautions stand with them. */
import { useMemo } from 'react';
import { documentText } from '#app/state/job-text.ts';
import { ModeButtons } from '#app/views/ModeButtons.tsx';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import { hasStop } from '#findings/finding.ts';
import type { OutputFile } from '#run/output-file.ts';
import { FileChoices } from './FileChoices.tsx';
import { FileItem } from './FileItem.tsx';

export function HandoffView() {
  const document = useDocument();
  const page = useWorkbenchState((state) => state.derived.page);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
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
      <ModeButtons />
      <ul className="file-list">
        {jobFile !== undefined && <FileItem file={jobFile} isReady />}
        {(page?.files ?? []).map((file) => (
          <FileItem key={file.name} file={file} isReady={!isStale && page?.isWhole === true} />
        ))}
      </ul>
      <FileChoices />
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
