/** What the chosen files of the hand-off need, made and judged: what is wrong with a choice goes into the plan. */
import { type Finding, finding } from '#findings/finding.ts';
import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { assert } from '#geometry/assert.ts';
import { loopArea, spansLength } from '#geometry/span.ts';
import { checkOvercut } from '#handoff/check-overcut.ts';
import { type InspectionPoint, inspectionPoints } from '#handoff/inspection/inspection-points.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { paperRoom } from '#handoff/pdf/paper-book.ts';
import { partFrame } from '#handoff/pdf/part-frame.ts';
import type { Paper } from '#handoff/pdf/pen.ts';
import { reviewPictureRoom } from '#handoff/review/stage-pages.ts';
import { etchedSolid, solidTolerance, solidTrouble } from '#handoff/solid/etched-solid.ts';
import { twoFacedSolid } from '#handoff/solid/two-faced-solid.ts';
import { fitsOtherwise } from '#handoff/template/fits-otherwise.ts';
import { makeTemplates } from '#handoff/template/make-templates.ts';
import { checkPaper } from '#handoff/template/template-files.ts';
import { templateInput } from '#handoff/template/template-input.ts';
import { labelSize } from '#handoff/template/template-label.ts';
import { slotBand, type TemplateSet } from '#handoff/template/template-set.ts';
import { templateSheet } from '#handoff/template/template-sheet.ts';
import { usualPictureHeight } from '#handoff/traveller/stage-page.ts';
import { listedFile } from '#job/handoff-list.ts';
import { thickestOf } from '#job/sheet-at.ts';
import { sheetVolume } from '#part/sheet-volume.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { cutSections } from './cut-sections.ts';
import { etchedPart } from './etched-part.ts';
import { farTemplateFindings } from './far-side.ts';
import type { HandoffInput, PreparedHandoff } from './handoff-types.ts';

export function prepareHandoff(given: HandoffInput): PreparedHandoff {
  const input = given.plan.far === undefined ? given : withCommonHoles(given);
  const { choices, plan } = input;
  const needs = new Set(choices.files.flatMap((file) => listedFile(file).needs));
  const cut = needs.has('sections') || choices.sections.length > 0 ? sectionsFor(input) : NONE;
  const gauged = needs.has('points') ? pointsFor(input) : NONE;
  const laid = needs.has('templates') && hasLines(plan) ? templatesFor(input) : NONE;
  const solid = needs.has('solid') ? solidFor(input) : NONE;
  return {
    ...input,
    made: {
      lines: hasLines(plan) ? true : undefined,
      pictures: true,
      points: gauged.value,
      sections: cut.value,
      templates: laid.value,
      solid: solid.value,
    },
    findings: [
      ...checkLines(input, needs.has('lines')),
      ...facesOf(plan).flatMap((face) => checkOvercut(face, choices.scribe, 'scribe')),
      ...(choices.files.includes('program')
        ? facesOf(plan).flatMap((face) => checkOvercut(face, choices.program, 'program'))
        : []),
      ...facesOf(plan).flatMap(findStubs),
      ...cut.findings,
      ...gauged.findings,
      ...(needs.has('pictures') ? checkPicture(input) : []),
      ...solid.findings,
      ...laid.findings,
      ...(needs.has('templates') ? [...farTemplateFindings(input), ...checkHoles(input)] : []),
    ],
  };
}

interface Making<Value> {
  readonly value?: Value | undefined;
  readonly findings: readonly Finding[];
}

const NONE: Making<never> = { findings: [] };

function facesOf(plan: EtchPlan): readonly EtchPlan[] {
  return plan.far === undefined ? [plan] : [plan, plan.far];
}

/** Both faces are laid on the same pins, and fit them one way only (M9.7). */
function withCommonHoles(input: HandoffInput): HandoffInput {
  const { choices, plan } = input;
  const { template } = choices;
  if (template.holes.at !== undefined) return input;
  const lines = facesOf(plan).flatMap(({ stages }) =>
    stages.flatMap((stage) => stage.lines.flatMap(({ spans }) => spans)),
  );
  if (plan.sheet.length === 0 && lines.length === 0) return input;
  const { holes } = templateSheet({
    sheet: plan.sheet,
    lines,
    margin: template.margin,
    diameter: template.holes.diameter,
    clear: template.web + slotBand(template.knife).reach,
    holes: undefined,
    label: (partWidth) => labelSize(templateInput(input), partWidth),
  });
  const at = holes.map(({ center }) => center);
  return { ...input, choices: { ...choices, template: { ...template, holes: { ...template.holes, at } } } };
}

