/** Opens one of the sample jobs. */
import { fetchSample, SAMPLES } from '#app/samples.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';

export function SamplePicker() {
  const { actions } = useWorkbench();
  return (
    <select
      aria-label="Open a sample"
      value=""
      onChange={async ({ target }) => {
        const sample = SAMPLES.find((each) => each.file === target.value);
        if (sample !== undefined) await actions.openSample(await fetchSample(sample));
      }}
    >
      <option value="" disabled>
        samples
      </option>
      {SAMPLES.map((sample) => (
        <option key={sample.file} value={sample.file}>
          {sample.title}
        </option>
      ))}
    </select>
  );
}
