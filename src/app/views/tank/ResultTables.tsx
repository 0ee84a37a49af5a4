/** The run corrected: minutes left by stage and what will come out by region, each with half its 95 % interval. */

import { HeadRow } from '#app/views/HeadRow.tsx';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { WIDE_WORDS } from '#findings/wide-words.ts';
import { sayInLabels } from '#job/field-labels.ts';
import type { Measured, RegionForeseen, RunCorrected } from '#run/correct-rates.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';

const VERDICTS: Record<RegionForeseen['verdict'], string> = {
  met: 'in tolerance',
  'in doubt': 'in doubt',
  'out of reach': 'out of reach',
};

export function ResultTables() {
  const { record, unit } = useTank();
  const { corrected, findings = [] } = record.result ?? {};
  if (corrected === undefined)
    return <p className="aside">No reading yet: the minutes are those of the plan.</p>;
  return (
    <div className="result-tables">
      <Minutes corrected={corrected} />
      {corrected.wide !== undefined && (
        <p className="wide">
          <strong>± is wider than the figure: {WIDE_WORDS[corrected.wide]}.</strong>
        </p>
      )}
      <Regions corrected={corrected} unit={unit} />
      <div className="result-findings">
        {findings.map((finding, index) => {
          const { title, reason, remedy } = sayInLabels(finding, unit);
          return (
            <p key={`${finding.code} ${index.toString()}`} className={`finding ${finding.severity}`}>
              <SeverityShape severity={finding.severity} />
              <span>
                <strong>
                  {title}
                  {finding.place.regions === undefined ? '' : `: ${finding.place.regions.join(', ')}`}.
                </strong>{' '}
                {reason} {remedy}
              </span>
            </p>
          );
        })}
      </div>
    </div>
  );
}

function Minutes({ corrected }: { readonly corrected: RunCorrected }) {
  return (
    <table>
      <caption>Minutes left, ± half the 95 % interval</caption>
      <HeadRow columns={['stage', 'planned', 'had', 'left']} />
      <tbody>
        {corrected.stages.map(({ number, planned, had, left }) => (
          <tr key={number}>
            <th scope="row">{number}</th>
            <td>{planned.toFixed(1)}</td>
            <td>{had.toFixed(1)}</td>
            <td className="left">
              {left.value.toFixed(1)} ± {left.within.toFixed(1)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Regions({ corrected, unit }: { readonly corrected: RunCorrected; readonly unit: ShownUnit }) {
  const length = ({ value, within }: Measured) =>
    `${lengthFigure(value, unit)} ± ${lengthFigure(within, unit)}`;
  return (
    <table>
      <caption>Expected result, {unit}</caption>
      <HeadRow columns={['region', 'required depth', 'expected depth', 'leaves', 'tolerance']} />
      <tbody>
        {corrected.regions.map(({ id, asked, depth, thickness, verdict }) => (
          <tr key={id} className={verdict === 'met' ? undefined : 'doubtful'}>
            <th scope="row">{id}</th>
            <td>
              {lengthFigure(asked.depth, unit)} +{lengthFigure(asked.plus, unit)} −
              {lengthFigure(asked.minus, unit)}
            </td>
            <td>{length(depth)}</td>
            <td>{thickness === undefined ? '–' : lengthFigure(thickness.value, unit)}</td>
            <td>{VERDICTS[verdict]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
