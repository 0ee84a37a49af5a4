/** Severity by shape as well as by colour: octagon for stop, triangle for warning, dot for note. */
import type { Severity } from '#findings/severity.ts';

const NAMES: Record<Severity, string> = { stop: 'Stop', warn: 'Warning', note: 'Note' };

export function SeverityShape({ severity }: { readonly severity: Severity }) {
  return (
    <svg
      className={`severity ${severity}`}
      width="16"
      height="16"
      viewBox="0 0 16 16"
      role="img"
      aria-label={NAMES[severity]}
    >
      {severity === 'stop' && (
        <>
          <path className="shape" d="M5.1 1H10.9L15 5.1V10.9L10.9 15H5.1L1 10.9V5.1Z" />
          <path className="stroke" d="M8 4.2V8.6" />
          <circle className="dot" cx="8" cy="11.4" r="1" />
        </>
      )}
      {severity === 'warn' && (
        <>
          <path className="shape" d="M8 1.6L15 14.2H1Z" />
          <path className="stroke" d="M8 6V9.6" />
          <circle className="dot" cx="8" cy="11.9" r="0.95" />
        </>
      )}
      {severity === 'note' && <circle className="shape" cx="8" cy="8" r="4.5" />}
    </svg>
  );
}
