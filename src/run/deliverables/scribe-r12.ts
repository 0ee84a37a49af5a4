/** Scribe lines for old readers. */
import { scribeDrawings, type Writer } from '#run/handoff-files.ts';

export const write: Writer<'scribe-r12'> = (writing) => scribeDrawings(writing, 'r12');
