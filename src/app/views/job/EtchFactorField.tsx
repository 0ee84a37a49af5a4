/** The etch factor in either convention. Where the job leaves it to bath or coupons, the plan's own is shown. */
import { useState } from 'react';
import {
  type FactorWay,
  factorWay,
  setEtchFactor,
  turnEtchFactor,
  turnedOver,
} from '#app/state/edits/edit-factor.ts';
import { NumberField } from '#app/views/NumberField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { FACTOR_UNITS } from '#bath/figures-file.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { usePlannedProcess } from './use-planned-process.ts';

const FIELDS = JOB.members.process.members;
const [UNDERCUT_OVER_DEPTH, DEPTH_OVER_UNDERCUT] = FACTOR_UNITS;
const WAYS: Readonly<Record<FactorWay, string>> = {
  etchFactor: UNDERCUT_OVER_DEPTH,
  depthPerUndercut: DEPTH_OVER_UNDERCUT,
};

export function EtchFactorField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const [wayAtHand, setWayAtHand] = useState<FactorWay>('etchFactor');
  const process = usePlannedProcess();
  const [row, ...others] = process?.etchFactor ?? [];
  const planned = others.length === 0 ? row?.[1] : undefined;
  const stated = factorWay(job);
  const way = stated ?? wayAtHand;
  const given = stated === undefined ? undefined : job.process[stated];
  const usual = stated === undefined ? plannedIn(way, planned) : undefined;
  const takeWay = (next: FactorWay) => {
    setWayAtHand(next);
    if (stated !== undefined) actions.edit(`etch factor as ${WAYS[next]}`, turnEtchFactor);
  };
  return (
    <span className="factor-field">
      <NumberField
        of={FIELDS[way]}
        label={FIELDS.etchFactor.label}
        value={typeof given === 'number' ? given : undefined}
        usual={usual ?? (process === undefined ? 'none' : 'by depth')}
        hasUnitBeside
        source={process?.sourceOf('process.etchFactor')}
        onTake={(value) =>
          actions.edit(`etch factor ${value}, ${WAYS[way]}`, (before) => setEtchFactor(before, value, way))
        }
        onClear={() =>
          actions.edit('etch factor of the bath', (before) => setEtchFactor(before, undefined, way))
        }
      />
      <select
        aria-label="Etch factor is"
        value={way}
        onChange={({ target }) => takeWay(target.value as FactorWay)}
      >
        {Object.entries(WAYS).map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
    </span>
  );
}

/** The plan gives undercut over depth. */
function plannedIn(way: FactorWay, planned: number | undefined): number | undefined {
  return planned === undefined || way === 'etchFactor' ? planned : turnedOver(planned);
}
