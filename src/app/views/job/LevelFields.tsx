/** Which depths are etched to: as drawn, the fewest that hold every tolerance, or a list; and the ones that a search must take. */

import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import { listLevels, lockedLevelsOf, lockLevels, setLevelRule } from '#app/state/edits/edit-levels.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './job-part.ts';
import { LengthList } from './LengthList.tsx';

/** A level as thin as this is none, and so much metal stays below the deepest, mm. */
const LEAST_LEVEL = 0.01;

export function LevelFields({ job, filled }: JobPart) {
  const { actions } = useWorkbench();
  const stages = useWorkbenchState((state) => state.derived.page?.plan?.stages) ?? [];
  const limits = { least: LEAST_LEVEL, most: sheetThickness(job) - LEAST_LEVEL };
  const { levels = 'as-drawn' } = filled;
  const takeRule = (rule: string) => {
    if (rule === 'list') {
      const planned = stages.map(({ level }) => level);
      actions.edit('levels as listed', (before) => listLevels(before, planned));
    } else if (rule === 'fewest' || rule === 'as-drawn') {
      actions.edit(`levels ${rule === 'fewest' ? 'the fewest' : 'as drawn'}`, (before) =>
        setLevelRule(before, rule),
      );
    }
  };
  return (
    <fieldset>
      <legend>Levels</legend>
      <ChoiceField label="Levels" value={typeof levels === 'string' ? levels : 'list'} onTake={takeRule}>
        <option value="as-drawn">every depth required</option>
        <option value="fewest">the fewest within tolerance</option>
        <option value="list" disabled={typeof levels === 'string' && stages.length === 0}>
          as listed
        </option>
      </ChoiceField>
      {levels === 'fewest' && (
        <LengthList
          label="Locked level"
          lengths={lockedLevelsOf(job)}
          {...limits}
          onTake={(locked, what) => actions.edit(what, (before) => lockLevels(before, locked))}
        />
      )}
      {typeof levels !== 'string' && (
        <LengthList
          label="Level"
          lengths={levels.map((level) => fromJobUnits(job, level))}
          {...limits}
          onTake={(list, what) => actions.edit(what, (before) => listLevels(before, list))}
        />
      )}
    </fieldset>
  );
}
