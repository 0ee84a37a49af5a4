/** The post of the machine program: a plain one, or that of a file which was dropped on the window and now stands in the job. */
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import type { JobFile } from '#job/job-file.ts';

export function PostField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const post = job.handoff?.program?.post;
  if (post === undefined) {
    return <p className="aside">Post: a plain one. Drop a post file on the window to take its place.</p>;
  }
  return (
    <p className="row">
      <span>Post: {typeof post === 'string' ? post : 'in the job'}</span>
      <button
        type="button"
        onClick={() =>
          actions.edit('plain post', (before) => setField(before, ['handoff', 'program', 'post'], undefined))
        }
      >
        Use the plain one
      </button>
    </p>
  );
}
