/** How lines are cut: of the scribe drawing, or of the machine program. */
import type { ReactNode } from 'react';
import { JOB } from '#job/job-file.ts';
import { GroupFields } from './FieldControl.tsx';
import type { JobPart } from './job-part.ts';

interface CuttingFieldsProps extends JobPart {
  readonly title: string;
  readonly name: 'scribe' | 'program';
  readonly children?: ReactNode;
}

export function CuttingFields({ title, name, children, ...part }: CuttingFieldsProps) {
  return (
    <details className="disclosure">
      <summary>{title}</summary>
      <fieldset aria-label={title}>
        <GroupFields group={JOB.members.handoff.members[name]} path={['handoff', name]} {...part} />
        {children}
      </fieldset>
    </details>
  );
}
