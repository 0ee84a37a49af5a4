/** What the colours of the sheet mean while the clock stands before the end of the run. */
import { useWorkbenchState } from '#app/views/workbench-context.ts';

export function BathKey() {
  const { minute, view } = useWorkbenchState((state) => state.session);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const stages = plan?.stages ?? [];
  if (minute === undefined || view !== 'plan') return null;
  const bands = stages.map(
    ({ color }, index) =>
      `${color} ${(100 * index) / stages.length}% ${(100 * (index + 1)) / stages.length}%`,
  );
  return (
    <ul className="bath-key" aria-label="In the bath">
      <li>
        <i style={{ background: `linear-gradient(90deg, ${bands.join(', ')})` }} />
        bare, in its stage’s colour
      </li>
      <li>
        <i className="masked" />
        masked
      </li>
      {plan?.masking === 're-mask' ? null : (
        <li>
          <i className="sealed" />
          line sealed over
        </li>
      )}
    </ul>
  );
}
