/** What to do at a stage, and what to expect of its floors. */
import type { StageStep } from '#app/state/stage-steps.ts';
import { HeadRow } from '#app/views/HeadRow.tsx';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { type ShownUnit, showLength, showMinutes } from '#units/show-length.ts';

interface TankStageProps {
  readonly plan: ShownPlan;
  readonly step: StageStep;
  readonly thickness: number;
  readonly unit: ShownUnit;
}

export function TankStage({ plan, step, thickness, unit }: TankStageProps) {
  const { stage } = step;
  const { lines, sealed, number, minutes, level } = stage;
  const isRemasked = plan.masking === 're-mask';
  // With a coat a stage the window lies over all that ends as deep or deeper, and comes out at one depth.
  const regions = isRemasked
    ? plan.stages.filter((each) => each.number >= number).flatMap((each) => each.regions)
    : stage.regions;
  const floors = isRemasked
    ? plan.stages
        .filter((each) => each.number >= number)
        .map((each) => ({ stage: each.number, after: level }))
    : step.floors;
  return (
    <section className="tank-stage" aria-labelledby="tank-stage-heading">
      <h2 id="tank-stage-heading">Stage {number}</h2>
      <ol>
        {isRemasked && (
          <li>
            <strong>{number === 1 ? 'Coat' : 'Coat anew'}</strong>
            {number === 1 ? '' : ', the old maskant off and the part clean'}; cut the lines of stage {number}{' '}
            and no other.
          </li>
        )}
        <li>
          <strong>Peel</strong> the piece of stage {number}, inside{' '}
          {lines.length === 1 ? 'one line' : `${lines.length} lines`}: {regions.join(', ')}.
        </li>
        {!isRemasked && (
          <li>
            <strong>Sealed</strong>{' '}
            {sealed.length === 0
              ? 'nothing.'
              : `stay the lines of ${sealed.length === 1 ? 'stage' : 'stages'} ${sealed.join(', ')}.`}
          </li>
        )}
        <li>
          <strong>In the bath</strong> {showMinutes(minutes)} as planned. Take it out at about four fifths and
          gauge.
        </li>
      </ol>
      {floors.length > 0 && (
        <table>
          <caption>To be expected after it</caption>
          <HeadRow columns={['floors of', 'depth', 'leaves']} />
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
