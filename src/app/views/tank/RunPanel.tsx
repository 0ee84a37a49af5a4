/** Readings in, minutes left out; the record of the run only grows. */
import { saveBytes } from '#app/views/save-bytes.ts';
import { sayFinding } from '#findings/say-finding.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { ReadingForm } from './ReadingForm.tsx';
import { RunTables } from './RunTables.tsx';
import { useRunReadings } from './use-run-readings.ts';

interface RunPanelProps {
  readonly planText: string;
  readonly plan: ShownPlan;
  readonly stage: ShownStage;
  /** The job's: readings are written in it, and all else is shown in it, whatever the workbench reads in. */
  readonly unit: ShownUnit;
  /** Thickest sheet, in that unit. */
  readonly most: number;
}

export function RunPanel({ planText, plan, stage, unit, most }: RunPanelProps) {
  const { run, corrected, findings, isTaken, take } = useRunReadings(planText);
  const save = (name: string, mime: string, text: string) =>
    saveBytes({ name, mime, bytes: new TextEncoder().encode(text) });
  const { recordText } = run;
  const count = run.readingsText.trimEnd().split('\n').length - 1;
  return (
    <section className="tank-run" aria-labelledby="tank-run-heading">
      <h2 id="tank-run-heading">Readings</h2>
      <ReadingForm key={stage.number} plan={plan} stage={stage} unit={unit} most={most} take={take} />
      <div role="status">
        {!isTaken && <p className="refused">The reading was not taken.</p>}
        {corrected === undefined ? (
          <p className="aside">No reading yet: the minutes are those of the plan.</p>
        ) : (
          <RunTables corrected={corrected} unit={unit} />
        )}
        {findings.map((finding, index) => {
          const { title, reason, remedy } = sayFinding(finding, unit);
          return (
            <p key={`${finding.code} ${index.toString()}`} className={`finding ${finding.severity}`}>
              <strong>
                {title} {finding.place.regions?.join(', ')}
              </strong>{' '}
              {reason} {remedy}
            </p>
          );
        })}
      </div>
      {recordText !== undefined && (
        <p className="row">
          <button type="button" onClick={() => save('plan.run.json', 'application/json', recordText)}>
            save the record
          </button>
          <button type="button" onClick={() => save('readings.csv', 'text/csv', run.readingsText)}>
            save the readings
          </button>
          <span className="aside">
            {count === 1 ? '1 reading' : `${count} readings`}, kept in this browser
          </span>
        </p>
      )}
      <p className="aside">
        Minutes are calculated, not approved: the site’s process specification decides. Wear what the bath
        asks for when gauging.
      </p>
    </section>
  );
}
