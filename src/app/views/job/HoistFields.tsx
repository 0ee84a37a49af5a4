/** The hoist's speeds, for tapers that are made by drawing the part out of the bath. They count when both are there. */
import { useState } from 'react';
import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import { SpeedField } from '#app/views/SpeedField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { JobPart } from './job-part.ts';

type Speeds = Readonly<Partial<Record<'slowest' | 'fastest', number | undefined>>>;

const KEYS = ['slowest', 'fastest'] as const;
const PATH = ['process', 'hoist'];
const FIELDS = JOB.members.process.members.hoist.members;

export function HoistFields({ job }: JobPart) {
  const { actions } = useWorkbench();
  /** mm/min, while only one of the two is set. */
  const [draft, setDraft] = useState<Speeds>({});
  const { hoist } = job.process;
  const given: Speeds =
    hoist === undefined
      ? draft
      : { slowest: fromJobUnits(job, hoist.slowest), fastest: fromJobUnits(job, hoist.fastest) };
  const take = (key: (typeof KEYS)[number], value: number | undefined) => {
    const next: Speeds = { ...given, [key]: value };
    const { slowest, fastest } = next;
    if (slowest !== undefined && fastest !== undefined) {
      const inJob = (speed: number) => Number((speed / millimetresIn(job.units ?? 'mm')).toPrecision(7));
      actions.edit('hoist', (before) =>
        setField(before, PATH, { slowest: inJob(slowest), fastest: inJob(fastest) }),
      );
      return setDraft({});
    }
    setDraft({ slowest, fastest });
    if (hoist !== undefined) actions.edit('no hoist', (before) => setField(before, PATH, undefined));
  };
  return (
    <fieldset>
      <legend>Hoist</legend>
      {KEYS.map((key) => {
        const speed = given[key];
        return (
          <SpeedField
            key={key}
            of={FIELDS[key]}
            speed={speed}
            expected="A speed above 0: 20, 0.8 in."
            onTake={(value) => take(key, value)}
            onClear={() => take(key, undefined)}
          />
        );
      })}
      {hoist === undefined && <p className="aside">Counts when both are there: tapers without steps.</p>}
    </fieldset>
  );
}
