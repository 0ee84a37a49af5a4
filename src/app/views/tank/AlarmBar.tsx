/** What must be reported first, with what to do about it in the same line. */

import { stageAim } from '#app/state/tank/stage-aim.ts';
import { type TankAlarm, tankAlarm } from '#app/state/tank/tank-alarm.ts';
import { bathMinutes, isIn, stageClock, stageInBath, takeOut } from '#app/state/tank/tank-clock.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { sayInLabels } from '#job/field-labels.ts';
import { type Tank, useTank } from './tank-context.ts';
import { clockText } from './tank-words.ts';

export function AlarmBar() {
  const tank = useTank();
  const { own, had, aim, record, unit, stage, clock } = tank;
  const inBath = stageInBath(clock);
  if (inBath !== undefined && inBath !== stage.number) {
    const at = tank.steps.findIndex((step) => step.stage.number === inBath);
    const late = lateElsewhere(tank, at);
    return (
      <div className={`tank-alarm ${late?.severity ?? 'warn'}`} role="alert">
        <SeverityShape severity={late?.severity ?? 'warn'} />
        <p>
          <strong>Stage {inBath} is in the bath.</strong> {late !== undefined && <Past alarm={late} />}
        </p>
        <button type="button" onClick={() => tank.showStage(at)}>
          Show stage {inBath}
        </button>
      </div>
    );
  }
  const alarm = tankAlarm({ isIn: isIn(own), had, aim }, record.result?.findings ?? []);
  if (alarm === undefined) return null;
  const { severity, finding, more, action } = alarm;
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
          <Past alarm={alarm} />
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

/** Of the stage in the bath while another is on show. */
function lateElsewhere({ steps, clock, now, record, byClock }: Tank, at: number): TankAlarm | undefined {
  const stage = steps[at]?.stage;
  if (stage === undefined) return undefined;
  const own = stageClock(clock, stage.number);
  const aim = stageAim(stage, own, { corrected: record.result?.corrected, byClock });
  return tankAlarm({ isIn: isIn(own), had: bathMinutes(own, now), aim }, []);
}

function Past({ alarm: { past = 0, pastWhat } }: { readonly alarm: TankAlarm }) {
  return (
    <>
      <strong>
        {/* Not read out again each second. */}
        <span aria-hidden="true">{clockText(past)} </span>
        {pastWhat === 'gauging' ? 'past the time to gauge.' : 'past the end of the stage.'}
      </strong>{' '}
      {pastWhat === 'gauging' ? 'Take the part out and gauge it.' : 'Take the part out.'}
    </>
  );
}
