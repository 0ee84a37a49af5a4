/** Which files the job makes beside the plan and the scribe drawing. */
import { chooseFile } from '#app/state/choose-file.ts';
import { useDocument, useWorkbench } from '#app/views/workbench-context.ts';
import { HANDOFF_FILES, type HandoffFile } from '#job/handoff-fields.ts';

const WORDS: Readonly<Record<HandoffFile, string>> = {
  traveller: 'traveller for the tank',
  review: 'review sheets',
  inspection: 'points to inspect',
  program: 'machine program',
  'scribe-r12': 'scribe drawing for old readers (R12)',
  template: 'scribe template',
  'section-dxf': 'sections to scale (DXF)',
  'section-svg': 'pictures of sections (SVG)',
  glb: 'solid with colours (GLB)',
  stl: 'solid (STL)',
};

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
                  actions.edit(`${target.checked ? 'make' : 'leave out'} the ${WORDS[file]}`, (before) =>
                    chooseFile(before, file, target.checked),
                  )
                }
              />
              {WORDS[file]}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
