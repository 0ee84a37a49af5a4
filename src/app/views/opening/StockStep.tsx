/** Sheet and bath, asked for in each new job: thickness, alloy, bath. The usual bath of the metal is offered with it. */
import { type FormEvent, useState } from 'react';
import { setSheetThickness } from '#app/state/edits/edit-job.ts';
import { figuresOf } from '#app/views/job/known-figures.ts';
import { lengthLimits } from '#app/views/length-limits.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { readLength } from '#units/read-length.ts';
import { showLength } from '#units/show-length.ts';

const { thickness: THICKNESS, alloy: ALLOY } = JOB.members.stock.members;
const { bath: BATH } = JOB.members.process.members;
const LIMITS = lengthLimits(THICKNESS);

export function StockStep() {
  const job = useDocument()?.job;
  return job === undefined ? null : <StockForm job={job} />;
}

function StockForm({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const [text, setText] = useState('');
  const [alloy, setAlloy] = useState(job.stock.alloy ?? '');
  const { alloys, baths } = figuresOf(job);
  const metal = alloys.find(({ id }) => id === alloy)?.metal;
  const fitting = baths.filter(({ etches }) => etches === metal);
  const [bath, setBath] = useState(job.process.bath ?? '');
  const bathNow = baths.find(({ id }) => id === bath) ?? fitting[0];
  const thickness = readLength(text, unit);
  const isRight = thickness !== undefined && thickness >= LIMITS.least && thickness <= LIMITS.most;
  const say = (event: FormEvent) => {
    event.preventDefault();
    if (!isRight) return;
    actions.say('stock', `sheet ${showLength(thickness, unit)}`, (before) => {
      const set = setSheetThickness(before, thickness);
      return {
        ...set,
        stock: { ...set.stock, ...(alloy === '' ? {} : { alloy }) },
        process: { ...set.process, ...(bathNow === undefined ? {} : { bath: bathNow.id }) },
      };
    });
  };
  return (
    <form className="stock-step" onSubmit={say}>
      <label>
        {THICKNESS.label}, {unit}
        <input
          inputMode="decimal"
          value={text}
          autoComplete="off"
          aria-invalid={text !== '' && !isRight}
          onChange={({ target }) => setText(target.value)}
        />
      </label>
      <label>
        {ALLOY.label}
        <select
          aria-label={ALLOY.label}
          value={alloy}
          onChange={({ target }) => {
            setAlloy(target.value);
            setBath('');
          }}
        >
          <option value="">not set</option>
          {alloys.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {BATH.label}
        <select
          aria-label={BATH.label}
          value={bathNow?.id ?? ''}
          onChange={({ target }) => setBath(target.value)}
        >
          {bathNow === undefined && <option value="">not set</option>}
          {(fitting.length > 0 ? fitting : baths).map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" className="main" disabled={!isRight}>
        Use this sheet
      </button>
    </form>
  );
}
