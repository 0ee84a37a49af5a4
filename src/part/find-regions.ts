/**
 * The part from its drawing: linework of the chosen layers arranged in the plane, its faces sorted into metal and not, and the
 * metal ones named, slivers as parts of their neighbours (M1.1). Nothing depends on the order of entities.
 */
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { arrange } from '#geometry/arrangement/arrange.ts';
import { type Arrangement, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { mergeSlivers, type Sliver } from '#geometry/arrangement/merge-slivers.ts';
import { itemAt } from '#geometry/assert.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Job, SheetChoice } from '#job/job.ts';
import { findLayers } from './find-layers.ts';
import { findMetal, type OutlinedPart, sheetLoops } from './find-sheet.ts';
import { lineworkFindings } from './linework-findings.ts';
import { nameRegions } from './name-regions.ts';
import { type NoiseLayer, noiseLayers } from './noise-layers.ts';
import type { Part, Region } from './part.ts';
import { MOST_TANGLE } from './part-limits.ts';
import { pickCurves } from './pick-curves.ts';
import { selfCrossings } from './self-crossings.ts';
import { type FacesChosen, punchHoles, sheetByPoint } from './sheet-by-point.ts';

export interface RegionsFound {
  readonly part: Part;
  readonly findings: readonly Finding[];
}

/** @param letter that the regions' names begin with */
export function findRegions(
  drawing: Drawing,
  job: Pick<Job, 'layers' | 'joinTolerance'>,
  letter?: string,
): RegionsFound {
  const picked = pickCurves(drawing, job.layers);
  const taking = [...picked.outline, ...picked.regions].sort((a, b) => a - b);
  const linework = taking.flatMap((source) =>
    itemAt(drawing.curves, source).spans.map((span) => ({ span, source })),
  );
  const { arrangement: drawn, trouble } = arrange(linework, {
    joinTolerance: job.joinTolerance,
    most: MOST_TANGLE,
  });
  const { arrangement, slivers } = mergeSlivers(drawn);
  const isGivenUp = trouble.some(({ kind }) => kind === 'too-crossed');
  const repeats = new Set(
    trouble.flatMap((each) => (each.kind === 'doubled' && each.other !== each.source ? [each.source] : [])),
  );
  const isNew = (source: number) => !repeats.has(source);
  const { outline, sheet: choice, holes = [] } = job.layers;
  const isSheetBounded = outline.length > 0 || choice !== undefined;
  const inside = isSheetBounded
    ? facesOfSheet({ arrangement, curves: drawing.curves, outline: picked.outline }, choice)
    : { isMetal: arrangement.faces.map((_, face) => face !== OUTSIDE), findings: [] };
  const { isMetal, findings: holeFindings } = punchHoles(arrangement, inside.isMetal, holes);
  const layers = findLayers(arrangement, (source) => itemAt(drawing.curves, source).layer);
  const regions = nameRegions(metalFaces(arrangement, { isMetal, layers }), letter);
  const regionOfFace = arrangement.faces.map(() => -1);
  regions.forEach(({ face }, index) => {
    regionOfFace[face] = index;
  });
  const sheet = isSheetBounded ? sheetLoops(arrangement, isMetal) : [];
  const findings = [
    ...picked.findings,
    ...lineworkFindings(trouble, drawing.curves, {
      joinTolerance: job.joinTolerance,
      // Layers that the job names are meant.
      noise: job.layers.regions === undefined ? noiseTaking(drawing, job.layers) : [],
    }),
    ...sliverFindings(slivers),
    ...(isGivenUp
      ? []
      : [
          ...inside.findings,
          ...holeFindings,
          ...sheetFindings({ arrangement, trouble, isMetal, isInside: inside.isMetal, layers }, job, [
            ...picked.findings,
            ...inside.findings,
          ]),
        ]),
    // As drawn: a sliver that is merged makes its neighbours' lines one.
    ...selfCrossings(drawn, {
      curves: drawing.curves,
      among: taking.filter(isNew),
    }),
  ];
  return { part: { arrangement, regions, regionOfFace, sheet, trouble }, findings };
}

/** One finding for all: they come by the dozen where an outline was drawn again a little beside itself. */
function sliverFindings(slivers: readonly Sliver[]): Finding[] {
  const [first] = slivers;
  if (first === undefined) return [];
  const width = slivers.reduce((widest, each) => Math.max(widest, each.width), 0);
  return [
    finding('slivers-merged', { count: slivers.length, width, limit: SCRIBE_ACCURACY }, { at: first.at }),
  ];
}

function noiseTaking(drawing: Drawing, { outline, ignore }: Job['layers']): NoiseLayer[] {
  return noiseLayers(drawing).filter(({ layer }) => !ignore.includes(layer) && !outline.includes(layer));
}

function facesOfSheet(part: OutlinedPart, choice: SheetChoice | undefined): FacesChosen {
  return choice === undefined ? sheetByOutlines(part) : sheetByPoint(part.arrangement, choice);
}

/** Finding: `outlines-overlap`. */
function sheetByOutlines(part: OutlinedPart): FacesChosen {
  const { isMetal, overlapping } = findMetal(part);
  const findings = overlapping.map((group) => {
    const curves = group.map((number) => itemAt(part.curves, number)).sort((a, b) => a.line - b.line);
    const { layer, line, spans } = itemAt(curves, 0);
    const at = itemAt(spans, 0).start;
    return finding('outlines-overlap', { outlines: group.length }, { at, layer, line });
  });
  return { isMetal, findings };
}

interface SortedFaces {
  readonly isMetal: readonly boolean[];
  readonly layers: readonly (readonly string[])[];
}

function metalFaces({ faces }: Arrangement, { isMetal, layers }: SortedFaces): Omit<Region, 'id'>[] {
  return faces.flatMap(({ area, loops }, face) => {
    if (isMetal[face] !== true) return [];
    const own = itemAt(layers, face);
    return [{ face, layer: own[0] ?? '', layers: own, label: labelPoint(loops), area, loops }];
  });
}

/** What the faces say about the sheet as a whole. */
function sheetFindings(
  {
    arrangement,
    isMetal,
    isInside,
    layers,
    trouble,
  }: SortedFaces & Pick<Part, 'arrangement' | 'trouble'> & { readonly isInside: readonly boolean[] },
  { layers: { outline: outlineLayers, sheet }, joinTolerance }: Pick<Job, 'layers' | 'joinTolerance'>,
  earlier: readonly Finding[],
): Finding[] {
  const { faces } = arrangement;
  const gaps = openGaps(trouble, joinTolerance);
  if (faces.length === 1) return [finding('no-closed-region', gaps)];
  if (outlineLayers.length === 0 && sheet === undefined) return [];
  if (!isMetal.includes(true)) {
    const isMissingReported = earlier.some(
      ({ code }) => code === 'outline-layer-missing' || code === 'sheet-point-unmet',
    );
    return isMissingReported ? [] : [finding('outline-not-closed', { layers: outlineLayers, ...gaps })];
  }
  return faces.flatMap(({ area, loops }, face) => {
    const layer = layers[face]?.[0];
    if (face === OUTSIDE || isInside[face] === true || layer === undefined) return [];
    // A face of the outline's own is a cutout, not a region gone astray.
    if (outlineLayers.includes(layer)) return [];
    return [finding('region-outside-sheet', { area }, { at: labelPoint(loops), layer })];
  });
}

/** Those that a larger tolerance would close. */
function openGaps(
  trouble: Part['trouble'],
  joinTolerance: number,
): { readonly gaps?: number; readonly widest?: number } {
  const gaps = trouble.flatMap((each) =>
    each.kind === 'open-gap' && each.gap > joinTolerance ? [each.gap] : [],
  );
  if (gaps.length === 0) return {};
  return { gaps: gaps.length, widest: gaps.reduce((most, gap) => Math.max(most, gap), 0) };
}
