/** The hand-off in place of ladder, sheet and foot: every file by what one does with it, and a look inside the one that is chosen. */
import { ArrowLeft, Box, type LucideIcon, Printer, Ruler, Scissors } from 'lucide-react';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { chooseAllFiles } from '#app/state/opening/choose-file.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { type FileGroup, HANDOFF_FILES } from '#job/handoff-list.ts';
import { FileCard } from './FileCard.tsx';
import { FilePreview } from './FilePreview.tsx';
import { useHandoffCards } from './use-handoff-cards.ts';

const GROUPS: Readonly<Record<FileGroup, { readonly title: string; readonly icon: LucideIcon }>> = {
  cut: { title: 'Cut', icon: Scissors },
  print: { title: 'Print', icon: Printer },
  inspect: { title: 'Inspect', icon: Ruler },
  show: { title: 'Show', icon: Box },
};

export function HandoffPage() {
  const { layout, actions } = useWorkbench();
  const chosen = useDocument()?.job.handoff?.files ?? [];
  const cards = useHandoffCards();
  const [looked, look] = useState<string>();
  const made = cards.flatMap(({ file }) => file ?? []);
  const file = made.find(({ name }) => name === looked) ?? made.find(({ name }) => name === 'scribe.dxf');
  const caution = useWorkbenchState(({ derived }) => derived.page?.plan?.cautions[0]);
  return (
    <main className="over-sheet">
      <section className="handoff" aria-label="Files to hand off">
        <div className="handoff-cards">
          {(Object.keys(GROUPS) as FileGroup[]).map((group) => {
            const { title, icon: Icon } = GROUPS[group];
            const own = cards.filter((card) => card.group === group);
            return (
              <section key={group} aria-labelledby={`group-${group}`}>
                <h2 id={`group-${group}`}>
                  <Icon size={16} strokeWidth={1.75} aria-hidden="true" /> {title}
                  <span className="aside">{own.filter((card) => card.file !== undefined).length}</span>
                </h2>
                <ul>
                  {own.map((card) => (
                    <FileCard
                      key={card.key}
                      card={card}
                      isShown={card.file !== undefined && card.file === file}
                      onShow={look}
                    />
                  ))}
                </ul>
              </section>
            );
          })}
        </div>
        <div className="handoff-preview">
          {file !== undefined && (
            <>
              <h2>
                {file.name} <span className="aside">{file.what}</span>
              </h2>
              <FilePreview key={file.name} file={file} />
            </>
          )}
        </div>
        <footer className="handoff-foot">
          <Button className="plain" onPress={() => layout.setState({ panel: 'findings' })}>
            <ArrowLeft size={16} aria-hidden="true" /> Back to the sheet
          </Button>
          <Button
            className="plain"
            isDisabled={chosen.length === HANDOFF_FILES.length}
            onPress={() => actions.edit('make every file', chooseAllFiles)}
          >
            Choose all files
          </Button>
          <p className="aside">{caution}</p>
        </footer>
      </section>
    </main>
  );
}
