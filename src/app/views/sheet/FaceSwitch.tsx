/** Which face of the part is seen, where two are etched. */
import { faceOnShow, hasFarFace } from '#app/state/shown-face.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const WORDS = { near: 'Near face', far: 'Far face' } as const;

export function FaceSwitch() {
  const { actions } = useWorkbench();
  const face = useWorkbenchState(faceOnShow);
  const isThere = useWorkbenchState(hasFarFace);
  if (!isThere) return null;
  return (
    <fieldset className="switch face-switch" title="Turn the part over (T)">
      <legend className="unseen">Face of the part</legend>
      {(['near', 'far'] as const).map((each) => (
        <label key={each}>
          <input type="radio" name="face" checked={face === each} onChange={() => actions.turnOver(each)} />
          <span>{WORDS[each]}</span>
        </label>
      ))}
    </fieldset>
  );
}
