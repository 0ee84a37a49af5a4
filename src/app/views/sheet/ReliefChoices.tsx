/** How the relief is looked at: as drawn, cut open along the section line, or from below; and how much heights are drawn larger. */
import { Image } from 'lucide-react';
import { jobName } from '#app/state/keeping/kept-job.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import type { ReliefView } from '#app/state/workbench-state.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { useToast } from '#app/views/controls/toasts.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { saveSheetPicture } from './save-sheet-picture.ts';

const VIEWS: readonly { readonly view: ReliefView; readonly words: string }[] = [
  { view: 'drawn', words: 'As drawn' },
  { view: 'cut', words: 'Cut at A' },
  { view: 'below', words: 'From below' },
];
const HEIGHTS = [1, 2, 4, 8, 16, 32, 64];

export function ReliefChoices() {
  const { actions } = useWorkbench();
  const exaggeration = useWorkbenchState((state) => state.session.exaggeration);
  const face = useWorkbenchState(faceOnShow);
  const fitted = useWorkbenchState((state) => state.fittedHeight);
  return (
    <>
      {face === 'near' && <ViewChoice />}
      <label className="height">
        height
        <select
          value={exaggeration}
          aria-label="Height exaggeration"
          onChange={({ target }) =>
            actions.exaggerate(target.value === 'fitted' ? 'fitted' : Number(target.value))
          }
        >
          <option value="fitted">×{fitted} fits</option>
          {HEIGHTS.map((height) => (
            <option key={height} value={height}>
              ×{height}
            </option>
          ))}
        </select>
      </label>
      <SavePicture />
    </>
  );
}

function SavePicture() {
  const say = useToast();
  const name = useDocument()?.job;
  const isMade = useWorkbenchState(
    ({ derived: { page, relief } }) => relief?.mesh?.fine !== undefined && relief.of === page?.plan,
  );
  const save = async () => {
    const view = document.querySelector<HTMLElement>('.sheet-view');
    const file = `${name === undefined ? 'part' : jobName({ job: name })}-relief.png`;
    const isSaved = view !== null && (await saveSheetPicture(view, file));
    say(isSaved ? `Saved ${file}` : 'The browser made no picture');
  };
  return (
    <IconButton
      icon={Image}
      name="Save the relief as a picture, with its key"
      isDisabled={!isMade}
      onPress={save}
    />
  );
}

/** The far face is seen from below. */
function ViewChoice() {
  const { actions } = useWorkbench();
  const reliefView = useWorkbenchState((state) => state.session.reliefView);
  return (
    <fieldset className="switch">
      <legend className="unseen">View of the relief</legend>
      {VIEWS.map(({ view, words }) => (
        <label key={view}>
          <input
            type="radio"
            name="relief-view"
            checked={reliefView === view}
            onChange={() => actions.turnRelief(view)}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
