/** Sections that the hand-off shows, each cut along the line that was on the sheet when it was added. */
import { inDrawing } from '#app/state/region-targets.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import type { JobFile } from '#job/job-file.ts';

const PATH = ['handoff', 'sections'];
const MOST = 99;
const LETTERS = 26;

export function SectionList({ job }: { readonly job: JobFile }) {
  const { store, actions } = useWorkbench();
  const cut = useWorkbenchState((state) => state.session.cut);
  const sections = job.handoff?.sections ?? [];
  const add = () => {
    if (cut === undefined) return;
    const place = (point: typeof cut.from): [number, number] => {
      const [x, y] = inDrawing(point, store.getState());
      return [x, y];
    };
    const section = { from: place(cut.from), to: place(cut.to) };
    actions.edit(`section ${nameOf(sections.length)}`, (before) =>
      setField(before, PATH, [...(before.handoff?.sections ?? []), section]),
    );
  };
  const remove = (index: number) =>
    actions.edit(`no section ${nameOf(index)}`, (before) => {
      const left = (before.handoff?.sections ?? []).toSpliced(index, 1);
      return setField(before, PATH, left.length === 0 ? undefined : left);
    });
  return (
    <fieldset>
      <legend>Sections</legend>
      {sections.length === 0 && <p className="aside">One through the deepest region.</p>}
      <ul className="plain-list">
        {sections.map(({ from, to, name }, index) => (
          <li key={`${from.join()} ${to.join()}`}>
            <span>
              {name ?? nameOf(index)}: {from.join(', ')} to {to.join(', ')}
            </span>
            <button type="button" onClick={() => remove(index)}>
              Remove<span className="unseen"> section {name ?? nameOf(index)}</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" disabled={cut === undefined || sections.length >= MOST} onClick={add}>
        Add the section line
      </button>
    </fieldset>
  );
}

/** A, B, C and on, as the hand-off names sections without a name. */
function nameOf(index: number): string {
  const letter = String.fromCharCode('A'.charCodeAt(0) + (index % LETTERS));
  return index < LETTERS ? letter : `${letter}${Math.floor(index / LETTERS)}`;
}
