/** Before the bath: what to peel, and what must be bare and sealed then. */
import { finishStep } from '#app/state/tank/tank-clock.ts';
import type { ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import { showLength } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';
import { listWords } from './tank-words.ts';
import { useOtherFace } from './use-other-face.ts';

export function PeelStep() {
  const { plan, stage, floors, goTo, clock, setClock } = useTank();
  const { number } = stage;
  const isRemasked = plan.masking === 're-mask';
  const behind = useOtherFace(number);
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
      <Peeled face={behind?.shown} stage={stage} bare={floors} isRemasked={isRemasked} />
      {behind !== undefined && (
        <Peeled face={behind.other} stage={behind.stage} bare={behind.bare} isRemasked={isRemasked} />
      )}
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

function namesOf(bare: ShownPlan['regions']): string {
  return bare.length === 0 ? 'nothing' : listWords(bare.map(({ id }) => id));
}

interface PeeledProps {
  /** Named where both faces are etched. */
  readonly face: SheetSide | undefined;
  readonly stage: ShownStage;
  readonly bare: ShownPlan['regions'];
  readonly isRemasked: boolean;
}

function Peeled({ face, stage: { lines, regions }, bare, isRemasked }: PeeledProps) {
  const where = face === undefined ? '' : `${face === 'near' ? 'Near' : 'Far'} face: `;
  const peeled = isRemasked ? bare.map(({ id }) => id) : regions;
  if (lines.length === 0) return <p>{where}nothing to peel.</p>;
  return (
    <p>
      {where}
      {where === '' ? 'Inside' : 'inside'} {lines.length === 1 ? 'one line' : `${lines.length} lines`}:{' '}
      <strong>{listWords(peeled)}</strong>.
    </p>
  );
}

export function CheckStep() {
  const { plan, stage, floors, step, unit, clock, setClock } = useTank();
  const { sealed } = stage;
  const behind = useOtherFace(stage.number);
  const isRemasked = plan.masking === 're-mask';
  return (
    <section className="tank-do" aria-labelledby="tank-do-heading">
      <h2 id="tank-do-heading">Check before the bath</h2>
      <dl>
        <dt>Bare</dt>
        <dd>
          {behind === undefined ? '' : `${behind.shown} face `}
          {namesOf(floors)}
          {behind === undefined ? '' : `; ${behind.other} face ${namesOf(behind.bare)}`}
        </dd>
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
