/** The bath's volume and its dissolved metal. They apply when all three are there; with one of them empty, the job has no tank. */
import { useState } from 'react';
import { NumberField } from '#app/views/NumberField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { Tank } from '#bath/bath-load.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import type { JobPart } from './job-part.ts';

type TankDraft = Readonly<Partial<Record<keyof Tank, number | undefined>>>;

const { tank: tankGroup, load } = JOB.members.process.members;
const FIELDS = tankGroup.members;
const KEYS = ['litres', 'dissolved', 'dissolvedLimit'] as const;

const PATH = ['process', 'tank'];
const LOAD = ['process', 'load'];

export function TankFields({ job }: JobPart) {
  const { actions } = useWorkbench();
  const [draft, setDraft] = useState<TankDraft>({});
  const { tank } = job.process;
  const shown: TankDraft = { ...draft, ...tank };
  const take = (key: keyof Tank, value: number | undefined) => {
    const next = { ...shown, [key]: value };
    if (isWhole(next)) {
      setDraft({});
      actions.edit('tank', (before) => setField(before, PATH, next));
      return;
    }
    setDraft(next);
    if (tank !== undefined) actions.edit('no tank', (before) => setField(before, PATH, undefined));
  };
  return (
    <fieldset>
      <legend>Tank</legend>
      {KEYS.map((key) => (
        <NumberField
          key={key}
          of={FIELDS[key]}
          value={shown[key]}
          onTake={(value) => take(key, value)}
          onClear={() => take(key, undefined)}
        />
      ))}
      <NumberField
        of={load}
        value={job.process.load}
        usual={1}
        onTake={(parts) => actions.edit(`${parts} parts at once`, (before) => setField(before, LOAD, parts))}
        onClear={() => actions.edit('one part at once', (before) => setField(before, LOAD, undefined))}
      />
      {tank === undefined && (
        <p className="aside">Applies when all three are set: the plan then gives the bath’s load.</p>
      )}
    </fieldset>
  );
}

function isWhole(tank: TankDraft): tank is Tank {
  return KEYS.every((key) => tank[key] !== undefined);
}
