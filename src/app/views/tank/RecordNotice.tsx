/** What came of opening an earlier record. */
import { sayInLabels } from '#job/field-labels.ts';
import { useTank } from './tank-context.ts';
import type { RecordNews } from './use-open-record.ts';

interface RecordNoticeProps {
  readonly notice: RecordNews;
  readonly onClose: () => void;
}

export function RecordNotice({ notice: { text, findings, use }, onClose }: RecordNoticeProps) {
  const { unit } = useTank();
  return (
    <div className="tank-notice" role="alert">
      <div>
        <p>{text}</p>
        {findings.map((finding) => {
          const { title, reason, remedy } = sayInLabels(finding, unit);
          return (
            <p key={finding.code}>
              <strong>{title}.</strong> {reason} {remedy}
            </p>
          );
        })}
        {use !== undefined && <p>Save the record kept here before you use the other in its place.</p>}
      </div>
      {use !== undefined && (
        <button type="button" onClick={use}>
          Use the record opened
        </button>
      )}
      <button type="button" onClick={onClose}>
        {use === undefined ? 'Close' : 'Keep what is here'}
      </button>
    </div>
  );
}
