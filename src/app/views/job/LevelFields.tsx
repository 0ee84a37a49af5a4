/** Which depths are etched to: as drawn, the fewest that hold every tolerance, or a list; and the ones that a search must take. */

import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import { listLevels, lockedLevelsOf, lockLevels, setLevelRule } from '#app/state/edits/edit-levels.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB, LEAST_LEVEL } from '#job/job-file.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './job-part.ts';
import { LengthList } from './LengthList.tsx';
import { wordsOf } from './words-of.ts';

const FIELDS = { levels: JOB.members.levels, locked: JOB.members.lockedLevels };

export function LevelFields({ job, filled }: JobPart) {
  const { actions } = useWorkbench();
  const stages = useWorkbenchState((state) => state.derived.page?.plan?.stages) ?? [];
  // So much metal stays below the deepest.
  const within = { most: sheetThickness(job) - LEAST_LEVEL };
  const { levels = 'as-drawn' } = filled;
  const canList = typeof levels !== 'string' || stages.length > 0;
  const words = wordsOf(FIELDS.levels);
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
      <ChoiceField
        label={FIELDS.levels.label}
        value={typeof levels === 'string' ? levels : 'list'}
        onTake={takeRule}
      >
        {Object.entries(words).map(([rule, said]) => (
          <option key={rule} value={rule} disabled={rule === 'list' && !canList}>
            {said}
          </option>
        ))}
      </ChoiceField>
      {levels === 'fewest' && (
        <LengthList
          of={FIELDS.locked.parts.level}
          lengths={lockedLevelsOf(job)}
          within={within}
          onTake={(locked, what) => actions.edit(what, (before) => lockLevels(before, locked))}
        />
      )}
      {typeof levels !== 'string' && (
        <LengthList
          of={FIELDS.levels.parts.level}
          lengths={levels.map((level) => fromJobUnits(job, level))}
          within={within}
          onTake={(list, what) => actions.edit(what, (before) => listLevels(before, list))}
        />
      )}
    </fieldset>
  );
}
