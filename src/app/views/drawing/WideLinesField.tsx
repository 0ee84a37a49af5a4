/** What a polyline with a width means, asked where the drawing has one. */
import { setWideLines } from '#app/state/edit-figures.ts';
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { useBench, useWorkbench } from '#app/views/workbench-context.ts';
import type { WideLines } from '#drawing/drawing.ts';
import type { JobFile } from '#job/job-file.ts';

const CHOICES: readonly { readonly taken: WideLines; readonly words: string }[] = [
  { taken: 'centre', words: 'the line along its middle' },
  { taken: 'borders', words: 'its two borders' },
];

export function WideLinesField({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const findings = useBench((state) => state.derived.page?.findings) ?? [];
  if (job.wideLines === undefined && !findings.some(({ code }) => code === 'polyline-wide')) return null;
  return (
    <ChoiceField
      label="A wide polyline is"
      value={job.wideLines ?? ''}
      onTake={(value) => {
        const choice = CHOICES.find(({ taken }) => taken === value);
        actions.edit(
          choice === undefined ? 'wide polylines as usual' : `a wide polyline is ${choice.words}`,
          (before) => setWideLines(before, choice?.taken),
        );
      }}
    >
      <option value="">not said: the line along its middle</option>
      {CHOICES.map(({ taken, words }) => (
        <option key={taken} value={taken}>
          {words}
        </option>
      ))}
    </ChoiceField>
  );
}
