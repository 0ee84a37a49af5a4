/** What the figures in a drawing give: depth or thickness left. It must be chosen; each choice shows what it would come to. */
import { Check } from 'lucide-react';
import { depthOffers, type Meaning, takeOffers } from '#app/state/edits/depth-offers.ts';
import { type FigureRow, figureSummary } from '#app/state/edits/figure-choice.ts';
import { bySeverity } from '#app/state/plan-standing.ts';
import { regionTargets } from '#app/state/region-targets.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { sayInLabels } from '#job/field-labels.ts';
import type { JobFile } from '#job/job-file.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';
import { useFigureRows, useFigures, useUnread } from './use-figures.ts';

const TITLES: Readonly<Record<Meaning, string>> = { thickness: 'Thickness left', depth: 'Depth' };

export function FigureStep() {
  const { job, unsaid } = useDocument() ?? {};
  const { actions } = useWorkbench();
  const offers = useFigures();
  const unread = useUnread();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { page, isStale } = useWorkbenchState((state) => state.derived);
  if (job === undefined) return null;
  if (unsaid?.includes('stock') === true) {
    return <p>Figures are read once the steps before are answered: their regions are known then.</p>;
  }
  const [stop] = bySeverity(page?.findings ?? []).stops;
  if (!isStale && page?.plan === undefined && stop !== undefined) {
    const { reason, remedy } = sayInLabels(stop, unit);
    return (
      <p>
        <strong>Regions are not known yet, so that no figure is read.</strong> {reason} {remedy}
      </p>
    );
  }
  if (offers.length > 0) return <FigureChoice job={job} />;
  return (
    <>
      <p>
        <strong>No text in a region reads like a depth or a thickness.</strong>{' '}
        <UnreadWords unread={unread} />
        Pick regions and type their depths.
      </p>
      <p className="row">
        <button
          type="button"
          className="main"
          onClick={() => actions.say('figures', 'no figures', (now) => now)}
        >
          Go on
        </button>
      </p>
    </>
  );
}

