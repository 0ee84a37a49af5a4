/** The sheet as delivered: alloy, density, tolerance, and both ends of one that tapers. */
import {
  fromJobUnits,
  setAlloy,
  setDensity,
  setSheetTolerance,
  setTaperEnd,
} from '#app/state/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useBench, useWorkbench } from '#app/views/workbench-context.ts';
import { readFigure } from '#units/read-figure.ts';
import { showLength } from '#units/show-length.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './JobPanel.tsx';
import { figuresOf } from './known-figures.ts';
import { SheetReadings } from './SheetReadings.tsx';

const SIDES = [
  { side: 'minus', label: 'Thinner by' },
  { side: 'plus', label: 'Thicker by' },
] as const;

export function SheetFields({ job, filled }: JobPart) {
  const { actions } = useWorkbench();
  const unit = useBench((state) => state.session.unit);
  const { alloys } = figuresOf(job);
  const { alloy, density, thickness } = job.stock;
  const usualDensity = filled.stock.density;
  return (
    <fieldset>
      <legend>Sheet</legend>
      <ChoiceField
        label="Alloy"
        value={alloy ?? ''}
        onTake={(id) =>
          actions.edit(id === '' ? 'no alloy' : `alloy ${id}`, (before) => setAlloy(before, id || undefined))
        }
      >
        <option value="">not said</option>
        {alloy !== undefined && !alloys.some(({ id }) => id === alloy) && (
          <option value={alloy}>{alloy}, not known here</option>
        )}
        {alloys.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </ChoiceField>
      <QuantityField
        label="Density"
        text={density === undefined ? '' : String(density)}
        placeholder={usualDensity === undefined ? 'none' : String(usualDensity)}
        suffix="g/cm³"
        read={(text) => inside(readFigure(text), { least: 0.1, most: 30 })}
        expected="A density from 0.1 to 30 g/cm³."
        onTake={(value) => actions.edit(`density ${value}`, (before) => setDensity(before, value))}
        onClear={() => actions.edit('density of the alloy', (before) => setDensity(before, undefined))}
      />
      {typeof thickness === 'object' &&
        (['thicknessFrom', 'thicknessTo'] as const).map((end) => (
          <LengthField
            key={end}
            label={end === 'thicknessFrom' ? 'Thickness at the start' : 'Thickness at the end'}
            length={fromJobUnits(job, thickness[end])}
            least={0.1}
            onTake={(length) =>
              actions.edit(`sheet ${showLength(length, unit)}`, (before) => setTaperEnd(before, end, length))
            }
          />
        ))}
      {SIDES.map(({ side, label }) => (
        <LengthField
          key={side}
          label={label}
          length={inMillimetres(job, job.stock[side])}
          usual={inMillimetres(job, filled.stock[side])}
          least={0}
          most={10}
          onTake={(length) =>
            actions.edit(`sheet ${label.toLowerCase()} ${showLength(length, unit)}`, (before) =>
              setSheetTolerance(before, side, length),
            )
          }
          onClear={() =>
            actions.edit(`sheet ${label.toLowerCase()} the usual`, (before) =>
              setSheetTolerance(before, side, undefined),
            )
          }
        />
      ))}
      <SheetReadings job={job} />
    </fieldset>
  );
}

function inMillimetres(job: JobPart['job'], length: number | undefined): number | undefined {
  return length === undefined ? undefined : fromJobUnits(job, length);
}

function inside(
  value: number | undefined,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined {
  return value !== undefined && value >= least && value <= most ? value : undefined;
}
