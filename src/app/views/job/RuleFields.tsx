/** What can be made: the least that the shop's maskant, knife and metal allow. */
import { fromJobUnits, setRule } from '#app/state/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { useBench, useWorkbench } from '#app/views/workbench-context.ts';
import type { MakingRules } from '#job/job.ts';
import { showLength } from '#units/show-length.ts';
import type { JobPart } from './JobPanel.tsx';

const RULES: Readonly<Record<keyof MakingRules, string>> = {
  minWeb: 'Thinnest metal left',
  minLineSpacing: 'Scribe lines apart',
  minPieceWidth: 'Narrowest piece to peel',
  minLandWidth: 'Narrowest land',
};

export function RuleFields({ job, filled }: JobPart) {
  const { actions } = useWorkbench();
  const unit = useBench((state) => state.session.unit);
  const lengthOf = (length: number | undefined) =>
    length === undefined ? undefined : fromJobUnits(job, length);
  return (
    <fieldset>
      <legend>Rules for making, at least</legend>
      {(Object.entries(RULES) as [keyof MakingRules, string][]).map(([rule, label]) => (
        <LengthField
          key={rule}
          label={label}
          length={lengthOf(job.rules?.[rule])}
          usual={lengthOf(filled.rules?.[rule])}
          least={0}
          most={1000}
          onTake={(length) =>
            actions.edit(`${label.toLowerCase()} ${showLength(length, unit)}`, (before) =>
              setRule(before, rule, length),
            )
          }
          onClear={() =>
            actions.edit(`${label.toLowerCase()} as usual`, (before) => setRule(before, rule, undefined))
          }
        />
      ))}
    </fieldset>
  );
}
