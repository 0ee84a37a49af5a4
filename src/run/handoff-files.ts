/**
 * The files that a job chooses beside plan.json and scribe.dxf: first what is wrong with the choice, which goes into the plan,
 * then the files, which carry the plan's hash. A choice that cannot be carried out costs its file alone.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { type Finding, finding } from '#findings/finding.ts';
import type { ContourKit } from '#front/contour-kit.ts';
import type { ReliefMesh } from '#front/relief-mesh.ts';
import { movePoint } from '#geometry/move-spans.ts';
import type { Point } from '#geometry/point.ts';
import { loopArea, spansLength } from '#geometry/span.ts';
import { checkOvercut } from '#handoff/check-overcut.ts';
import { etchedSolid, solidTolerance, solidTrouble } from '#handoff/etched-solid.ts';
import { glbFile } from '#handoff/glb-file.ts';
import { inspectionCsv } from '#handoff/inspection-csv.ts';
import { type InspectionPoint, inspectionPoints } from '#handoff/inspection-points.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { partFrame } from '#handoff/pdf/part-frame.ts';
import type { Paper } from '#handoff/pdf/pen.ts';
import { pageRoom } from '#handoff/pdf/sheet-book.ts';
import type { PlanFile } from '#handoff/plan-file.ts';
import { programFiles } from '#handoff/program-files.ts';
import { type ReviewInput, reviewPictureRoom, reviewSheets } from '#handoff/review-sheets.ts';
import type { ScribeRelease } from '#handoff/scribe-drawing.ts';
import { scribeFiles } from '#handoff/scribe-files.ts';
import { sectionDrawing } from '#handoff/section-drawing.ts';
import { sectionSvg } from '#handoff/section-svg.ts';
import { stlFile } from '#handoff/stl-file.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { checkPaper, templateFiles } from '#handoff/template/template-files.ts';
import type { TemplateSet } from '#handoff/template/template-set.ts';
import { traveller, travellerRoom } from '#handoff/traveller.ts';
import { HANDOFF_FILES, type HandoffFile } from '#job/handoff-fields.ts';
import type { Job } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { movePlan } from '#plan/move-plan.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { cutSections } from './cut-sections.ts';
import { etchedPart } from './etched-part.ts';
import type { OutputFile } from './run-job.ts';
import { sectionName } from './section-files.ts';

export interface HandoffInput {
  readonly choices: HandoffChoices;
  readonly job: Job;
  readonly plan: EtchPlan;
  readonly kit: ContourKit;
  readonly units: { readonly job: LengthUnit; readonly drawing: LengthUnit };
}

/** What was worked out to judge the choice, kept for the writing. */
export interface PreparedHandoff extends HandoffInput {
  /** mm: where the local frame of the plan has its origin in the drawing's own. */
  readonly origin?: Point | undefined;
  readonly points: readonly InspectionPoint[];
  readonly sections: readonly NamedSection[];
  /** Undefined where none is chosen, or none can be made. */
  readonly templates: TemplateSet | undefined;
  /** Undefined where no file shows it, none can be made, or it was held back. */
  readonly solid: ReliefMesh | undefined;
  readonly findings: readonly Finding[];
}

export function prepareHandoff(input: HandoffInput): PreparedHandoff {
  const { choices, plan } = input;
  const cut = sectionsFor(input);
  const gauged = pointsFor(input);
  const { set, findings: ofTemplates } = preparedTemplates(input);
  const { solid, findings: ofSolid } = preparedSolid(input);
  return {
    ...input,
    points: gauged.points,
    sections: cut.sections,
    templates: set,
    solid,
    findings: [
      ...checkLines(input),
      ...checkOvercut(plan, choices.scribe, 'scribe'),
      ...(choices.files.includes('program') ? checkOvercut(plan, choices.program, 'program') : []),
      ...cut.findings,
      ...gauged.findings,
      ...checkPicture(input),
      ...ofSolid,
      ...ofTemplates,
    ],
  };
}

/** Where all of the sheet is etched no maskant is cut: a program or a template would be empty. */
function checkLines({ plan: { stages }, choices: { files } }: HandoffInput): Finding[] {
  if (stages.length === 0 || stages.some(({ lines }) => lines.length > 0)) return [];
  const isKeptBack = files.includes('program') || files.includes('template');
  return [finding('nothing-to-scribe', { stages: stages.length, isKeptBack })];
}

/** Only for the files that show them; those of the job are looked at in any case. */
function sectionsFor({ choices, job, plan, kit }: HandoffInput): ReturnType<typeof cutSections> {
  const { files, sections } = choices;
  const areShown = SECTION_FILES.some((file) => files.includes(file));
  if (!areShown && sections.length === 0) return { sections: [], findings: [] };
  return cutSections(sections, etchedPart(plan, job.stock.thickness, kit));
}

const SECTION_FILES = ['review', 'section-dxf', 'section-svg'] as const;

