/** Sections that the hand-off shows, each cut along the line that was on the sheet when it was added. */
import { inDrawing } from '#app/state/region-targets.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { MOST_SECTIONS } from '#job/fields/handoff-fields.ts';
import type { JobFile } from '#job/job-file.ts';
import { cutName } from '#job/resolve/resolve-handoff.ts';

const PATH = ['handoff', 'sections'];

export function SectionList({ job }: { readonly job: JobFile }) {
  const { store, actions } = useWorkbench();
  const cut = useWorkbenchState((state) => state.session.cut);
  const sections = job.handoff?.sections ?? [];
  const add = () => {
    if (cut === undefined) return;
    const state = store.getState();
    const section = { from: inDrawing(cut.from, state), to: inDrawing(cut.to, state) };
    actions.edit(`section ${cutName(sections.length)}`, (before) =>
      setField(before, PATH, [...(before.handoff?.sections ?? []), section]),
    );
  };
  const remove = (index: number) =>
    actions.edit(`no section ${cutName(index)}`, (before) => {
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
              {name ?? cutName(index)}: {from.join(', ')} to {to.join(', ')}
            </span>
            <button type="button" onClick={() => remove(index)}>
              Remove<span className="unseen"> section {name ?? cutName(index)}</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" disabled={cut === undefined || sections.length >= MOST_SECTIONS} onClick={add}>
        Add the section line
      </button>
    </fieldset>
  );
}
