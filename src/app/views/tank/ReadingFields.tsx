/** Beside the figure: of which floor, depth or thickness, after how many minutes, by whom, with which gauge. */
import { stateHad } from '#app/state/tank/tank-clock.ts';
import { useTank } from './tank-context.ts';
import { figureOf } from './tank-words.ts';

interface ReadingFieldsProps {
  readonly kind: 'depth' | 'thickness';
  readonly setKind: (kind: 'depth' | 'thickness') => void;
  readonly minutes: string;
  readonly setMinutes: (minutes: string) => void;
  readonly onChange: () => void;
}

export function ReadingFields({ kind, setKind, minutes, setMinutes, onChange }: ReadingFieldsProps) {
  const { floors, plan, gaugeAt, setGaugeRegion, hand, setHand, clock, setClock, stage } = useTank();
  const isBefore = gaugeAt.stage === 0;
  const regions = isBefore ? plan.regions : floors;
  const choose = (region: string) => {
    onChange();
    setGaugeRegion(region);
  };
  const changeMinutes = (text: string) => {
    onChange();
    setMinutes(text);
    // The clock goes on from what the part has really had.
    setClock(stateHad(clock, stage.number, figureOf(text)));
  };
  return (
    <div className="reading-fields">
      <label>
        Region
        <select value={gaugeAt.region} onChange={({ target }) => choose(target.value)}>
          {regions.map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </select>
      </label>
      {!isBefore && (
        <>
          <label>
            Gauged
            <select
              value={kind}
              onChange={({ target }) => {
                onChange();
                setKind(target.value === 'depth' ? 'depth' : 'thickness');
              }}
            >
              <option value="thickness">thickness</option>
              <option value="depth">depth</option>
            </select>
          </label>
          <label>
            <span>
              Minutes <span className="unseen">in the bath</span>
            </span>
            <input
              inputMode="decimal"
              autoComplete="off"
              value={minutes}
              onChange={({ target }) => changeMinutes(target.value)}
            />
          </label>
        </>
      )}
      <label>
        Who
        <input
          autoComplete="off"
          maxLength={30}
          value={hand.who}
          onChange={({ target }) => setHand({ ...hand, who: target.value })}
        />
      </label>
      <label>
        Gauge
        <input
          autoComplete="off"
          maxLength={30}
          value={hand.gauge}
          onChange={({ target }) => setHand({ ...hand, gauge: target.value })}
        />
      </label>
    </div>
  );
}