/** Only for the files that show them: spreading points over a large part takes seconds. */
function pointsFor({ choices, job, plan, kit }: HandoffInput): ReturnType<typeof inspectionPoints> {
  const { files, inspection } = choices;
  if (!files.includes('inspection') && !files.includes('review')) return { points: [], findings: [] };
  return inspectionPoints({ plan, index: kit.index, stock: job.stock, choice: inspection });
}

function preparedTemplates({ choices, job, plan }: HandoffInput): ReturnType<typeof makeTemplates> {
  if (!choices.files.includes('template') || !hasLines(plan)) return { findings: [] };
  const { set, findings } = makeTemplates({ name: job.name, plan, choices: choices.template });
  return set === undefined ? { findings } : { set, findings: [...findings, ...checkPaper(set)] };
}

/** On paper, mm: about the pen stroke around a piece. */
const LEAST_PIECE = 0.5;

function checkPicture({ choices: { files, paper }, plan }: HandoffInput): Finding[] {
  if (!files.includes('traveller') && !files.includes('review')) return [];
  const { stage, width } = narrowestPiece(plan);
  const scaleOn = (size: Paper): number => {
    const rooms = [
      ...(files.includes('traveller') ? [travellerRoom(plan.masking, pageRoom(size).width)] : []),
      ...(files.includes('review') ? [reviewPictureRoom(size)] : []),
    ];
    return Math.min(...rooms.map((room) => partFrame(plan, room).scale));
  };
  const scale = scaleOn(paper);
  if (width * scale >= LEAST_PIECE) return [];
  const larger = paper === 'a4' && width * scaleOn('a3') >= LEAST_PIECE ? 'a3' : undefined;
  const facts = { stage, width: width * scale, paper, limit: LEAST_PIECE, scale: 1 / scale, larger };
  return [finding('picture-too-small', facts)];
}

/** Width of a piece as that of the strip with its area and border, mm. */
function narrowestPiece(plan: EtchPlan): { readonly stage: number; readonly width: number } {
  return plan.stages
    .flatMap(({ piece, number }) =>
      piece
        .filter((loop) => loopArea(loop) > 0)
        .map((loop) => ({ stage: number, width: (2 * loopArea(loop)) / spansLength(loop) })),
    )
    .reduce((least, each) => (each.width < least.width ? each : least), {
      stage: 0,
      width: Number.POSITIVE_INFINITY,
    });
}

function preparedSolid({
  choices: { files },
  plan,
  job,
  kit,
}: HandoffInput): Pick<PreparedHandoff, 'solid' | 'findings'> {
  const none = { solid: undefined, findings: [] };
  if (!files.includes('glb') && !files.includes('stl')) return none;
  const missing = solidTrouble(plan.sheet, job.stock);
  if (missing !== undefined) return { ...none, findings: [finding('solid-not-drawn', { trouble: missing })] };
  const made = etchedSolid(kit, job.stock);
  return 'mesh' in made
    ? { ...none, solid: made.mesh }
    : { ...none, findings: [finding('solid-held-back', { of: 'files', ...made.trouble })] };
}

export interface PlannedHandoff {
  readonly planFile: PlanFile;
  /** plan.json as written: its SHA-256 names the plan on every file. */
  readonly planBytes: Uint8Array;
  readonly since: ReviewInput['since'];
}

/** scribe.dxf, which every plan has, and what else was chosen. */
export async function handoffFiles(
  prepared: PreparedHandoff,
  planned: PlannedHandoff,
): Promise<OutputFile[]> {
  const planHash = bytesToHex(sha256(planned.planBytes));
  const files: OutputFile[] = scribeDrawings(prepared, planHash, '2000');
  const input = { ...prepared, ...planned };
  for (const choice of HANDOFF_FILES) {
    if (prepared.choices.files.includes(choice)) files.push(...(await WRITERS[choice](input, planHash)));
  }
  return files;
}

type WriterInput = PreparedHandoff & PlannedHandoff;

type Writer = (input: WriterInput, planHash: string) => OutputFile[] | Promise<OutputFile[]>;

