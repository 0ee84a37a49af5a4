/** What went wrong, and what it comes to: floors that came out thick or thin, a leak in the maskant, a scratch. Nothing is called acceptable. */
import { useMemo, useState } from 'react';
import { lastRecorded, readingsText } from '#app/state/tank/run-readings.ts';
import { stagesOver } from '#app/state/tank/stages-over.ts';
import { edgeName } from '#app/views/edge-figures.ts';
import { HeadRow } from '#app/views/HeadRow.tsx';
import { sayInLabels } from '#job/field-labels.ts';
import type { CoverLap } from '#run/rework/cover-laps.ts';
import { leakOf, scratchHalfWidth } from '#run/rework/maskant-damage.ts';
import type { ReworkEdge } from '#run/rework/rework-edges.ts';
import { readReworkPlan } from '#run/rework/rework-plan.ts';
import { type ExtraDip, type ReworkedFloor, reworkRun } from '#run/rework/rework-run.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { lengthFigure, showLength, showMinutes, signedFigure } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';
import { figureOf, listWords } from './tank-words.ts';

export function ReworkPanel() {
  const { record, planText, unit, clock, plan } = useTank();
  const { run } = record;
  const over = useMemo(
    () => stagesOver({ clock, corrected: record.result?.corrected, lastRecorded: lastRecorded(run) }),
    [clock, record.result, run],
  );
  const { rework, findings } = useMemo(
    () => reworkRun(planText, readingsText(run), over),
    [run, planText, over],
  );
  const last = plan.stages.length;
  const isNone = plan.masking === 're-mask' ? over < 1 : over < last;
  const read = rework?.floors ?? [];
  const unread = findings.filter(({ code }) => code === 'floor-not-read');
  const lost = findings.filter(({ code }) => code === 'floor-too-thin' || code === 'floor-not-served');
  return (
    <div className="rework-panel">
      <h2>Floors that came out thick or thin</h2>
      {read.length === 0 ? (
        <p className="aside">
          {isNone && `Nothing to rework yet: stage ${plan.masking === 're-mask' ? 1 : last} is not over. `}
          After the last stage, gauge the thickness of every floor with the maskant still on: the extra dips
          that bring thick floors into tolerance follow.
        </p>
      ) : (
        <div role="status">
          <Dips dips={rework?.dips ?? []} isWhole={unread.length === 0} />
          <Laps laps={rework?.laps ?? []} />
          <Floors floors={read} />
          <Edges edges={rework?.edges ?? []} />
          {lost.map((finding) => {
            const { title, reason, remedy } = sayInLabels(finding, unit);
            return (
              <p key={finding.place.regions?.join()} className="finding stop">
                <strong>
                  {title}: {finding.place.regions?.join(', ')}.
                </strong>{' '}
                {reason} {remedy}
              </p>
            );
          })}
          {unread.length > 0 && (
            <p className="aside">
              Not read yet: {listWords(unread.flatMap(({ place }) => place.regions?.join(' over ') ?? []))}.
            </p>
          )}
        </div>
      )}
      <Damage />
    </div>
  );
}

function Dips({ dips, isWhole }: { readonly dips: readonly ExtraDip[]; readonly isWhole: boolean }) {
  const { unit } = useTank();
  if (dips.length === 0)
    return <p>{isWhole ? 'No floor needs an extra dip.' : 'No floor read so far needs an extra dip.'}</p>;
  return (
    <ol className="dips">
      {dips.map(({ etch, minutes, cover, open }, index) => (
        <li key={open.join()}>
          <strong>
            Extra dip {index + 1}: {showMinutes(minutes)}, {showLength(etch, unit)}.
          </strong>{' '}
          {cover.length > 0 && `Cover ${listWords(cover)} first. `}It etches {listWords(open)}.
        </li>
      ))}
    </ol>
  );
}

function Laps({ laps }: { readonly laps: readonly CoverLap[] }) {
  const { unit } = useTank();
  return laps.map(({ cover, onto, height, undercut }) => (
    <p key={`${cover} ${onto}`} className="aside">
      Cover {cover} to its edge: what laps onto {onto} by more than {showLength(undercut, unit)} leaves a rib{' '}
      {showLength(height, unit)} high there.
    </p>
  ));
}

