/** What to do at a stage, and what to expect of its floors. */
import type { StageStep } from '#app/state/stage-steps.ts';
import { useBench } from '#app/views/workbench-context.ts';
import { showLength, showMinutes } from '#units/show-length.ts';

interface TankStageProps {
  readonly step: StageStep;
  readonly thickness: number;
}

export function TankStage({ step, thickness }: TankStageProps) {
  const unit = useBench((state) => state.session.unit);
  const { stage, floors } = step;
  const { lines, sealed, number, minutes, regions } = stage;
  return (
    <section className="tank-stage" aria-labelledby="tank-stage-heading">
      <h2 id="tank-stage-heading">Stage {number}</h2>
      <ol>
        <li>
          <strong>Peel</strong> the piece of stage {number}, inside{' '}
          {lines.length === 1 ? 'one line' : `${lines.length} lines`}: {regions.join(', ')}.
        </li>
        <li>
          <strong>Sealed</strong>{' '}
          {sealed.length === 0
            ? 'nothing.'
            : `stay the lines of ${sealed.length === 1 ? 'stage' : 'stages'} ${sealed.join(', ')}.`}
        </li>
        <li>
          <strong>In the bath</strong> {showMinutes(minutes)} as planned. Take it out at about four fifths and
          gauge.
        </li>
      </ol>
      {floors.length > 0 && (
        <table>
          <caption>To be expected after it</caption>
          <thead>
            <tr>
              <th scope="col">floors of</th>
              <th scope="col">depth</th>
              <th scope="col">leaves</th>
            </tr>
          </thead>
          <tbody>
            {floors.map(({ stage: of, after }) => (
              <tr key={of}>
                <th scope="row">stage {of}</th>
                <td>{showLength(after, unit)}</td>
                <td>{showLength(thickness - after, unit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
