/** The bath and how far its figures may be off; what a drawn line stands for, and how the run is masked. */
import { setBath, setEdgeDatum, setMasking, setRateSpread } from '#app/state/edit-figures.ts';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { EdgeDatum, Masking } from '#job/job.ts';
import { DEFAULT_EDGE_DATUM, DEFAULT_MASKING } from '#job/job-defaults.ts';
import { readFigure } from '#units/read-figure.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './JobPanel.tsx';
import { figuresOf } from './known-figures.ts';
import { TemperatureFields } from './TemperatureFields.tsx';

const DATUMS: Readonly<Record<EdgeDatum, string>> = {
  'shallow-edge': 'edge on the shallower floor',
  'mid-wall': 'middle of the wall',
  'deep-foot': 'foot of the wall, deeper floor',
};

const MASKINGS: Readonly<Record<Masking, string>> = {
  'peel-next': 'one coat, peeled deepest first',
  're-mask': 'a coat a stage, shallowest first',
};

export function BathFields({ job, filled }: JobPart) {
  const { actions } = useWorkbench();
  const { alloys, baths } = figuresOf(job);
  const { bath, rateSpread, edgeDatum, masking } = job.process;
  const metal = alloys.find(({ id }) => id === job.stock.alloy)?.metal;
  const fitting = baths.filter(({ etches }) => etches === metal);
  const others = baths.filter((each) => !fitting.includes(each));
  const option = ({ id, name }: (typeof baths)[number]) => (
    <option key={id} value={id}>
      {name}
    </option>
  );
  const percent = (value: number | undefined) =>
    value === undefined ? '' : String(Number((value * 100).toFixed(4)));
  return (
    <fieldset>
      <legend>Bath</legend>
      <ChoiceField
        label="Bath"
        value={bath ?? ''}
        onTake={(id) =>
          actions.edit(id === '' ? 'no bath' : `bath ${id}`, (before) => setBath(before, id || undefined))
        }
      >
        <option value="">not said</option>
        {bath !== undefined && !baths.some(({ id }) => id === bath) && (
          <option value={bath}>{bath}, not known here</option>
        )}
        {fitting.length > 0 && <optgroup label={`etches ${metal}`}>{fitting.map(option)}</optgroup>}
        <optgroup label={fitting.length > 0 ? 'for other metals' : 'all'}>{others.map(option)}</optgroup>
      </ChoiceField>
      <TemperatureFields job={job} filled={filled} />
      <QuantityField
        label="Rate may be off by"
        text={percent(rateSpread)}
        placeholder={percent(filled.process.rateSpread)}
        suffix="% either way"
        read={(text) => {
          const value = readFigure(text);
          return value !== undefined && value >= 0 && value < 100 ? value : undefined;
        }}
        expected="A percentage from 0 to under 100."
        onTake={(value) => actions.edit(`rate ± ${value} %`, (before) => setRateSpread(before, value / 100))}
        onClear={() => actions.edit('rate spread as usual', (before) => setRateSpread(before, undefined))}
      />
      <ChoiceField
        label="A drawn line is"
        value={edgeDatum ?? ''}
        onTake={(datum) =>
          actions.edit(datum === '' ? 'drawn line as usual' : `drawn line is the ${datum}`, (before) =>
            setEdgeDatum(before, datum === '' ? undefined : (datum as EdgeDatum)),
          )
        }
      >
        <option value="">{`as usual: ${DATUMS[DEFAULT_EDGE_DATUM]}`}</option>
        {Object.entries(DATUMS).map(([datum, words]) => (
          <option key={datum} value={datum}>
            {words}
          </option>
        ))}
      </ChoiceField>
      <ChoiceField
        label="Masking"
        value={masking ?? ''}
        onTake={(way) =>
          actions.edit(way === '' ? 'masking as usual' : `masking is ${way}`, (before) =>
            setMasking(before, way === '' ? undefined : (way as Masking)),
          )
        }
      >
        <option value="">{`as usual: ${MASKINGS[DEFAULT_MASKING]}`}</option>
        {Object.entries(MASKINGS).map(([way, words]) => (
          <option key={way} value={way}>
            {words}
          </option>
        ))}
      </ChoiceField>
    </fieldset>
  );
}
