/** Stop: no file to cut from is written. Warn: look before you go on. Note: worth knowing. */
export type Severity = 'stop' | 'warn' | 'note';
