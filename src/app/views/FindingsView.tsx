/** Findings, most serious first: what, where, why, value against limit, and what to do. A click flies to the place. */

import { findingWords } from '#app/state/plan-standing.ts';
import { type Finding, type Place, sortFindings } from '#findings/finding.ts';
import { labelOf, sayInLabels } from '#job/field-labels.ts';
import { SeverityShape } from './SeverityShape.tsx';
import { useGoTo } from './use-go-to.ts';
import { useDocument, useWorkbenchState } from './workbench-context.ts';

export function FindingsView() {
  const findings = useWorkbenchState((state) => state.derived.page?.findings) ?? [];
  return (
    <section
      // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls, so that keys must reach it
      tabIndex={0}
      className="findings"
      aria-labelledby="findings-heading"
    >
      <h2 id="findings-heading">
        Findings <span className="aside">{findingWords(findings)}</span>
      </h2>
      <FindingsPanel />
    </section>
  );
}

/** The findings of the plan on show, or that there are none. */
export function FindingsPanel() {
  const page = useWorkbenchState((state) => state.derived.page);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const isUnsaid = useDocument()?.unsaid?.includes('stock') === true;
  const isChecked = page?.isWhole ?? true;
  const findings = sortFindings(page?.findings ?? []);
  if (isUnsaid) {
    return <p className="aside">Sheet and bath are not set yet: findings come with the plan.</p>;
  }
  return (
    <div className={isStale || !isChecked ? 'findings-body stale' : 'findings-body'}>
      {!isChecked && <p className="aside unchecked">Not checked yet whether it can be made.</p>}
      {page !== undefined && isChecked && findings.length === 0 && (
        <p className="empty">No findings on this plan.</p>
      )}
      <FindingList findings={findings} />
    </div>
  );
}

export function FindingList({ findings }: { readonly findings: readonly Finding[] }) {
  const go = useGoTo();
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
  const { title, reason, remedy } = sayInLabels(finding, unit);
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
  if (path !== undefined) words.push(labelOf(path));
  if (line !== undefined) words.push(`line ${line}`);
  return words.join(', ');
}
