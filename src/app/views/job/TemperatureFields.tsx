/** The temperatures that turn a rate into the bath's: where it was measured, and where the bath is run. */
import { setTemperature } from '#app/state/edit-figures.ts';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { readFigure } from '#units/read-figure.ts';
import type { JobPart } from './JobPanel.tsx';

const FIELDS = [
  { key: 'rateAtC', label: 'Rate measured at', placeholder: 'as the bath' },
  { key: 'bathC', label: 'Bath run at', placeholder: 'as measured' },
] as const;

export function TemperatureFields({ job }: JobPart) {
  const { actions } = useWorkbench();
  return FIELDS.map(({ key, label, placeholder }) => (
    <QuantityField
      key={key}
      label={label}
      text={job.process[key] === undefined ? '' : String(job.process[key])}
      placeholder={placeholder}
      suffix="°C"
      read={readCelsius}
      expected="A temperature from −50 to 400 °C."
      onTake={(celsius) =>
        actions.edit(`${label.toLowerCase()} ${celsius} °C`, (before) => setTemperature(before, key, celsius))
      }
      onClear={() =>
        actions.edit(`${label.toLowerCase()}: not said`, (before) => setTemperature(before, key, undefined))
      }
    />
  ));
}

/** What a job file may say. */
function readCelsius(text: string): number | undefined {
  const celsius = readFigure(text);
  return celsius !== undefined && celsius >= -50 && celsius <= 400 ? celsius : undefined;
}
