/** How the scribe template is made: slot, bridges, margin, tooling holes, stretch and its paper. */

import { FieldControl, GroupFields } from '#app/views/job/FieldControl.tsx';
import type { JobPart } from '#app/views/job/job-part.ts';
import { RowsField } from '#app/views/job/RowsField.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { fieldIn, setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { readFigure } from '#units/read-figure.ts';

const { members } = JOB.members.handoff.members.template;
const PATH = ['handoff', 'template'];
const LEAST = 0.9;
const MOST = 1.1;

export function TemplateFields(part: JobPart) {
  return (
    <details className="disclosure">
      <summary>Scribe template</summary>
      <fieldset aria-label="Scribe template">
        <GroupFields group={members.knife} path={[...PATH, 'knife']} {...part} />
        <GroupFields group={members.bridge} path={[...PATH, 'bridge']} {...part} />
        <FieldControl field={members.web} path={[...PATH, 'web']} {...part} />
        <FieldControl field={members.margin} path={[...PATH, 'margin']} {...part} />
        <GroupFields group={members.holes} path={[...PATH, 'holes']} {...part} />
        <HolePlaces {...part} />
        <StretchField {...part} axis={0} />
        <StretchField {...part} axis={1} />
        <FieldControl field={members.paper} path={[...PATH, 'paper']} {...part} />
      </fieldset>
    </details>
  );
}

function HolePlaces({ job }: JobPart) {
  const { actions } = useWorkbench();
  const path = [...PATH, 'holes', 'at'];
  const given = job.handoff?.template?.holes?.at ?? [];
  return (
    <RowsField
      label={members.holes.members.at.label}
      rows={given}
      columns={['x', 'y']}
      onTake={(rows) =>
        actions.edit('places of tooling holes', (before) =>
          setField(before, path, rows.length === 0 ? undefined : rows),
        )
      }
    />
  );
}

function StretchField({ job, axis }: JobPart & { readonly axis: 0 | 1 }) {
  const { actions } = useWorkbench();
  const given = fieldIn(job, [...PATH, 'stretch']);
  const pair = Array.isArray(given) ? (given as number[]) : undefined;
  const name = `Stretch along ${axis === 0 ? 'x' : 'y'}`;
  return (
    <QuantityField
      label={name}
      text={pair?.[axis] === undefined ? '' : String(pair[axis])}
      placeholder="1"
      suffix=""
      read={(text) => {
        const value = readFigure(text);
        return value !== undefined && value >= LEAST && value <= MOST ? value : undefined;
      }}
      expected={`Size of the template to that of the part, ${LEAST} to ${MOST}.`}
      onTake={(value) =>
        actions.edit(`${name.toLowerCase()} ${value}`, (before) =>
          setField(before, [...PATH, 'stretch'], (pair ?? [1, 1]).with(axis, value)),
        )
      }
      onClear={() =>
        actions.edit('no stretch', (before) => setField(before, [...PATH, 'stretch'], undefined))
      }
    />
  );
}
