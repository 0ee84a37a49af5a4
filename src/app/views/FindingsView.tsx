/** Findings, gravest first: what, where, why, value against limit, and what to do. A click flies to the place. */
import { boxOfShapes } from '#app/state/region-shape.ts';
import { type Finding, type Place, sortFindings } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import type { Severity } from '#findings/severity.ts';
import { distance } from '#geometry/point.ts';
import { SeverityShape } from './SeverityShape.tsx';
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

/** mm; coordinates of a plan are rounded to a millionth. */
const SAME_PLACE = 1e-5;

const ORDER: readonly Severity[] = ['stop', 'warn', 'note'];

export function FindingsView() {
  const page = useWorkbenchState((state) => state.derived.page);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const isChecked = page?.isWhole ?? true;
  const findings = sortFindings(page?.findings ?? []);
  const counts = ORDER.map((severity) => [
    severity,
    findings.filter((each) => each.severity === severity).length,
  ]);
  const shown = counts.filter(([, count]) => count !== 0).map(([severity, count]) => `${count} ${severity}`);
  return (
    <section
      // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so that keys must reach it
      tabIndex={0}
      className={isStale || !isChecked ? 'findings stale' : 'findings'}
      aria-labelledby="findings-heading"
    >
      <h2 id="findings-heading">
        Findings <span className="aside">{shown.join(', ')}</span>
      </h2>
      {!isChecked && <p className="aside unchecked">Not checked yet whether it can be made.</p>}
      {page !== undefined && isChecked && findings.length === 0 && (
        <p className="empty">Nothing found against this plan.</p>
      )}
      <FindingList findings={findings} />
    </section>
  );
}

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  const { store, actions } = useWorkbench();
  const go = ({ at, regions, outline }: Place) => {
    const { shapes } = store.getState().derived;
    const known = (regions ?? []).filter((id) => shapes.some((shape) => shape.region.id === id));
    if (known.length > 0) actions.select(known);
    const label = shapes.find((shape) => shape.region.id === known[0])?.region.label;
    const middle = label && { x: label[0], y: label[1] };
    const to = at ?? middle;
    if (to === undefined) return;
    // A place that is no more than where the region's name stands means all of the region.
    const isWhole = middle !== undefined && distance(to, middle) < SAME_PLACE;
    const around = isWhole
      ? boxOfShapes(shapes.filter(({ region }) => known.includes(region.id)))
      : undefined;
    actions.flyTo({ to, outline, around });
  };
  return (
    <ul className="finding-list">
      {findings.map((finding, index) => (
        <FindingItem key={`${finding.code} ${index.toString()}`} finding={finding} go={go} />
      ))}
    </ul>
  );
}

function FindingItem({ finding, go }: { readonly finding: Finding; readonly go: (place: Place) => void }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const { title, reason, remedy } = sayFinding(finding, unit);
  const { place } = finding;
  const where = placeWords(place);
  const canGo = place.at !== undefined || (place.regions?.length ?? 0) > 0;
  return (
    <li>
      <SeverityShape severity={finding.severity} />
      <div>
        <h3>
          {canGo ? (
            <button type="button" className="go" onClick={() => go(place)}>
              {title}
            </button>
          ) : (
            title
          )}
          {where !== '' && <span className="where"> {where}</span>}
        </h3>
        <p className="reason">{reason}</p>
        <p>{remedy}</p>
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
  if (path !== undefined) words.push(path);
  if (line !== undefined) words.push(`line ${line}`);
  return words.join(', ');
}
