/** A reading that cannot be used, and why. */

import { SeverityShape } from '#app/views/SeverityShape.tsx';
import type { Finding } from '#findings/finding.ts';
import { sayInLabels } from '#job/field-labels.ts';
import { useTank } from './tank-context.ts';

interface ReadingRefusedProps {
  readonly findings: readonly Finding[];
  readonly onAgain: () => void;
}

export function ReadingRefused({ findings, onAgain }: ReadingRefusedProps) {
  const { unit } = useTank();
  return (
    <>
      <div className="tank-question" role="alert">
        <SeverityShape severity="stop" />
        <div>
          {findings.map((finding) => {
            const { title, reason, remedy } = sayInLabels(finding, unit);
            return (
              <div key={finding.code}>
                <h2>{title}</h2>
                <p>
                  {reason} {remedy}
                </p>
              </div>
            );
          })}
        </div>
      </div>
      <div className="buttons">
        <button type="button" className="main" onClick={onAgain}>
          Type it again
        </button>
      </div>
    </>
  );
}
