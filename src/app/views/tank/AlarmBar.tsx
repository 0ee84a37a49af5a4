/** What must be reported first, with what to do about it in the same line. */

import { sayInLabels } from '#app/state/field-labels.ts';
import { tankAlarm } from '#app/state/tank/tank-alarm.ts';
import { isIn, stageInBath, takeOut } from '#app/state/tank/tank-clock.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useTank } from './tank-context.ts';
import { clockText } from './tank-words.ts';

export function AlarmBar() {
  const tank = useTank();
  const { own, had, aim, record, unit, stage, clock } = tank;
  const inBath = stageInBath(clock);
  if (inBath !== undefined && inBath !== stage.number) {
    const at = tank.steps.findIndex((step) => step.stage.number === inBath);
    return (
      <div className="tank-alarm warn" role="alert">
        <SeverityShape severity="warn" />
        <p>
          <strong>Stage {inBath} is in the bath.</strong>
        </p>
        <button type="button" onClick={() => tank.showStage(at)}>
          Show stage {inBath}
        </button>
      </div>
    );
  }
  const alarm = tankAlarm({ isIn: isIn(own), had, aim }, record.result?.findings ?? []);
  if (alarm === undefined) return null;
  const { severity, finding, past, pastWhat, more, action } = alarm;
  const said = finding && sayInLabels(finding, unit);
  const act = () => {
    if (action === 'out') tank.setClock(takeOut(clock, stage.number, Date.now()));
    else tank.setTab(action);
  };
  return (
    <div className={`tank-alarm ${severity}`} role="alert">
      <SeverityShape severity={severity} />
      {said === undefined ? (
        <p>
          {/* Not read out again each second. */}
          <strong>
            <span aria-hidden="true">{clockText(past ?? 0)} </span>
            {pastWhat === 'gauging' ? 'past the time to gauge.' : 'past the end of the stage.'}
          </strong>{' '}
          {pastWhat === 'gauging' ? 'Take the part out and gauge it.' : 'Take the part out.'}
        </p>
      ) : (
        <p>
          <strong>
            {said.title}
            {finding?.place.regions === undefined ? '' : `: ${finding.place.regions.join(', ')}`}.
          </strong>{' '}
          {more > 0 && `And ${more} more.`}
        </p>
      )}
      <button type="button" onClick={act}>
        {action === 'out' ? 'Out now' : 'Show'}
      </button>
    </div>
  );
}
