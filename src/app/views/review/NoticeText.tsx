/** What came of opening a file, with what was found in it. */
import type { Finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';

export function NoticeText({
  text,
  findings,
}: {
  readonly text: string;
  readonly findings: readonly Finding[];
}) {
  return (
    <div role="alert" className="review-notice">
      <p>{text}</p>
      {findings.map((finding) => {
        const { title, reason, remedy } = sayFinding(finding);
        return (
          <p key={`${finding.code} ${finding.place.path ?? ''}`}>
            <strong>{title}</strong> {finding.place.path} {reason} {remedy}
          </p>
        );
      })}
    </div>
  );
}
