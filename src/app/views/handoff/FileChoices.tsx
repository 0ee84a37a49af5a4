/** Which files the job makes beside the plan and the scribe drawing. */
import { chooseFile } from '#app/state/choose-file.ts';
import { useDocument, useWorkbench } from '#app/views/workbench-context.ts';
import { HANDOFF_FILES, HANDOFF_LIST } from '#job/handoff-list.ts';

export function FileChoices() {
  const { actions } = useWorkbench();
  const job = useDocument()?.job;
  if (job === undefined) return null;
  const chosen = job.handoff?.files ?? [];
  return (
    <details className="file-choices">
      <summary>More files: {chosen.length === 0 ? 'none chosen' : `${chosen.length} chosen`}</summary>
      <ul>
        {HANDOFF_FILES.map((file) => (
          <li key={file}>
            <label>
              <input
                type="checkbox"
                checked={chosen.includes(file)}
                onChange={({ target }) =>
                  actions.edit(
                    `${target.checked ? 'make' : 'leave out'} the ${HANDOFF_LIST[file].label}`,
                    (before) => chooseFile(before, file, target.checked),
                  )
                }
              />
              {HANDOFF_LIST[file].label}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
