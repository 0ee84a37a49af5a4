/** Severity by shape as well as by colour: octagon for stop, triangle for warn, dot for note. */
import type { Severity } from '#findings/severity.ts';

const OCTAGON = 'M5 1H11L15 5V11L11 15H5L1 11V5Z';
const TRIANGLE = 'M8 1.5L15.2 14.5H0.8Z';

const NAMES: Record<Severity, string> = { stop: 'Stop', warn: 'Warn', note: 'Note' };

export function SeverityShape({ severity }: { readonly severity: Severity }) {
  return (
    <svg className={`severity ${severity}`} width="16" height="16" role="img" aria-label={NAMES[severity]}>
      {severity === 'stop' && <path d={OCTAGON} />}
      {severity === 'warn' && <path d={TRIANGLE} />}
      {severity === 'note' && <circle cx="8" cy="8" r="4.5" />}
    </svg>
  );
}