const WRITERS: Readonly<Record<HandoffFile, Writer>> = {
  async traveller({ choices, plan, job, findings }, planHash) {
    if (findings.some(({ code }) => code === 'picture-too-small')) return [];
    const { paper, date, issue } = choices;
    const bytes = await traveller({ plan, job, planHash, paper, date, issue: issue.number });
    const what = 'steps, pictures and boxes for the tank';
    return [{ name: 'traveller.pdf', what, mime: 'application/pdf', bytes }];
  },
  async review({ choices, plan, planFile, since, job, kit, points, sections, findings, origin }, planHash) {
    const keepingBack = ['picture-too-small', 'section-misses-sheet'];
    if (findings.some(({ code }) => keepingBack.includes(code))) return [];
    const { paper, date, issue } = choices;
    const { thickness } = kit.index.front;
    const shown = {
      plan: movedPlan(plan, origin),
      planFile,
      job,
      thickness,
      sections: movedSections(sections, origin),
      points: movedPoints(points, origin),
    };
    const bytes = await reviewSheets({ ...shown, planHash, paper, date, issue, since });
    const what = 'part, stages, sections and sources for who signs';
    return [{ name: 'review.pdf', what, mime: 'application/pdf', bytes }];
  },
  inspection({ points: local, units, plan, origin }, planHash) {
    const points = movedPoints(local, origin);
    const text = inspectionCsv({ points, planHash, units, lastStage: plan.stages.length });
    const what = 'where to gauge, and what must be read there';
    return [{ name: 'inspection-points.csv', what, mime: 'text/csv', bytes: utf8ToBytes(text) }];
  },
  program({ choices, plan: local, job, findings, origin }, planHash) {
    const plan = movedPlan(local, origin);
    if (isOvercut(findings, 'program') || !hasLines(plan)) return [];
    return programFiles({ name: job.name, planHash, plan }, choices.program).map(({ name, text }) => ({
      name,
      what: 'machine program of the scribe lines',
      mime: 'text/plain',
      bytes: utf8ToBytes(text),
    }));
  },
  'scribe-r12': (prepared, planHash) => scribeDrawings(prepared, planHash, 'r12'),
  template({ choices, templates, units, origin }, planHash) {
    if (templates === undefined) return [];
    return templateFiles(templates, { planHash, unit: units.drawing, origin, date: choices.date });
  },
  'section-dxf'({ sections, plan, job, origin }, planHash) {
    return movedSections(sections, origin).map((section, index) => ({
      name: sectionName(index, 'dxf'),
      what: `section ${section.name} at its true size`,
      mime: 'image/vnd.dxf',
      bytes: sectionDrawing({ name: job.name, planHash, section, stages: plan.stages }),
    }));
  },
  'section-svg'({ sections, plan, job, kit }, planHash) {
    const { thickness } = kit.index.front;
    return sections.map((section, index) => ({
      name: sectionName(index, 'svg'),
      what: `section ${section.name} as a picture`,
      mime: 'image/svg+xml',
      bytes: utf8ToBytes(sectionSvg({ name: job.name, planHash, section, thickness, stages: plan.stages })),
    }));
  },
  glb({ plan, job, kit, solid, origin }, planHash) {
    if (solid === undefined) return [];
    const mesh = movedSolid(solid, origin);
    const tolerance = solidTolerance(kit);
    const bytes = glbFile({ name: job.name, planHash, mesh, tolerance, stages: plan.stages });
    const what = 'the etched part to look at, a colour a stage';
    return [{ name: 'etched-part.glb', what, mime: 'model/gltf-binary', bytes }];
  },
  stl({ kit, solid, origin }, planHash) {
    if (solid === undefined) return [];
    const mesh = movedSolid(solid, origin);
    const bytes = stlFile(mesh, planHash);
    const { x, y } = mesh.origin;
    const counted = x === 0 && y === 0 ? '' : `, counted from (${x}, ${y})`;
    const what = `the etched part as a solid, mm, within ${solidTolerance(kit)} mm${counted}`;
    return [{ name: 'etched-part.stl', what, mime: 'model/stl', bytes }];
  },
};

/** In the drawing's own frame, for files with coordinates. */
function movedPlan(plan: EtchPlan, origin: Point | undefined): EtchPlan {
  return origin === undefined ? plan : movePlan(plan, origin);
}

function movedPoints(
  points: readonly InspectionPoint[],
  origin: Point | undefined,
): readonly InspectionPoint[] {
  return origin === undefined
    ? points
    : points.map((point) => ({ ...point, at: movePoint(point.at, origin) }));
}

function movedSections(
  sections: readonly NamedSection[],
  origin: Point | undefined,
): readonly NamedSection[] {
  if (origin === undefined) return sections;
  return sections.map((section) => ({
    ...section,
    from: movePoint(section.from, origin),
    to: movePoint(section.to, origin),
    points: section.points.map((point) => ({ ...point, ...movePoint(point, origin) })),
  }));
}

/** Its corners are single precision and stay where they are; only what they are counted from moves. */
function movedSolid(solid: ReliefMesh, origin: Point | undefined): ReliefMesh {
  return origin === undefined ? solid : { ...solid, origin: movePoint(solid.origin, origin) };
}

function scribeDrawings(
  { choices, plan: local, job, units, findings, origin }: PreparedHandoff,
  planHash: string,
  release: ScribeRelease,
): OutputFile[] {
  if (isOvercut(findings, 'scribe')) return [];
  const input = { name: job.name, planHash, plan: movedPlan(local, origin), unit: units.drawing };
  const what = release === 'r12' ? 'scribe lines for old readers' : 'scribe lines, a layer a stage';
  return scribeFiles(input, choices.scribe, release).map(({ name, bytes }) => ({
    name,
    what,
    mime: 'image/vnd.dxf',
    bytes,
  }));
}

function hasLines({ stages }: EtchPlan): boolean {
  return stages.some(({ lines }) => lines.length > 0);
}

function isOvercut(findings: readonly Finding[], of: 'scribe' | 'program'): boolean {
  return findings.some((each) => each.code === 'overcut-too-long' && each.facts.of === of);
}