/** Finding: `template-holes-turn`. */
function checkHoles({ plan, choices: { template } }: HandoffInput): Finding[] {
  const { at, diameter } = template.holes;
  if (plan.far === undefined || at === undefined || !fitsOtherwise(at, diameter)) return [];
  return [
    finding(
      'template-holes-turn',
      { holes: at.length, slack: diameter },
      { path: 'handoff.template.holes.at' },
    ),
  ];
}

/** Where all of the sheet is etched no maskant is cut: a program or a template would be empty. */
function checkLines({ plan }: HandoffInput, isKeptBack: boolean): Finding[] {
  const { length: stages } = plan.stages;
  return stages === 0 || facesOf(plan).some(hasLines)
    ? []
    : [finding('nothing-to-scribe', { stages, isKeptBack })];
}

/** mm: a blade's own width, about (from memory). */
const STUB = 1;

function findStubs({ stages }: EtchPlan): Finding[] {
  const stubs = stages.flatMap(({ number, lines }) =>
    lines
      .map(({ spans }) => ({ number, length: spansLength(spans), at: spans[0]?.start }))
      .filter(({ length }) => length < STUB),
  );
  const shortest = [...stubs].sort((a, b) => a.length - b.length)[0];
  if (shortest === undefined) return [];
  const { number: stage, length, at } = shortest;
  const facts = { lines: stubs.length, shortest: length, stage, limit: STUB };
  return [finding('scribe-line-stub', facts, at === undefined ? {} : { at })];
}

function hasLines({ stages }: EtchPlan): boolean {
  return stages.some(({ lines }) => lines.length > 0);
}

function sectionsFor({ choices, job, plan, kit, far }: HandoffInput): Making<readonly NamedSection[]> {
  const { sections, findings } = cutSections(
    choices.sections,
    etchedPart(plan, job.stock.thickness, kit, far?.kit),
  );
  return { value: sections, findings };
}

function pointsFor({ choices, job, plan, kit, far }: HandoffInput): Making<readonly InspectionPoint[]> {
  const ask = {
    plan,
    index: kit().index,
    far: far?.kit().index,
    stock: job.stock,
    choice: choices.inspection,
  };
  const { points, findings } = inspectionPoints(ask);
  return { value: points, findings };
}

function templatesFor(input: HandoffInput): Making<TemplateSet> {
  const { set, findings } = makeTemplates(templateInput(input));
  return { value: set, findings: set === undefined ? findings : [...findings, ...checkPaper(set)] };
}

/** On paper, mm: about the pen stroke around a piece. */
const NARROWEST_ON_PAPER = 0.5;

function checkPicture({ choices: { files, paper, units }, plan }: HandoffInput): Finding[] {
  const { stage, width } = narrowestPiece(plan);
  const scaleOn = (size: Paper): number => {
    const rooms = [
      ...(files.includes('traveller') ? [travellerRoom(plan, size, units === 'both')] : []),
      ...(files.includes('review') ? [reviewPictureRoom(plan, size)] : []),
    ];
    return Math.min(...rooms.map((room) => partFrame(plan, room).scale));
  };
  const scale = scaleOn(paper);
  if (width * scale >= NARROWEST_ON_PAPER) return [];
  const larger = paper !== 'a3' && width * scaleOn('a3') >= NARROWEST_ON_PAPER ? 'a3' : undefined;
  const facts = { stage, width: width * scale, paper, limit: NARROWEST_ON_PAPER, scale: 1 / scale, larger };
  return [finding('picture-too-small', facts)];
}

function travellerRoom({ masking }: EtchPlan, paper: Paper, isInBoth: boolean) {
  const { width, height } = paperRoom(paper);
  return { width, height: usualPictureHeight({ height, isRemasked: masking === 're-mask', isInBoth }) };
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

function solidFor({ plan, job, kit, far, removed }: HandoffInput): Making<ReliefMesh> {
  const trouble = solidTrouble(plan.sheet, job.stock);
  if (trouble !== undefined) return { findings: [finding('solid-not-drawn', { trouble })] };
  const thickness = thickestOf(job.stock.thickness);
  const tolerance = solidTolerance(kit());
  assert(far === undefined || removed !== undefined, 'a plan of both faces was measured');
  const made =
    far === undefined || removed === undefined
      ? etchedSolid(kit(), job.stock, { tolerance, removed })
      : twoFacedSolid({
          near: kit(),
          far: far.kit(),
          thickness,
          tolerance,
          stock: job.stock,
          removed,
          sheetVolume: sheetVolume(plan.sheet, job.stock.thickness) ?? 0,
        });
  if ('mesh' in made) return { value: made.mesh, findings: [] };
  return { findings: [finding('solid-held-back', { of: 'files', ...made.trouble })] };
}
