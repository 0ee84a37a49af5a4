/** Lines are cut, and a coupon gives a better etch factor: where each edge will come out, which tolerances go, which depths help. */

import { useMemo, useState } from 'react';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { type EdgeForecast, forecastAtFactor, type TimedForecast } from '#run/rework/edges-at-factor.ts';
import { type ReworkPlan, readReworkPlan } from '#run/rework/rework-plan.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { lengthFigure, showLength, signedFigure } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';
import { figureOf, listWords } from './tank-words.ts';

const EMPTY = { before: '', after: '', depth: '', factor: '' };
type Typed = typeof EMPTY;

export function FactorPanel() {
  const { planText, unit } = useTank();
  const [typed, setTyped] = useState<Typed>(EMPTY);
  const plan = useMemo(() => readReworkPlan(planText), [planText]);
  const factor = factorOf(typed);
  const forecast = useMemo(
    () => (factor === undefined || 'refused' in plan ? undefined : forecastAtFactor(plan, factor)),
    [plan, factor],
  );
  const field = (key: keyof Typed, words: string) => (
    <label>
      {words}
      <input
        inputMode="decimal"
        autoComplete="off"
        value={typed[key]}
        onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
      />
    </label>
  );
  return (
    <div className="factor-panel">
      <p className="aside">
        The lines are cut for the planned etch factor. Give the opening of a coupon etched beside the part, or
        its factor.
      </p>
      <div className="tank-fields">
        {field('before', `Opening before, ${unit}`)}
        {field('after', `Opening after, ${unit}`)}
        {field('depth', `Etched depth, ${unit}`)}
        {field('factor', 'or etch factor')}
      </div>
      {factor !== undefined && forecast !== undefined && !('refused' in plan) && (
        <Forecast factor={factor} forecast={forecast} plan={plan} />
      )}
    </div>
  );
}

/** Undercut a side over depth (M2.2). */
function factorOf({ before, after, depth, factor }: Typed): number | undefined {
  const given = figureOf(factor);
  if (given !== undefined) return given > 0 ? given : undefined;
  const [from, to, deep] = [figureOf(before), figureOf(after), figureOf(depth)];
  if (from === undefined || to === undefined || deep === undefined || deep <= 0 || to <= from)
    return undefined;
  return (to - from) / 2 / deep;
}

interface ForecastProps {
  readonly factor: number;
  readonly forecast: TimedForecast;
  readonly plan: ReworkPlan;
}

function Forecast({ factor, forecast, plan }: ForecastProps) {
  const { edges, levels } = forecast;
  const { unit } = useTank();
  const planned = plan.lines.levels;
  const isMoved = levels.some((level, index) => Math.abs(level - (planned[index] ?? 0)) > SAME_LEVEL);
  const gone = edges.filter((edge) => isPassed(edge, edge.off)).length;
  const saved = edges.filter((edge) => isPassed(edge, edge.off) && !isPassed(edge, edge.best)).length;
  return (
    <div role="status">
      <p>
        <strong>At an etch factor of {factor.toFixed(3)} </strong>
        {gone === 0 ? noneGone(edges) : `${gone} of ${edges.length} kinds of edge pass their tolerance`}
        {gone > 0 &&
          (isMoved ? `; the depths below save ${saved}.` : '; no other depths within tolerance help.')}
      </p>
      <table>
        <caption>Edges off their lines, {unit}; plus is outwards</caption>
        <HeadRow
          columns={[
            'edges of',
            'depth',
            'beside',
            'come out',
            'allowed',
            ...(isMoved ? ['with other depths'] : []),
          ]}
        />
        <tbody>
          {edges.map((edge) => (
            <EdgeRow
              key={`${edge.level} ${edge.beside} ${edge.regions.join()}`}
              edge={edge}
              isMoved={isMoved}
            />
          ))}
        </tbody>
      </table>
      {isMoved && <OtherDepths forecast={forecast} planned={planned} />}
      {gone > saved && (
        <p>
          A new coat with lines placed for this factor puts every edge back on its line, where the maskant can
          be renewed before the first dip.
        </p>
      )}
    </div>
  );
}

/** A tolerance that nobody stated is not held either. */
function noneGone(edges: readonly EdgeForecast[]): string {
  const unstated = edges.filter(({ allowed }) => allowed === undefined).length;
  if (unstated === 0) return 'no edge passes its tolerance.';
  return unstated === edges.length
    ? 'edges come out as listed; no edge tolerance is stated.'
    : `no edge passes its tolerance; for ${unstated} of ${edges.length} kinds of edge none is stated.`;
}

function EdgeRow({ edge, isMoved }: { readonly edge: EdgeForecast; readonly isMoved: boolean }) {
  const { unit } = useTank();
  const { regions, level, beside, off, best, allowed } = edge;
  return (
    <tr className={isPassed(edge, off) ? 'doubtful' : undefined}>
      <th scope="row">{listWords(regions, 4)}</th>
      <td>{lengthFigure(level, unit)}</td>
      <td>{beside === 0 ? 'land' : lengthFigure(beside, unit)}</td>
      <td>
        {signedFigure(off, unit)}
        {isPassed(edge, off) && ' passed'}
      </td>
      <td>
        {allowed === undefined
          ? 'not stated'
          : `+${lengthFigure(allowed.plus, unit)} −${lengthFigure(allowed.minus, unit)}`}
      </td>
      {isMoved && <td>{signedFigure(best, unit)}</td>}
    </tr>
  );
}

interface OtherDepthsProps {
  readonly forecast: TimedForecast;
  readonly planned: readonly number[];
}

/** Depths within the floors' tolerances that hold the edges best, as minutes where stages are peeled one after the other. */
function OtherDepths({ forecast: { levels, minutes, roomTaken }, planned }: OtherDepthsProps) {
  const { unit, plan } = useTank();
  const isOneCoat = plan.masking === 'peel-next';
  return (
    <>
      <table>
        <caption>Depths within tolerance that hold the edges best</caption>
        <HeadRow
          columns={['planned', 'instead', ...(isOneCoat ? ['minutes planned', 'minutes instead'] : [])]}
        />
        <tbody>
          {levels.map((level, index) => (
            <tr key={planned[index]}>
              <th scope="row">{showLength(planned[index] ?? 0, unit)}</th>
              <td>{showLength(level, unit)}</td>
              {isOneCoat && (
                <>
                  <td>{minutes[index]?.planned.toFixed(1)}</td>
                  <td>{minutes[index]?.instead.toFixed(1)}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="aside">
        They take {Math.round(roomTaken * 100)} % of the room that the floors’ tolerances leave; what the run
        itself is off comes on top.
      </p>
    </>
  );
}

function isPassed({ allowed }: EdgeForecast, off: number): boolean {
  return allowed !== undefined && (off > allowed.plus + SAME_LEVEL || -off > allowed.minus + SAME_LEVEL);
}
