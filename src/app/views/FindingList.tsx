/** Findings one under the other: what, where, and what to do; how it comes about on demand. A press goes to the place. */
import type { MovedLevel } from '#app/state/workbench-state.ts';
import type { Finding, Place } from '#findings/finding.ts';
import { asSentence } from '#findings/say-finding.ts';
import { labelOf, sayInLabels } from '#job/field-labels.ts';
import { FindingWays } from './FindingWays.tsx';
import { SeverityShape } from './SeverityShape.tsx';
import { useGoTo } from './use-go-to.ts';
import { useWorkbenchState } from './workbench-context.ts';

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  const go = useGoTo();
  const moved = useWorkbenchState((state) => state.session.moved);
  const ofMoved = moved && findings.find((finding) => isOfRegions(finding, moved.regions));
  return (
    <ul className="finding-list">
      {findings.map((finding, index) => (
        <FindingItem
          key={`${finding.code} ${index.toString()}`}
          finding={finding}
          go={go}
          moved={finding === ofMoved ? moved : undefined}
        />
      ))}
    </ul>
  );
}

/** A stop or warning that names one of the regions. */
function isOfRegions({ severity, place }: Finding, regions: readonly string[]): boolean {
  return severity !== 'note' && place.regions?.some((id) => regions.includes(id)) === true;
}

interface FindingItemProps {
  readonly finding: Finding;
  readonly go: (place: Place) => void;
  /** The level that was moved last, where the finding came of it. */
  readonly moved: MovedLevel | undefined;
}

function FindingItem({ finding, go, moved }: FindingItemProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const { title, what, how, remedy } = sayInLabels(finding, unit);
  const { place } = finding;
  const where = placeWords(place);
  const canGo = place.at !== undefined || (place.regions?.length ?? 0) > 0;
  return (
    <li>
      <SeverityShape severity={finding.severity} />
      <div>
        <h3>{title}</h3>
        {where !== '' && <p className="where">{where}</p>}
        <p className="reason">{asSentence(what)}</p>
        <p>{remedy}</p>
        <div className="ways">
          <FindingWays finding={finding} moved={moved} />
          {canGo && (
            <button
              type="button"
              className="go"
              aria-label={`${title}: show on sheet`}
              onClick={() => go(place)}
            >
              Show on sheet
            </button>
          )}
        </div>
        {how !== '' && (
          <details>
            <summary>How this comes about</summary>
            <p className="reason">{asSentence(how)}</p>
          </details>
        )}
      </div>
    </li>
  );
}

function placeWords({ regions, layer, file, path, line }: Place): string {
  const words: string[] = [];
  if (regions !== undefined && regions.length > 0) {
    words.push(regions.length > 3 ? `${regions.length} regions` : regions.join(', '));
  }
  if (layer !== undefined) words.push(`layer ${layer}`);
  if (file !== undefined) words.push(file);
  if (path !== undefined) words.push(labelOf(path));
  if (line !== undefined) words.push(`line ${line}`);
  return words.join(', ');
}
