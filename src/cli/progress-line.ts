/** One line on a watched terminal that says how far a run is, from half a second on; it leaves nothing behind. */
import type { Terminal } from './terminal.ts';

export interface ProgressLine {
  readonly report: (share: number, what: string) => void;
  readonly clear: () => void;
}

/** Runs shorter than this say nothing. */
const SILENT_MS = 500;
/** Often enough to be seen moving, seldom enough to cost nothing. */
const EVERY_MS = 100;

const ERASE_LINE = '\r\u001b[K';

export function progressLine(terminal: Terminal): ProgressLine {
  const start = terminal.milliseconds();
  let last = Number.NEGATIVE_INFINITY;
  let shown = false;
  return {
    report: (share, what) => {
      const now = terminal.milliseconds();
      if (!terminal.watched || now - start < SILENT_MS || now - last < EVERY_MS) return;
      last = now;
      shown = true;
      const text = `${String(Math.floor(share * 100)).padStart(3)} %  ${what}`;
      terminal.error(ERASE_LINE + text.slice(0, Math.max(20, terminal.columns - 1)));
    },
    clear: () => {
      if (shown) terminal.error(ERASE_LINE);
      shown = false;
    },
  };
}
