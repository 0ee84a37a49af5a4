/** One reading: where, what was read, and the minutes that the stage had by then. */
import { type FormEvent, useState } from 'react';
import type { ReadingPut } from '#app/state/run-readings.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import type { LengthUnit } from '#units/length-unit.ts';

interface ReadingFormProps {
  readonly plan: ShownPlan;
  readonly stage: ShownStage;
  readonly unit: LengthUnit;
  /** Thickest sheet, in that unit: a reading beyond it is a slip of the pen. */
  readonly most: number;
  /** Whether it was taken. */
  readonly take: (reading: ReadingPut) => boolean;
}

export function ReadingForm({ plan, stage, unit, most, take }: ReadingFormProps) {
  const floors = plan.regions.filter(({ level }) => level >= stage.level);
  const [when, setWhen] = useState(stage.number);
  const [minutes, setMinutes] = useState('');
  const [region, setRegion] = useState(floors[0]?.id ?? '');
  const [kind, setKind] = useState<'depth' | 'thickness'>('depth');
  const [value, setValue] = useState('');
  const [note, setNote] = useState('');
  const isBefore = when === 0;
  const regions = isBefore ? plan.regions : floors;
  const read = { minutes: numberOf(minutes), value: numberOf(value) };
  const isTooMuch = read.value !== undefined && read.value > most;
  const isWhole = read.value !== undefined && !isTooMuch && (isBefore || read.minutes !== undefined);
  const put = (event: FormEvent) => {
    event.preventDefault();
    if (read.value === undefined) return;
    const wasTaken = take({
      stage: when,
      minutes: isBefore ? undefined : read.minutes,
      region,
      kind: isBefore ? 'thickness' : kind,
      value: read.value,
      note,
    });
    if (wasTaken) setValue('');
  };
  return (
    <form className="reading-form" onSubmit={put}>
      <label>
        When
        <select value={when} onChange={({ target }) => setWhen(Number(target.value))}>
          <option value={stage.number}>stage {stage.number}</option>
          <option value={0}>before the first dip</option>
        </select>
      </label>
      {!isBefore && (
        <label>
          Minutes it had
          <input inputMode="decimal" value={minutes} onChange={({ target }) => setMinutes(target.value)} />
        </label>
      )}
      <label>
        Region
        <select value={region} onChange={({ target }) => setRegion(target.value)}>
          {regions.map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </select>
      </label>
      {!isBefore && (
        <label>
          Gauged
          <select value={kind} onChange={({ target }) => setKind(target.value as typeof kind)}>
            <option value="depth">depth</option>
            <option value="thickness">thickness</option>
          </select>
        </label>
      )}
      <label>
        Reading, {unit}
        <input inputMode="decimal" value={value} onChange={({ target }) => setValue(target.value)} />
      </label>
      <label className="wide">
        Note
        <input
          value={note}
          maxLength={120}
          placeholder="who, which gauge"
          onChange={({ target }) => setNote(target.value)}
        />
      </label>
      <button type="submit" disabled={!isWhole}>
        put it in
      </button>
      {isTooMuch && (
        <p role="alert" className="refused">
          That is more than the sheet can be thick, {most.toFixed(2)} {unit}: look at the reading again.
        </p>
      )}
    </form>
  );
}

function numberOf(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value >= 0 ? value : undefined;
}
