/** The hand-off chosen by a job, in millimetres, every default filled in. */
import type * as z from 'zod/mini';
import {
  type CuttingChoices,
  type ProgramChoices,
  resolveCutting,
  resolveProgram,
} from './cutting-choices.ts';
import type { HANDOFF_FILES, handoffSchema } from './handoff-schema.ts';
import { DEFAULT_UNITS } from './job-defaults.ts';
import { jobMillimetres } from './job-figures.ts';
import type { JobFile } from './job-file.ts';

export type HandoffFile = (typeof HANDOFF_FILES)[number];

export interface HandoffChoices {
  readonly files: readonly HandoffFile[];
  readonly paper: 'a4' | 'a3';
  /** `2026-05-31` */
  readonly date: string | undefined;
  readonly inspection: { readonly margin: number; readonly spacing: number };
  readonly scribe: CuttingChoices;
  readonly program: ProgramChoices;
}

/** mm. Clear of a wall by as much as an ultrasonic probe is wide, and about a hand's length apart: both our own choice. */
const DEFAULT_MARGIN = 3;
const DEFAULT_SPACING = 150;

export function resolveHandoff(jobFile: JobFile): HandoffChoices {
  const given: z.infer<typeof handoffSchema> = jobFile.handoff ?? {};
  const unit = jobFile.units ?? DEFAULT_UNITS;
  const millimetres = (length: number | undefined, otherwise: number) =>
    length === undefined ? otherwise : jobMillimetres(length, unit);
  return {
    files: given.files ?? [],
    paper: given.paper ?? 'a4',
    date: given.date,
    inspection: {
      margin: millimetres(given.inspection?.margin, DEFAULT_MARGIN),
      spacing: millimetres(given.inspection?.spacing, DEFAULT_SPACING),
    },
    scribe: resolveCutting(given.scribe, unit),
    program: resolveProgram(given.program, unit),
  };
}
