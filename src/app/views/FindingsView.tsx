/** Findings of the plan, most serious first. */

import { findingWords } from '#app/state/plan-standing.ts';
import { sortFindings } from '#findings/finding.ts';
import { FindingList } from './FindingList.tsx';
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
  const isChecked = page?.isJudged ?? true;
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
