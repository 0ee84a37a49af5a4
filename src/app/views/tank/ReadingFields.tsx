/** Beside the figure: of which floor, depth or thickness, after how many minutes, by whom, with which gauge. */
import { useTank } from './tank-context.ts';

interface ReadingFieldsProps {
  readonly kind: 'depth' | 'thickness';
  readonly setKind: (kind: 'depth' | 'thickness') => void;
  readonly minutes: string;
  readonly setMinutes: (minutes: string) => void;
  readonly onChange: () => void;
}

export function ReadingFields({ kind, setKind, minutes, setMinutes, onChange }: ReadingFieldsProps) {
  const { floors, plan, gaugeAt, setGaugeAt, hand, setHand } = useTank();
  const isBefore = gaugeAt.stage === 0;
  const regions = isBefore ? plan.regions : floors;
  const choose = (region: string) => {
    onChange();
    setGaugeAt({ ...gaugeAt, region });
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
              onChange={({ target }) => {
                onChange();
                setMinutes(target.value);
              }}
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
