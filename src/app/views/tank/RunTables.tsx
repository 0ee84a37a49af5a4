/** The run corrected: minutes left by stage and what will come out by region, each with half its 95 % interval. */
import { HeadRow } from '#app/views/HeadRow.tsx';
import type { Measured, RunCorrected } from '#run/correct-rates.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';

interface RunTablesProps {
  readonly corrected: RunCorrected;
  readonly unit: ShownUnit;
}

export function RunTables({ corrected, unit }: RunTablesProps) {
  const length = ({ value, within }: Measured) =>
    `${lengthFigure(value, unit)} ± ${lengthFigure(within, unit)}`;
  return (
    <>
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
      <table>
        <caption>What will come out, {unit}</caption>
        <HeadRow columns={['region', 'asked', 'foreseen', 'tolerance']} />
        <tbody>
          {corrected.regions.map(({ id, asked, depth, verdict }) => (
            <tr key={id} className={verdict === 'met' ? undefined : 'doubtful'}>
              <th scope="row">{id}</th>
              <td>{lengthFigure(asked.depth, unit)}</td>
              <td>{length(depth)}</td>
              <td>{verdict}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
