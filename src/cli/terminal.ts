/** What the command line may do to the outside: two streams, a clock for the progress line, and nothing else. */

export interface Terminal {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  /** Colours on each stream: a terminal is at its end and NO_COLOR is not set. */
  readonly outColor: boolean;
  readonly errorColor: boolean;
  /** Somebody watches the error stream: a progress line may be shown. */
  readonly watched: boolean;
  readonly columns: number;
  readonly milliseconds: () => number;
}

/** The terminal of this process. NO_COLOR: no-color.org, any value but an empty one. */
export function processTerminal(): Terminal {
  const { stdout, stderr, env } = process;
  const plain = (env['NO_COLOR'] ?? '') !== '' || env['TERM'] === 'dumb';
  // A reader that leaves early (`| head`) closes the pipe: the rest is not wanted, which is no fault.
  for (const stream of [stdout, stderr]) {
    stream.on('error', (fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EPIPE') throw fault;
    });
  }
  return {
    out: (text) => stdout.write(text),
    error: (text) => stderr.write(text),
    outColor: stdout.isTTY === true && !plain,
    errorColor: stderr.isTTY === true && !plain,
    watched: stderr.isTTY === true && env['TERM'] !== 'dumb',
    // Some pseudo terminals say 0.
    columns: stderr.columns || 80,
    // What else Node has for it takes longer to load than a small plan may.
    milliseconds: () => process.uptime() * 1000,
  };
}
