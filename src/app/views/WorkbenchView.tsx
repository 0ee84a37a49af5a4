/** The one window: ladder, sheet, findings and hand-off, and the ways in that belong to all of it. */
import { type DragEvent, useEffect, useState } from 'react';
import { BrokenView } from './BrokenView.tsx';
import { ClockView } from './ClockView.tsx';
import { DrawingPanel } from './drawing/DrawingPanel.tsx';
import { FindingsView } from './FindingsView.tsx';
import { fitToPaper } from './fit-to-paper.ts';
import { HandoffView } from './handoff/HandoffView.tsx';
import { JobPanel } from './job/JobPanel.tsx';
import { JobLine } from './job-line/JobLine.tsx';
import { LadderView } from './ladder/LadderView.tsx';
import { NoticeLine } from './NoticeLine.tsx';
import { PlanningView } from './planning/PlanningView.tsx';
import { filesOfText, readFiles } from './read-files.ts';
import { StatusLine } from './StatusLine.tsx';
import { SectionView } from './section/SectionView.tsx';
import { SheetView } from './sheet/SheetView.tsx';
import { useWorkbench, type Workbench } from './workbench-context.ts';

export function WorkbenchView() {
  const workbench = useWorkbench();
  const [isOver, setOver] = useState(false);
  useEffect(() => listenToPage(workbench), [workbench]);
  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    workbench.actions.openFiles(await readFiles(event.dataTransfer.files));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: files may be dropped anywhere; the open button does the same by key
    <div
      className={isOver ? 'workbench over' : 'workbench'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (event.relatedTarget === null) setOver(false);
      }}
      onDrop={onDrop}
    >
      <JobLine />
      <LadderView />
      <main className="middle">
        <NoticeLine />
        <BrokenView name="The sheet">
          <SheetView />
        </BrokenView>
        <BrokenView name="The section">
          <SectionView />
        </BrokenView>
        <ClockView />
      </main>
      <aside className="side" aria-label="Findings and files">
        <FindingsView />
        <DrawingPanel />
        <JobPanel />
        <PlanningView />
        <HandoffView />
      </aside>
      <StatusLine />
    </div>
  );
}

/** Keys and pastes that count wherever the focus is, but not while someone types. */
function listenToPage({ actions }: Workbench): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) actions.redo();
    else actions.undo();
  };
  const onPaste = async (event: ClipboardEvent) => {
    if (isTyping(event.target) || event.clipboardData === null) return;
    const { files } = event.clipboardData;
    const text = event.clipboardData.getData('text/plain');
    if (files.length > 0) actions.openFiles(await readFiles(files));
    else if (text !== '') actions.openFiles(filesOfText(text));
  };
  document.addEventListener('keydown', onKeyDown, { signal });
  document.addEventListener('paste', onPaste, { signal });
  const onPrint = () => {
    const workbench = document.querySelector<HTMLElement>('.workbench');
    if (workbench !== null) fitToPaper(workbench);
  };
  window.addEventListener('beforeprint', onPrint, { signal });
  return () => listening.abort();
}

/** A field that shows what is so, with nothing typed into it, leaves the keys to the whole window. */
function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLInputElement) || target.dataset['settled'] === 'true') return false;
  return !NOT_TYPED.has(target.type);
}

const NOT_TYPED: ReadonlySet<string> = new Set(['radio', 'checkbox', 'range']);
