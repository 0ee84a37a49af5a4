/**
 * The files of the hand-off, which carry the plan's hash: scribe.dxf, which every plan has, and those that the job chooses. A
 * choice that cannot be carried out costs its file alone.
 */

import type { Finding } from '#findings/finding.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import type { Point } from '#geometry/point.ts';
import { mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { loadFonts, type SheetFonts } from '#handoff/pdf/load-fonts.ts';
import type { ReviewInput } from '#handoff/review/review-page.ts';
import type { ScribeRelease } from '#handoff/scribe-drawing.ts';
import { scribeFiles } from '#handoff/scribe-files.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import {
  cutFiles,
  FACE_FILES,
  farName,
  HANDOFF_FILES,
  type HANDOFF_LIST,
  type HandoffFile,
  listedFile,
  oppositeName,
} from '#job/handoff-list.ts';
import { movePlan } from '#plan/move-plan.ts';
import { farSide, nearSide } from './far-side.ts';
import type { Made, PreparedHandoff } from './handoff-types.ts';
import { oppositeHand } from './opposite-hand.ts';
import { type MadeFile, type OutputFile, outputFile, wholeFile } from './output-file.ts';

export interface PlannedHandoff {
  readonly planFile: PlanFile;
  /** Those of the plan file; `findings` are about the files themselves. */
  readonly planFindings: readonly Finding[];
  /** SHA-256 of plan.json as written, hexadecimal: it names the plan on every file. */
  readonly planHash: string;
  readonly since: ReviewInput['since'];
  /** mm: where the local frame of the plan has its origin in the drawing's own. */
  readonly origin: Point | undefined;
}

/** With what is loaded once, if any file asks for it. */
interface HandoffToWrite extends PlannedHandoff {
  readonly fonts: () => Promise<SheetFonts>;
}

/** What every writer is given. Plan and points are in the local frame: `moved` has them in the drawing's, for files with coordinates. */
export interface Writing extends PreparedHandoff, HandoffToWrite {
  readonly moved: Pick<PreparedHandoff, 'plan'> & Pick<Made, 'points' | 'sections'>;
}

/** A file without its kind, which its name says. */
export type Written = Omit<MadeFile, 'mime'>;

/** Writes one of the listed files, given what that one needs. */
export type Writer<File extends HandoffFile> = (
  writing: Writing & Pick<Made, (typeof HANDOFF_LIST)[File]['needs'][number]>,
) => Written[] | Promise<Written[]>;

interface Deliverable {
  readonly write: (writing: Writing & Made) => Written[] | Promise<Written[]>;
}

export async function handoffFiles(
  prepared: PreparedHandoff,
  planned: PlannedHandoff,
): Promise<OutputFile[]> {
  return (await handoffInPieces(prepared, planned)).map(wholeFile);
}

/** The same, the large ones still to be written. */
export async function handoffInPieces(
  prepared: PreparedHandoff,
  planned: PlannedHandoff,
): Promise<MadeFile[]> {
  const { hand = 'as-drawn' } = prepared.choices;
  let fonts: Promise<SheetFonts> | undefined;
  const toWrite: HandoffToWrite = {
    ...planned,
    fonts: () => {
      fonts ??= loadFonts();
      return fonts;
    },
  };
  const asDrawn = hand === 'opposite' ? [] : await filesOfHand(prepared, toWrite);
  if (hand === 'as-drawn') return asDrawn.map(outputFile);
  const { origin } = planned;
  const opposite = await filesOfHand(oppositeHand(prepared), {
    ...toWrite,
    origin: origin && mirrorPoint(origin, 0),
  });
  const named = opposite.map((file) => ({
    ...file,
    name: oppositeName(file.name),
    what: `${file.what}, opposite hand`,
  }));
  return [...asDrawn, ...named].map(outputFile);
}

