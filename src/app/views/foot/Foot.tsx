/** Section and clock under the sheet, one width, one time line. Its edge is dragged; dragged right down it folds to its head. */

import type { ReactNode } from 'react';
import { useEffect, useRef } from 'react';
import { Group, Panel, type PanelImperativeHandle, Separator } from 'react-resizable-panels';
import { FOOT } from '#app/state/layout-state.ts';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { ClockView } from '#app/views/ClockView.tsx';
import { SectionView } from '#app/views/section/SectionView.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import './foot.css';

/** The sheet above and the foot below, with the edge between them. */
export function SheetAndFoot({ children }: { readonly children: ReactNode }) {
  const { layout } = useWorkbench();
  const foot = useRef<PanelImperativeHandle>(null);
  const height = useRef(layout.getState().footHeight);
  useEffect(
    () =>
      layout.subscribe(({ footHeight }, before) => {
        if (footHeight !== before.footHeight && footHeight !== height.current)
          foot.current?.resize(footHeight);
      }),
    [layout],
  );
  return (
    <Group orientation="vertical" className="sheet-and-foot">
      <Panel minSize={160} className="sheet-panel">
        {children}
      </Panel>
      <Separator className="foot-edge" aria-label="Height of section and clock" />
      <Panel
        className="foot"
        panelRef={foot}
        defaultSize={layout.getState().footHeight}
        minSize={FOOT.least}
        collapsedSize={FOOT.folded}
        collapsible
        groupResizeBehavior="preserve-pixel-size"
        onResize={({ inPixels }) => {
          height.current = Math.round(inPixels);
          layout.setState({ footHeight: height.current });
        }}
      >
        <BrokenView name="The section">
          <SectionView />
        </BrokenView>
        <ClockView />
      </Panel>
    </Group>
  );
}
