/** The hand-off chosen by a job, in millimetres, every default filled in. */
import type { Provenance } from '#bath/provenance.ts';
import { assert } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { ProgramChoices } from '#job/fields/cutting-fields.ts';
import type { ValuesOf } from '#job/fields/field.ts';
import { handoff } from '#job/fields/handoff-fields.ts';
import { readGroup } from '#job/fields/read-group.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import { fillPost, PLAIN_POST } from '#job/formats/post-file.ts';
import { drawnPoint } from '#job/job-figures.ts';
import type { JobFile } from '#job/job-file.ts';
import type { LengthUnit } from '#units/length-unit.ts';

/** A cut that the job asks for, mm in the drawing's frame. */
export interface ChosenCut {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  /** Path in the job file, for findings; undefined for the cut made where none is chosen. */
  readonly path: string | undefined;
}

type HandoffValues = ValuesOf<typeof handoff.members>;

export interface HandoffChoices extends Omit<HandoffValues, 'files' | 'sections' | 'program' | 'template'> {
  readonly files: NonNullable<HandoffValues['files']>;
  /** Empty: the job chooses none. */
  readonly sections: readonly ChosenCut[];
  readonly program: ProgramChoices;
  readonly template: TemplateChoices;
}

export function resolveHandoff(jobFile: JobFile, drawingUnit: LengthUnit): HandoffChoices {
  const { files = [], sections = [], program, template, ...held } = readHandoff(jobFile, drawingUnit).values;
  const post = program.post ?? PLAIN_POST;
  assert(typeof post !== 'string', 'a post file is taken into the job before the job is resolved');
  return {
    ...held,
    files,
    sections: sections.map(({ from, to, name }, index) => ({
      name: name ?? cutName(index),
      from: drawnPoint(from, drawingUnit),
      to: drawnPoint(to, drawingUnit),
      path: `handoff.sections[${index}]`,
    })),
    program: { ...program, post: fillPost(post) },
    template: { ...template, paper: template.paper ?? held.paper },
  };
}

/** What files are shaped with stands in every plan: which of them are made of it is no part of it. */
export function handoffProvenance(jobFile: Pick<JobFile, 'handoff' | 'units'>): readonly Provenance[] {
  return readHandoff(jobFile, 'mm').provenance;
}

function readHandoff(
  { handoff: given, units: job = 'mm' }: Pick<JobFile, 'handoff' | 'units'>,
  drawing: LengthUnit,
) {
  return readGroup(handoff, given, {
    units: { job, drawing },
    figures: { alloys: [], baths: [] },
    path: 'handoff.',
  });
}

/** A, B, … Z, then 27, 28, …: sections are lettered on drawings (ISO 128). */
export function cutName(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : String(index + 1);
}
