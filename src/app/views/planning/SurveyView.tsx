/** Survey of the sheet: what its readings show, how well each fit foretells a reading that was left out, and what following it gains. */
import { HeadRow } from '#app/views/HeadRow.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { PlanFile, SurveyShare } from '#job/formats/plan-file.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';

const MODEL_WORDS: Readonly<Record<string, string>> = {
  constant: 'one thickness',
  plane: 'a slope',
  quadratic: 'a curved sheet',
};

export function SurveyView({ survey }: { readonly survey: NonNullable<PlanFile['survey']> }) {
  const unit = useWorkbenchState(({ session }) => session.unit);
  const { readings, model, tried, doubt, before, after } = survey;
  return (
    <>
      <table>
        <caption>
          {readings.length} readings; ± {unit} by which a reading left out is missed
        </caption>
        <HeadRow columns={['taken as', 'missed by', '']} />
        <tbody>
          {tried.map((each) => (
            <tr key={each.model}>
              <th scope="row">{MODEL_WORDS[each.model] ?? each.model}</th>
              <td>{gaugedFigure(each.sigma, unit)}</td>
              <td>{each.model === model ? 'least, so it counts' : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        The thickness may be off by ±&nbsp;{gaugedFigure(doubt, unit)}&nbsp;{unit} where it was gauged.
      </p>
      {before !== undefined && after !== undefined && (
        <table>
          <caption>Share of the tolerance that the worst floor uses</caption>
          <HeadRow columns={['', `levels, ${unit}`, 'by the clock', 'gauged']} />
          <tbody>
            <ShareRow name="one thickness with a spread" share={before} unit={unit} />
            <ShareRow name="survey of the sheet" share={after} unit={unit} />
          </tbody>
        </table>
      )}
      <p className="aside">“thickness” under the sheet shows it with its readings.</p>
    </>
  );
}

interface ShareRowProps {
  readonly name: string;
  readonly share: SurveyShare;
  readonly unit: ShownUnit;
}

function ShareRow({ name, share: { levels, byClock, gauged }, unit }: ShareRowProps) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>{levels.map((level) => gaugedFigure(level, unit)).join(' ')}</td>
      <ShareCell share={byClock} />
      <ShareCell share={gauged} />
    </tr>
  );
}

function ShareCell({ share }: { readonly share: number | null }) {
  if (share === null) return <td className="over">all</td>;
  return <td className={share > 1 ? 'over' : ''}>{Math.round(share * 100)}&nbsp;%</td>;
}
