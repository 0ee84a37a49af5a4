/** What came of opening a file, with what was found in it. */

import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Finding } from '#findings/finding.ts';
import { sayInLabels } from '#job/field-labels.ts';

export function NoticeText({
  text,
  findings,
}: {
  readonly text: string;
  readonly findings: readonly Finding[];
}) {
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <div role="alert" className="review-notice">
      <p>{text}</p>
      {findings.map((finding) => {
        const { title, reason, remedy } = sayInLabels(finding, unit);
        return (
          <p key={`${finding.code} ${finding.place.path ?? ''}`}>
            <strong>{title}</strong> {finding.place.path} {reason} {remedy}
          </p>
        );
      })}
    </div>
  );
}
