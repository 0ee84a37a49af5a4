/** The bath's volume and its dissolved metal. They apply when all three are there; with one of them empty, the job has no tank. */
import { useState } from 'react';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { Tank } from '#bath/bath-load.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { readFigure } from '#units/read-figure.ts';
import type { JobPart } from './job-part.ts';

type TankDraft = Readonly<Partial<Record<keyof Tank, number | undefined>>>;

const { tank: tankGroup, load } = JOB.members.process.members;
const { litres, dissolved, dissolvedLimit } = tankGroup.members;
const FIELDS = [
  { key: 'litres', field: litres, suffix: 'L' },
  { key: 'dissolved', field: dissolved, suffix: 'g/L' },
  { key: 'dissolvedLimit', field: dissolvedLimit, suffix: 'g/L' },
] as const;

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
      {FIELDS.map(({ key, field, suffix }) => (
        <QuantityField
          key={key}
          label={field.label}
          text={shown[key] === undefined ? '' : String(shown[key])}
          placeholder="none"
          suffix={suffix}
          read={(text) => readAmount(text, key)}
          expected={key === 'dissolved' ? 'Grams a litre, 0 or more.' : 'A figure above 0.'}
          onTake={(value) => take(key, value)}
          onClear={() => take(key, undefined)}
        />
      ))}
      <QuantityField
        label={load.label}
        text={job.process.load === undefined ? '' : String(job.process.load)}
        placeholder="1"
        suffix=""
        read={wholeFigure}
        expected="A whole number of parts."
        onTake={(parts) => actions.edit(`${parts} parts at once`, (before) => setField(before, LOAD, parts))}
        onClear={() => actions.edit('one part at once', (before) => setField(before, LOAD, undefined))}
      />
      {tank === undefined && (
        <p className="aside">Applies when all three are set: the plan then gives the bath’s load.</p>
      )}
    </fieldset>
  );
}

/** A fresh bath has nothing dissolved; a tank without volume or limit is none. */
function readAmount(text: string, key: keyof Tank): number | undefined {
  const amount = readFigure(text);
  if (amount === undefined || amount < 0) return undefined;
  return amount === 0 && key !== 'dissolved' ? undefined : amount;
}

function wholeFigure(text: string): number | undefined {
  const count = readFigure(text);
  return count !== undefined && Number.isInteger(count) && count > 0 ? count : undefined;
}

function isWhole(tank: TankDraft): tank is Tank {
  return FIELDS.every(({ key }) => tank[key] !== undefined);
}