/** Of the near face and the part as a whole; and of the far face as seen from it, where lines are cut there. */
async function filesOfHand(prepared: PreparedHandoff, planned: HandoffToWrite): Promise<Written[]> {
  const { files } = prepared.choices;
  const far = farSide(prepared);
  if (far === undefined)
    return [...scribeOf(prepared, planned), ...(await filesOfSide(prepared, planned, files))];
  const near = nearSide(prepared);
  const isOfFace = (file: HandoffFile) => FACE_FILES.includes(file);
  const own = [
    ...scribeOf(near, planned),
    ...(await filesOfSide(near, planned, files.filter(isOfFace))),
    ...(await filesOfSide(
      prepared,
      planned,
      files.filter((file) => !isOfFace(file)),
    )),
  ];
  const mirrored = { ...planned, origin: planned.origin && mirrorPoint(planned.origin, 0) };
  const beyond = [...scribeOf(far, mirrored), ...(await filesOfSide(far, mirrored, files.filter(isOfFace)))];
  return [
    ...own,
    ...beyond.map((file) => ({ ...file, name: farName(file.name), what: `${file.what}, far face` })),
  ];
}

/** Of every plan. */
function scribeOf(prepared: PreparedHandoff, planned: HandoffToWrite): Written[] {
  return scribeDrawings(writingOf(prepared, planned), '2000');
}

async function filesOfSide(
  prepared: PreparedHandoff,
  planned: HandoffToWrite,
  chosen: readonly HandoffFile[],
): Promise<Written[]> {
  const { made, findings } = prepared;
  const writing = writingOf(prepared, planned);
  const files: Written[] = [];
  for (const file of HANDOFF_FILES.filter((each) => chosen.includes(each))) {
    const { needs, keptBackBy = [] } = listedFile(file);
    const isHeldBack = findings.some(({ code }) => keptBackBy.includes(code));
    if (isHeldBack || needs.some((need) => made[need] === undefined)) continue;
    const { write }: Deliverable = await import(`./deliverables/${file}.ts`);
    files.push(...(await write({ ...writing, ...(made as Made) })));
  }
  return files;
}

function writingOf(prepared: PreparedHandoff, planned: HandoffToWrite): Writing {
  const { made, plan } = prepared;
  const { origin } = planned;
  const { points = [], sections = [] } = made;
  const moved =
    origin === undefined
      ? { plan, points, sections }
      : {
          plan: movePlan(plan, origin),
          points: points.map((point) => ({ ...point, at: movePoint(point.at, origin) })),
          sections: sections.map((section) => movedSection(section, origin)),
        };
  return { ...prepared, ...planned, moved };
}

function movedSection(section: NamedSection, origin: Point): NamedSection {
  return {
    ...section,
    from: movePoint(section.from, origin),
    to: movePoint(section.to, origin),
    points: section.points.map((point) => ({ ...point, ...movePoint(point, origin) })),
  };
}

/** In the drawing's own frame: its corners are single precision and stay where they are; what they are counted from moves. */
export function movedSolid(solid: ReliefMesh, origin: Point | undefined): ReliefMesh {
  return origin === undefined ? solid : { ...solid, origin: movePoint(solid.origin, origin) };
}

/** Names of what an earlier plan may have left beside these, and no longer belongs to the plan. */
export function staleNames(written: readonly string[]): string[] {
  return cutFiles().filter((name) => !written.includes(name));
}

export function scribeDrawings(
  { choices, job, units, planHash, moved, findings }: Writing,
  release: ScribeRelease,
): Written[] {
  if (findings.some((each) => each.code === 'overcut-too-long' && each.facts.of === 'scribe')) return [];
  const what = release === 'r12' ? 'scribe lines for old readers' : 'scribe lines, a layer a stage';
  const { overrun } = choices;
  const input = {
    name: job.name,
    planHash,
    plan: moved.plan,
    unit: units.drawing,
    depthUnit: units.job,
    overrun,
  };
  return scribeFiles(input, choices.scribe, release).map((file) => ({ ...file, what }));
}
