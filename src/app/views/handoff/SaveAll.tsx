/** Saves every file of the hand-off at once, so that a set is whole: as one zip, or into a folder where the browser can. */
import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { zipFiles } from '#app/state/zip-files.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { useToast } from '#app/views/controls/toasts.ts';
import { saveBytes } from '#app/views/save-bytes.ts';
import { canSaveInFolder, saveInFolder } from '#app/views/save-in-folder.ts';
import { useDocument, useLayout, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { hasStop } from '#findings/finding.ts';
import { useHandoffCards } from './use-handoff-cards.ts';

export function SaveAll() {
  const { layout } = useWorkbench();
  const say = useToast();
  const document = useDocument();
  const cards = useHandoffCards();
  const page = useWorkbenchState((state) => state.derived.page);
  const saveAs = useLayout((state) => state.saveAs);
  const isHeld = page !== undefined && hasStop(page.findings);
  const all = useMemo(() => cards.flatMap(({ file }) => file ?? []), [cards]);
  const isReady = cards.length > 0 && cards.every((card) => card.isReady);
  const save = async () => {
    const name = (document?.jobFileName ?? 'job').replace(/(\.job)?\.json$/i, '');
    if (saveAs === 'folder' && canSaveInFolder()) {
      if (await saveInFolder(all)) say(`Saved ${counted(all.length, 'file')}`);
      return;
    }
    saveBytes({ name: `${name}.zip`, mime: 'application/zip', bytes: zipFiles(all) });
    say(`Saved ${counted(all.length, 'file')} in ${name}.zip`);
  };
  return (
    <div className="save-all">
      {isHeld && <p className="kept-back">Files to cut from are held back while a finding is a stop.</p>}
      {canSaveInFolder() && (
        <div className="field-row">
          <span className="field-name">Save</span>
          <Segments
            label="Save"
            options={[
              { value: 'zip', words: 'One zip' },
              { value: 'folder', words: 'Into a folder' },
            ]}
            value={saveAs}
            onTake={(next) => layout.setState({ saveAs: next })}
          />
        </div>
      )}
      <Button className="main" isDisabled={!isReady} onPress={save}>
        {isHeld ? `Save the ${all.length} that can be saved` : `Save all ${counted(all.length, 'file')}`}
      </Button>
    </div>
  );
}