function Floors({ floors }: { readonly floors: readonly ReworkedFloor[] }) {
  const { unit } = useTank();
  return (
    <table>
      <caption>Thickness, {unit}</caption>
      <HeadRow columns={['region', 'required', 'read', 'extra etch', 'leaves']} />
      <tbody>
        {floors.map(({ id, over, thickness, plus, minus, read, extra, extraBehind, after }) => (
          <tr key={`${id} ${over}`} className={extra === undefined ? 'doubtful' : undefined}>
            <th scope="row">{over === undefined ? id : `${id} over ${over}`}</th>
            <td>
              {lengthFigure(thickness, unit)} +{lengthFigure(minus, unit)} −{lengthFigure(plus, unit)}
            </td>
            <td>{lengthFigure(read, unit)}</td>
            <td>
              {extra === undefined ? 'too thin' : lengthFigure(extra, unit)}
              {extra === undefined || over === undefined ? '' : ` and ${lengthFigure(extraBehind, unit)}`}
            </td>
            <td>{lengthFigure(after, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Where the dips leave drawn edges, those of one step and place together. */
function Edges({ edges }: { readonly edges: readonly ReworkEdge[] }) {
  const { unit } = useTank();
  if (edges.length === 0) return null;
  return (
    <table>
      <caption>Edges off their lines after it, {unit}; plus is outwards</caption>
      <HeadRow columns={['edges of', 'level | beside', 'come out']} />
      <tbody>
        {edges.map((edge) => (
          <tr key={`${edge.level} ${edge.beside} ${edge.regions.join()}`}>
            <th scope="row">{listWords(edge.regions, 4)}</th>
            <td>{edgeName(edge, unit)}</td>
            <td>{signedFigure(edge.off, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A crater on land where the maskant leaked, and a scratch from before the run (M8.6). */
function Damage() {
  const { planText, unit, record, plan } = useTank();
  const [crater, setCrater] = useState('');
  const [scratch, setScratch] = useState('');
  const read = useMemo(() => readReworkPlan(planText), [planText]);
  if ('refused' in read) return null;
  const mm = (text: string) => {
    const value = figureOf(text);
    return value === undefined || value === 0 ? undefined : value * millimetresIn(unit);
  };
  const [width, deep] = [mm(crater), mm(scratch)];
  const left = record.result?.corrected?.stages.map((stage) => stage.left.value);
  const minutesLeft = (left ?? plan.stages.map(({ minutes }) => minutes)).reduce(
    (sum, each) => sum + each,
    0,
  );
  const leak = width === undefined ? undefined : leakOf(read.process, { radius: width / 2, minutesLeft });
  return (
    <>
      <h2>Leak in the maskant</h2>
      <div className="tank-fields">
        <label>
          Crater on land, across, {unit}
          <input inputMode="decimal" value={crater} onChange={({ target }) => setCrater(target.value)} />
        </label>
      </div>
      {leak !== undefined && (
        <p role="status">
          Open for <strong>{showMinutes(leak.since)}</strong> of etching and{' '}
          <strong>{showLength(leak.depth, unit)}</strong> deep. Left as it is, it will be{' '}
          {showLength(leak.depthThen, unit)} deep and {showLength(2 * leak.radiusThen, unit)} across after the{' '}
          {showMinutes(minutesLeft)} still to come: touch it up before the next dip.
        </p>
      )}
      <h2>Scratch from before the run</h2>
      <div className="tank-fields">
        <label>
          Depth of the scratch, {unit}
          <input inputMode="decimal" value={scratch} onChange={({ target }) => setScratch(target.value)} />
        </label>
      </div>
      {deep !== undefined && (
        <table>
          <caption>It stays {showLength(deep, unit)} deeper than its floor, and widens to</caption>
          <HeadRow columns={['in floors of', `across, ${unit}`]} />
          <tbody>
            {read.lines.levels
              .filter((depth) => depth > deep)
              .map((depth) => (
                <tr key={depth}>
                  <th scope="row">{showLength(depth, unit)}</th>
                  <td>{lengthFigure(2 * scratchHalfWidth(read.process, { scratch: deep, depth }), unit)}</td>
                </tr>
              ))}
          </tbody>
        </table>
      )}
    </>
  );
}