function FigureChoice({ job }: { readonly job: JobFile }) {
  const { store, actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const meaning = useWorkbenchState((state) => state.session.tried);
  const offers = useFigures();
  const rows = useFigureRows();
  const unread = useUnread();
  const disputed = new Set(offers.filter(({ isDisputed }) => isDisputed).map(({ region }) => region)).size;
  const open = rows.filter(({ said }) => said === undefined);
  const stated = rows.filter(({ said }) => said !== undefined);
  const use = (chosen: Meaning) => {
    const { page, shapes } = store.getState().derived;
    const thickness = sheetThickness(job);
    const taken = depthOffers({ page, shapes, prefix: '', thickness, meaning: chosen });
    const targets = regionTargets(store.getState());
    const clear = taken.filter((offer) => !offer.isDisputed);
    const what = open.length === 0 ? 'figures as stated' : `figures give ${TITLES[chosen].toLowerCase()}`;
    actions.say('figures', what, (before) => takeOffers(before, clear, targets));
    // What is left to be typed stands ready to be.
    if (unread.length > 0) actions.select([...new Set(unread.map(({ region }) => region))]);
  };
  return (
    <div className="figure-choice">
      <p>
        {open.length > 0 && (
          <strong>
            {counted(open.length, 'figure stands', 'figures stand')} in the regions. What do they give?{' '}
          </strong>
        )}
        <StatedWords stated={stated} isAll={open.length === 0} />
        <span className="aside">
          {disputed > 0 && `In ${counted(disputed, 'region')} figures differ: ask these by hand.`}
        </span>
        <UnreadWords unread={unread} />
      </p>
      {open.length > 0 &&
        (['thickness', 'depth'] as const).map((each) => (
          <MeaningCard
            key={each}
            meaning={each}
            rows={open}
            unit={unit}
            isChosen={meaning === each}
            onChoose={() => actions.tryFigures(each)}
          />
        ))}
      {open.length === 0 ? (
        <button type="button" className="main" onClick={() => use('thickness')}>
          Use them
        </button>
      ) : (
        <button
          type="button"
          className="main"
          disabled={meaning === undefined}
          onClick={() => meaning !== undefined && use(meaning)}
        >
          {meaning === undefined ? 'Choose one' : `Use ${TITLES[meaning].toLowerCase()}`}
        </button>
      )}
      <FigureTable rows={rows} unit={unit} />
    </div>
  );
}

/** Figures that say themselves what they give, an example, and which of them could not be made. */
function StatedWords({ stated, isAll }: { readonly stated: readonly FigureRow[]; readonly isAll: boolean }) {
  const [example] = stated;
  if (example?.said === undefined) return null;
  const stopped = stated.filter(({ said, stops }) => said !== undefined && stops[said]);
  const say = stated.length === 1 ? 'says' : 'say';
  const as = `as ${example.text} in ${example.region}, ${TITLES[example.said].toLowerCase()}`;
  return (
    <span className={isAll ? undefined : 'aside'}>
      {isAll ? `${counted(stated.length, 'figure')} in the regions ${say} themselves what they give, ` : ''}
      {isAll ? as : `${stated.length} more ${say} it, ${as}`}
      {'. '}
      {stopped.length > 0 && (
        <>
          <SeverityShape severity="stop" /> Too thin: {stopped.map(({ region }) => region).join(', ')}.{' '}
        </>
      )}
    </span>
  );
}

/** Texts with figures that are not understood, and where: a taper, say. They are left to be typed. */
function UnreadWords({ unread }: { readonly unread: ReturnType<typeof useUnread> }) {
  if (unread.length === 0) return null;
  const named = unread.slice(0, MOST_NAMED).map(({ region, text }) => `“${text}” in ${region}`);
  return (
    <span className="unread">
      <SeverityShape severity="warn" /> Not read, so not required: {named.join(', ')}
      {unread.length > MOST_NAMED && ` and ${unread.length - MOST_NAMED} more`}.{' '}
    </span>
  );
}

interface MeaningCardProps {
  readonly meaning: Meaning;
  readonly rows: readonly FigureRow[];
  readonly unit: ShownUnit;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

function MeaningCard({ meaning, rows, unit, isChosen, onChoose }: MeaningCardProps) {
  const { least, most, stopped, count } = figureSummary(rows, meaning);
  const range = `${lengthFigure(least, unit)} to ${showLength(most, unit)}`;
  return (
    <label className={isChosen ? 'meaning chosen' : 'meaning'}>
      <input type="radio" name="meaning" checked={isChosen} onChange={onChoose} />
      <span>
        <strong>{TITLES[meaning]}</strong>
        <span className="aside">{meaning === 'thickness' ? `depths ${range}` : `leaves ${range}`}</span>
        {stopped.length === 0 ? (
          <span className="good">
            <Check size={14} aria-hidden="true" /> all {count} can be made
          </span>
        ) : (
          <span>
            <SeverityShape severity="stop" /> {counted(stopped.length, 'stop')}:{' '}
            {stopped.slice(0, MOST_NAMED).join(', ')}
            {stopped.length > MOST_NAMED && ' …'} too thin
          </span>
        )}
      </span>
    </label>
  );
}

const MOST_NAMED = 3;

function FigureTable({ rows, unit }: { readonly rows: readonly FigureRow[]; readonly unit: ShownUnit }) {
  return (
    <details className="figure-table">
      <summary>Figure by figure</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Region</th>
            <th scope="col">As written</th>
            <th scope="col">Depth, if it is what is left</th>
            <th scope="col">Left, if it is a depth</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ region, text, other, said, stops }) => (
            <tr key={`${region} ${text}`}>
              <th scope="row">{region}</th>
              <td>{text}</td>
              {(['thickness', 'depth'] as const).map((each) => (
                <td key={each} className={stops[each] && (said ?? each) === each ? 'over' : undefined}>
                  {(said ?? each) === each ? lengthFigure(other, unit) : '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
