/** Before the bath: what to peel, and what must be bare and sealed then. */
import { finishStep } from '#app/state/tank/tank-clock.ts';
import { showLength } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';
import { listWords } from './tank-words.ts';

export function PeelStep() {
  const { plan, stage, floors, goTo, clock, setClock } = useTank();
  const { number, lines } = stage;
  const isRemasked = plan.masking === 're-mask';
  const peeled = isRemasked ? floors.map(({ id }) => id) : stage.regions;
  return (
    <section className="tank-do" aria-labelledby="tank-do-heading">
      <h2 id="tank-do-heading">
        {isRemasked && number > 1 ? 'Coat and peel' : 'Peel'} stage {number}
      </h2>
      {isRemasked && (
        <p>
          {number === 1 ? 'Coat the part' : 'Take the old maskant off, clean the part and coat it again'}; cut
          the lines of stage {number} and no other.
        </p>
      )}
      <p>
        Inside {lines.length === 1 ? 'one line' : `${lines.length} lines`}:{' '}
        <strong>{listWords(peeled)}</strong>.
      </p>
      <div className="buttons">
        <button
          type="button"
          className="main big"
          onClick={() => setClock(finishStep(clock, number, 'peel'))}
        >
          Peeled
        </button>
        {number === 1 && (
          <button type="button" onClick={() => goTo('sheet')}>
            Gauge the sheet first
          </button>
        )}
      </div>
    </section>
  );
}

export function CheckStep() {
  const { plan, stage, floors, step, unit, clock, setClock } = useTank();
  const { sealed } = stage;
  const isRemasked = plan.masking === 're-mask';
  return (
    <section className="tank-do" aria-labelledby="tank-do-heading">
      <h2 id="tank-do-heading">Check before the bath</h2>
      <dl>
        <dt>Bare</dt>
        <dd>{listWords(floors.map(({ id }) => id))}</dd>
        <dt>Sealed</dt>
        <dd>
          {isRemasked || sealed.length === 0
            ? 'everything else'
            : `everything else, with the ${sealed.length === 1 ? 'line of stage' : 'lines of stages'} ${listWords(sealed.map(String))}`}
        </dd>
        <dt>Depth after</dt>
        <dd>
          {isRemasked
            ? showLength(stage.level, unit)
            : step.floors.map(({ stage: of, after }) => (
                <span key={of} className="depth-after">
                  stage {of} <strong>{showLength(after, unit)}</strong>
                </span>
              ))}
        </dd>
      </dl>
      <div className="buttons">
        <button
          type="button"
          className="main big"
          onClick={() => setClock(finishStep(clock, stage.number, 'check'))}
        >
          Checked
        </button>
      </div>
    </section>
  );
}
