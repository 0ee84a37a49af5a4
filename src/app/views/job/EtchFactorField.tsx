/** The etch factor in either convention. Where the job leaves it to bath or coupons, the plan's own is shown. */
import { useState } from 'react';
import {
  type FactorWay,
  factorWay,
  setEtchFactor,
  turnEtchFactor,
  turnedOver,
} from '#app/state/edits/edit-factor.ts';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { readFigure } from '#units/read-figure.ts';
import { usePlannedProcess } from './use-planned-process.ts';

const WAYS: Readonly<Record<FactorWay, string>> = {
  etchFactor: 'undercut / depth',
  depthPerUndercut: 'depth / undercut',
};

export function EtchFactorField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const [wayAtHand, setWayAtHand] = useState<FactorWay>('etchFactor');
  const [row, ...others] = usePlannedProcess()?.etchFactor ?? [];
  const planned = others.length === 0 ? row?.[1] : undefined;
  const stated = factorWay(job);
  const way = stated ?? wayAtHand;
  const given = stated === undefined ? plannedIn(way, planned) : job.process[stated];
  const takeWay = (next: FactorWay) => {
    setWayAtHand(next);
    if (stated !== undefined) actions.edit(`etch factor as ${WAYS[next]}`, turnEtchFactor);
  };
  return (
    <span className="factor-field">
      <QuantityField
        label="Etch factor"
        text={typeof given === 'number' ? String(given) : ''}
        placeholder={given === undefined ? 'none' : 'by depth'}
        suffix=""
        read={readFactor}
        expected={
          way === 'etchFactor'
            ? 'Undercut divided by depth of cut, above 0: 1.0 or 1,0.'
            : 'Depth of cut divided by undercut, above 0: 1.0 or 1,0.'
        }
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

function readFactor(text: string): number | undefined {
  const factor = readFigure(text);
  return factor !== undefined && factor > 0 ? factor : undefined;
}
