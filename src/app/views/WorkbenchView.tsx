/** The one window for planning: the bar, the ladder, sheet and foot, the side panel, and what lies over them for a while. */
import { type DragEvent, useEffect, useState } from 'react';
import { BrokenView } from './BrokenView.tsx';
import { SheetAndFoot } from './foot/Foot.tsx';
import { HandoffPage } from './handoff/HandoffPage.tsx';
import { LadderView } from './ladder/LadderView.tsx';
import { listenToPage } from './listen-to-page.ts';
import { NoticeLine } from './NoticeLine.tsx';
import { openHere } from './open-here.ts';
import { ArrivalStrip } from './opening/ArrivalStrip.tsx';
import { OpeningStrip } from './opening/OpeningStrip.tsx';
import { readFiles } from './read-files.ts';
import { SheetView } from './sheet/SheetView.tsx';
import { SidePanel } from './side/SidePanel.tsx';
import { StartPage } from './start/StartPage.tsx';
import { TopBar } from './top-bar/TopBar.tsx';
import { useLayout, useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function WorkbenchView() {
  const workbench = useWorkbench();
  const [isOver, setOver] = useState(false);
  const isStart = useLayout(({ over }) => over === 'start');
  const isHandoff = useLayout(({ panel }) => panel === 'handoff');
  useEffect(() => {
    return listenToPage(workbench);
  }, [workbench]);
  const onDrop = async (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    await openHere(workbench, await readFiles(event.dataTransfer.files));
  };
  // What another view lies over can neither be reached by key nor be read out.
  const isCovered = isStart || isHandoff;
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
      <TopBar />
      <div className="ladder-place" inert={isCovered}>
        <LadderView />
      </div>
      <main className="middle" inert={isCovered}>
        <SheetAndFoot>
          <NoticeLine />
          <ArrivalStrip />
          <OpeningStrip />
          <BrokenView name="The sheet">
            <SheetView />
          </BrokenView>
        </SheetAndFoot>
      </main>
      {isHandoff && !isStart && <HandoffPage />}
      <div className="side-place" inert={isStart}>
        <SidePanel />
      </div>
      {isStart && <StartPage />}
      <PrintedCautions />
    </div>
  );
}

/** On paper only: what the plan is not. */
function PrintedCautions() {
  const cautions = useWorkbenchState(({ derived }) => derived.page?.plan?.cautions) ?? [];
  return <p className="printed">{cautions.join(' ')}</p>;
}
