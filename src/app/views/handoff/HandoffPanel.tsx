/** What stands on the papers and how files are made, beside the files themselves; and the one button that saves them all. */

import { CuttingFields } from '#app/views/job/CuttingFields.tsx';
import { FieldControl, GroupFields } from '#app/views/job/FieldControl.tsx';
import { JobUnitField } from '#app/views/job/JobUnitField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useDocument } from '#app/views/workbench-context.ts';
import { JOB } from '#job/job-file.ts';
import { PostField } from './PostField.tsx';
import { SaveAll } from './SaveAll.tsx';
import { SectionList } from './SectionList.tsx';
import { TemplateFields } from './TemplateFields.tsx';

const { members } = JOB.members.handoff;

export function HandoffPanel() {
  const document = useDocument();
  if (document === undefined) return <p className="aside">Open a drawing or a job first.</p>;
  const { job } = document;
  const part = { job, filled: job };
  return (
    <div className="job-panel handoff-panel">
      <fieldset>
        <legend>On the papers</legend>
        <GroupFields group={members.issue} path={['handoff', 'issue']} {...part} />
        <FieldControl field={members.date} path={['handoff', 'date']} {...part} />
        <FieldControl field={members.hand} path={['handoff', 'hand']} {...part} />
        <FieldControl field={members.paper} path={['handoff', 'paper']} {...part} />
        <FieldControl field={members.units} path={['handoff', 'units']} {...part} />
        <JobUnitField job={job} />
      </fieldset>
      <Disclosure title="Heading of papers and labels">
        <GroupFields group={members.heading} path={['handoff', 'heading']} {...part} />
      </Disclosure>
      <fieldset>
        <legend>Points to inspect</legend>
        <GroupFields group={members.inspection} path={['handoff', 'inspection']} {...part} />
      </fieldset>
      <SectionList job={job} />
      <FieldControl field={members.overrun} path={['handoff', 'overrun']} {...part} />
      <CuttingFields title="Scribe drawing" name="scribe" {...part} />
      <CuttingFields title="Machine program" name="program" {...part}>
        <PostField job={job} />
      </CuttingFields>
      <TemplateFields {...part} />
      <SaveAll />
    </div>
  );
}
