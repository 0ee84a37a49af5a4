/** What a stage fewer or more would cost in tolerance, region by region; any of them can be taken. */

import { listLevels } from '#app/state/edits/edit-levels.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { LevelChoice } from '#job/formats/plan-file.ts';
import { AT_TOLERANCE, SAME_LEVEL } from '#units/depth-tolerances.ts';
import { lengthFigure } from '#units/show-length.ts';

/** Regions listed, the worst off first. */
const MOST_REGIONS = 12;

export function LevelChoicesView() {
  const unit = useWorkbenchState(({ session }) => session.unit);
  const page = useWorkbenchState(({ derived }) => derived.page);
  const choices = page?.results?.levelChoices ?? [];
  if (choices.length === 0) return <p className="aside">No choice of levels to show.</p>;
  const now = page?.plan?.stages.map(({ level }) => level) ?? [];
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">stages</th>
            <th scope="col">levels, {unit}</th>
            <th scope="col">of tolerance</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {choices.map((choice) => (
            <tr key={choice.stages}>
              <th scope="row">{choice.stages}</th>
              <td>{choice.levels.map((level) => lengthFigure(level, unit)).join(' ')}</td>
              <td className={isOver(choice.worstShare) ? 'over' : ''}>{shareWords(choice.worstShare)}</td>
              <td>
                <ChoiceTaker choice={choice} isTaken={areSame(choice.levels, now)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <RegionShares choices={choices} />
    </>
  );
}

interface ChoiceTakerProps {
  readonly choice: LevelChoice;
  readonly isTaken: boolean;
}

/** Levels that leave a region without one are shown for what they cost, and can't be taken. */
function ChoiceTaker({ choice, isTaken }: ChoiceTakerProps) {
  const { actions } = useWorkbench();
  const { stages, levels, worstShare } = choice;
  if (isTaken) return 'as planned';
  if (isOver(worstShare)) return 'out of tolerance';
  return (
    <button
      type="button"
      onClick={() => actions.edit(counted(stages, 'stage'), (job) => listLevels(job, levels))}
    >
      take<span className="unseen"> {counted(stages, 'stage')}</span>
    </button>
  );
}

/** Shares of the worst regions, a column a choice. */
function RegionShares({ choices }: { readonly choices: readonly LevelChoice[] }) {
  const { actions } = useWorkbench();
  const shares = choices.map(({ regions }) => new Map(regions.map(({ id, share }) => [id, share])));
  const worst = (id: string) => Math.max(...shares.map((each) => each.get(id) ?? 0));
  const ids = [...(shares[0]?.keys() ?? [])].sort((a, b) => worst(b) - worst(a));
  return (
    <table>
      <caption>Share of its tolerance that a region would use</caption>
      <thead>
        <tr>
          <th scope="col">region</th>
          {choices.map(({ stages }) => (
            <th key={stages} scope="col">
              {counted(stages, 'stage')}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {ids.slice(0, MOST_REGIONS).map((id) => (
          <tr key={id}>
            <th scope="row">
              <button type="button" className="go" onClick={() => actions.select([id])}>
                {id}
              </button>
            </th>
            {choices.map(({ stages }, i) => {
              const share = shares[i]?.get(id) ?? 0;
              return (
                <td key={stages} className={isOver(share) ? 'over' : ''}>
                  {shareWords(share)}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
      {ids.length > MOST_REGIONS && (
        <tfoot>
          <tr>
            <td colSpan={choices.length + 1}>and {ids.length - MOST_REGIONS} more, no worse</td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

function isOver(share: number): boolean {
  return share > 1 + AT_TOLERANCE;
}

function shareWords(share: number): string {
  return share > 100 ? 'out of all' : `${Math.round(share * 100)}\u00a0%`;
}

function areSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((level, i) => Math.abs(level - (b[i] ?? 0)) < SAME_LEVEL);
}
