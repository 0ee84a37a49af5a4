/** In the bath: the clock from in to out, and when to come out next. */
import { isIn, putIn, stageInBath, takeBack, takeOut } from '#app/state/tank/tank-clock.ts';
import { useTank } from './tank-context.ts';
import { clockText, timeText } from './tank-words.ts';
import { useExpected } from './use-expected.ts';

export function BathStep() {
  const tank = useTank();
  const { own, had, aim, stage, clock, setClock } = tank;
  const isRunning = isIn(own);
  const isElsewhere = !isRunning && stageInBath(clock) !== undefined;
  const since = own.dips.at(-1)?.in ?? 0;
  const press = () => {
    const { number } = stage;
    setClock(isRunning ? takeOut(clock, number, Date.now()) : putIn(clock, number, Date.now(), had));
  };
  return (
    <section className="tank-bath" aria-label={`Stage ${stage.number} in the bath`}>
      <div className="dip-clock" role="timer">
        <span className="aside">
          {isRunning ? `in the bath since ${timeText(since)}` : had > 0 ? 'so far' : 'not in the bath yet'}
        </span>
        <span className="figure">{clockText(had)}</span>
        <span className="aside">
          of {clockText(aim.minutes)} {aim.isCorrected ? 'as corrected' : 'as planned'}
        </span>
      </div>
      <div className="course">
        <Course />
        <NextOut isRunning={isRunning} />
      </div>
      <div className="buttons">
        <button type="button" className="main big" disabled={isElsewhere} onClick={press}>
          {isRunning ? 'Out now' : 'In now'}
        </button>
        {isRunning && (
          <button type="button" onClick={() => setClock(takeBack(clock, stage.number))}>
            Not in yet
          </button>
        )}
      </div>
    </section>
  );
}

/** The minutes of the stage as a bar, with when it comes out to be gauged. */
function Course() {
  const { had, aim } = useTank();
  const share = (minutes: number) => `${(100 * Math.min(1, minutes / aim.minutes)).toFixed(2)}%`;
  const gauge = aim.outAt;
  return (
    <div className="course-bar" aria-hidden="true">
      <div className="track">
        <span className="fill" style={{ width: share(had) }} />
        {aim.isEarly && <span className="gauge-mark" style={{ left: share(gauge) }} />}
      </div>
      <div className="ends">
        <span>in</span>
        {aim.isEarly && <strong style={{ left: share(gauge) }}>gauge at {clockText(gauge)}</strong>}
        <span className="out">out at {clockText(aim.minutes)}</span>
      </div>
    </div>
  );
}

function NextOut({ isRunning }: { readonly isRunning: boolean }) {
  const { had, aim, gaugeAt, stage } = useTank();
  const expected = useExpected({ stage: stage.number, minutes: aim.outAt, region: gaugeAt.region });
  const until = aim.outAt - had;
  const then =
    expected === undefined ? (
      `Then rinse and gauge ${gaugeAt.region}.`
    ) : (
      <>
        Then rinse and gauge {gaugeAt.region}: it should read <strong>{expected}</strong>.
      </>
    );
  return (
    <p className="next-out">
      <strong className="until">
        {nextOutText({ isRunning, isEarly: aim.isEarly, outAt: aim.outAt, until })}
      </strong>{' '}
      {then}
    </p>
  );
}

/** `Gauge at` is the time to gauge it, with minutes still to come; `Out at` the end of the stage. */
function nextOutText(next: {
  readonly isRunning: boolean;
  readonly isEarly: boolean;
  readonly outAt: number;
  readonly until: number;
}): string {
  const { isRunning, isEarly, outAt, until } = next;
  if (!isRunning) return `${isEarly ? 'Gauge' : 'Out'} at ${clockText(outAt)}.`;
  if (until > 0) return `${clockText(until)} until ${isEarly ? 'it is gauged' : 'out'}.`;
  return isEarly ? 'Out and gauge now.' : 'Out now.';
}
