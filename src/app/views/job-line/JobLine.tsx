/** The job in one line: what it is called, the sheet, the bath; steps back and forth; ways in. */
import { useId, useRef, useState } from 'react';
import { fromJobUnits, setRate } from '#app/state/edit-figures.ts';
import { setSheetThickness } from '#app/state/edit-job.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { NameField } from '#app/views/NameField.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { readFiles } from '#app/views/read-files.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readLength } from '#units/read-length.ts';
import { showLength } from '#units/show-length.ts';
import { EtchFactorField } from './EtchFactorField.tsx';
import { JobsButton } from './JobsButton.tsx';
import { JobsView } from './JobsView.tsx';
import { SamplePicker } from './SamplePicker.tsx';
import { StepButtons } from './StepButtons.tsx';
import { usePlannedProcess } from './use-planned-process.ts';

export function JobLine() {
  const document = useDocument();
  const [isListOpen, setListOpen] = useState(false);
  const listId = useId();
  return (
    <header className="job-line">
      <h1>Isobath</h1>
      {document !== undefined && <JobName job={document.job} />}
      <JobsButton listId={listId} isOpen={isListOpen} onToggle={() => setListOpen(!isListOpen)} />
      <StepButtons />
      <OpenButton />
      <SamplePicker />
      <UnitChoice />
      {isListOpen && <JobsView id={listId} />}
      {document !== undefined && <JobFigures job={document.job} />}
    </header>
  );
}

function JobName({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const name = job.name ?? '';
  return (
    <span className="job-name">
      <NameField
        label="Name of the job"
        name={name}
        onTake={(value) => actions.edit(`name ${value}`, (before) => ({ ...before, name: value }))}
      />
      <span className="aside">{job.drawing}</span>
    </span>
  );
}

/** The figures that every stage hangs on. Where the job leaves one to the bath, the plan's own is shown. */
function JobFigures({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const planned = usePlannedProcess();
  const given = job.process.rate;
  const rate = given === undefined ? planned?.rate : fromJobUnits(job, given);
  const figureIn = (length: number) => String(Number((length / millimetresIn(unit)).toPrecision(4)));
  return (
    <div className="job-figures">
      <SheetField job={job} />
      <EtchFactorField job={job} />
      <QuantityField
        label="Rate"
        text={rate === undefined ? '' : figureIn(rate)}
        placeholder="none"
        suffix={`${unit} a minute`}
        read={(text) => positive(readLength(text, unit))}
        expected="Depth etched in a minute, above 0: 0.0297, 0,0297 or 0.00117 in."
        onTake={(value) => actions.edit(`rate ${figureIn(value)}`, (before) => setRate(before, value))}
        onClear={() => actions.edit('rate of the bath', (before) => setRate(before, undefined))}
      />
    </div>
  );
}

/** A sheet that tapers has its ends on the panel: one figure here would flatten it. */
function SheetField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { thickness } = job.stock;
  if (typeof thickness === 'object') {
    const ends = [thickness.thicknessFrom, thickness.thicknessTo];
    const [from, to] = ends.map((end) => showLength(fromJobUnits(job, end), unit));
    return (
      <span className="aside">
        Sheet tapers, {from} to {to}
      </span>
    );
  }
  return (
    <LengthField
      label="Sheet"
      length={sheetThickness(job)}
      least={0.1}
      onTake={(length) =>
        actions.edit(`sheet ${showLength(length, unit)}`, (before) => setSheetThickness(before, length))
      }
    />
  );
}

function positive(value: number | undefined): number | undefined {
  return value !== undefined && value > 0 ? value : undefined;
}

function UnitChoice() {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <fieldset className="unit-choice">
      <legend className="unseen">Lengths are shown in</legend>
      {(['mm', 'in'] as const).map((each) => (
        <label key={each}>
          <input type="radio" name="unit" checked={unit === each} onChange={() => actions.readIn(each)} />
          {each}
        </label>
      ))}
    </fieldset>
  );
}

function OpenButton() {
  const { actions } = useWorkbench();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => picker.current?.click()}>
        open a drawing or job
      </button>
      <input
        ref={picker}
        type="file"
        hidden
        multiple
        accept=".dxf,.json"
        aria-label="Drawing or job file"
        onChange={async ({ target }) => {
          if (target.files !== null) actions.openFiles(await readFiles(target.files));
          target.value = '';
        }}
      />
    </>
  );
}
