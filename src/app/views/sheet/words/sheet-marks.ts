/**
 * All words and shapes that lie on the sheet at one pose: names with figures, findings at their places, tags of lines too short for
 * their mark. Each is kept by its place of the sheet, so that it stays there while the view moves.
 */
import { heightAt, pickRegion, type Seen } from '#app/scene/pick-region.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf, wordsOn } from '#app/scene/stage-looks.ts';
import { pixelOf, pointSeenAt } from '#app/scene/view-pose.ts';
import { contourPoints, type RegionShape } from '#app/state/region-shape.ts';
import type { SectionLine } from '#app/state/workbench-state.ts';
import type { DrawnNote } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';
import type { Section } from '#run/section-job.ts';
import { type BandNumber, bandNumbers } from './band-numbers.ts';
import { boxOfHung, hungOnScreen } from './hung-on-screen.ts';
import { keptApart } from './kept-apart.ts';
import { markBoxes, placeOfTag } from './mark-places.ts';
import { type EdgeRoom, placeEdges } from './place-edges.ts';
import { type FlagRequest, placeFlags } from './place-flags.ts';
import { type LabelForm, type LabelRequest, type LabelRoom, placeLabels } from './place-labels.ts';
import { type PlacedTried, placeTried, type TriedFigure, type TriedLine } from './tried-figures.ts';

export interface MarksAsk {
  readonly plan: ShownPlan;
  readonly shapes: readonly RegionShape[];
  readonly findings: readonly Finding[];
  readonly seen: Seen;
  readonly isRelief: boolean;
  readonly cut: SectionLine | undefined;
  readonly theme: SceneTheme;
  /** What is shown beside a region's name; nothing where undefined. */
  readonly figureOf: (region: ShownRegion) => string;
  /** px */
  readonly measure: (text: string, isBold: boolean) => number;
  /** Along the cut; undefined where the relief is not cut open. */
  readonly section: Section | undefined;
  /** Drawn edges whose bands are on show with their lines, and lines that came back; and what each says. */
  readonly edges?: readonly EdgeWords[];
  /** Stages whose lines are drawn. */
  readonly lined: readonly ShownStage[];
  /** The drawing's own, where they are shown. */
  readonly texts?: readonly DrawnNote[];
  /** What figures of the drawing would give. */
  readonly tried?: readonly TriedFigure[];
  /** Whether floors of the stage still lie under the maskant; where it is left out none does. */
  readonly isMasked?: (stage: ShownStage) => boolean;
}

export interface EdgeWords {
  readonly index: number;
  readonly at: Point;
  readonly says: string;
  /** What they stand on; undefined where they stand beside their place. */
  readonly lines?: readonly Contour[];
}

/** On the sheet, mm. */
interface Held {
  readonly at: Point;
  /** Height drawn, mm. */
  readonly z: number;
}

export interface NameMark extends Held {
  readonly id: string;
  readonly form: LabelForm;
  readonly figure: string;
  readonly color: string;
  readonly nameWidth: number;
  readonly figureWidth: number;
}

export interface FlagMark extends Held {
  readonly id: string;
  /** px from its place. */
  readonly off: Point;
}

export interface TriedMark extends Held {
  readonly id: string;
  readonly form: PlacedTried['form'];
  readonly lines: readonly (TriedLine & { readonly width: number })[];
}

export interface SheetMarks {
  readonly names: readonly NameMark[];
  readonly findings: readonly (FlagMark & { readonly finding: Finding })[];
  readonly tags: readonly (FlagMark & { readonly stage: ShownStage })[];
  readonly edges: readonly (FlagMark & { readonly says: string })[];
  readonly tried: readonly TriedMark[];
  /** The drawing's own that keep apart. */
  readonly texts: readonly DrawnNote[];
  /** On the cut face of the relief. */
  readonly numbers: readonly BandNumber[];
}

export const NO_MARKS: SheetMarks = {
  names: [],
  findings: [],
  tags: [],
  edges: [],
  tried: [],
  texts: [],
  numbers: [],
};

const FINDING = { half: 9, away: 17 };
const TAG = { half: 7, away: 15 };
/** As wide as its words. */
const EDGE = { half: 20, away: 30 };
/** More of a kind than this would be unreadable. */
const MOST = { findings: 40, tags: 80, edges: 40 };

export function sheetMarks(ask: MarksAsk): SheetMarks {
  const { seen, isRelief, cut } = ask;
  const { width, height } = seen.size;
  const findings = isRelief ? [] : placedFindings(ask);
  const lines =
    cut === undefined || isRelief
      ? []
      : [{ from: pixelOf(seen.pose, seen.size, cut.from), to: pixelOf(seen.pose, seen.size, cut.to) }];
  const byId = new Map(ask.shapes.map((shape) => [shape.region.id, shape]));
  const requests = ask.shapes.flatMap((shape) => requestOf(shape, ask));
  const texts = isRelief ? [] : textsApart(ask, byId);
  const words = isRelief ? [] : placedWords(ask, boxesOf(findings, texts));
  const taken = boxesOf(findings, words, texts);
  const placed = placeLabels(requests, {
    width,
    height,
    taken,
    lines,
    ...(isRelief ? { isSeenIn: (id, box) => isFloorSeen(byId.get(id), box, ask) } : {}),
  });
  const named = [...taken, ...boxesOf(placed)];
  const edges = isRelief ? [] : placedEdges(ask, { width, height, taken: named, lines });
  const tags = isRelief ? [] : placedTags(ask, [...named, ...boxesOf(edges)]);
  const colors = floorColors(ask);
  return {
    names: placed.map(({ id, form, at }) => {
      const { region } = itemAt(
        [byId.get(id)].filter((each) => each !== undefined),
        0,
      );
      const z = heightOf(region, ask);
      const figure = ask.figureOf(region);
      return {
        id,
        form,
        figure,
        z,
        at: pointSeenAt(seen.pose, seen.size, at, z),
        color: colors.get(id) ?? wordsOn(ask.theme.land),
        nameWidth: ask.measure(id, false),
        figureWidth: ask.measure(figure, true),
      };
    }),
    findings,
    edges: [...words, ...edges],
    tags,
    texts: texts.map(({ note }) => note),
    tried: isRelief ? [] : placedTried(ask, byId, { width, height, taken: named, lines }),
    numbers: numbersOf(ask),
  };
}

/** px of the drawing's own texts and of what is tried beside them; widths are measured at 13 px. */
const SMALL = 11 / 13;

function placedTried(
  { tried = [], seen: { pose, size }, measure }: MarksAsk,
  byId: ReadonlyMap<string, RegionShape>,
  room: LabelRoom,
): TriedMark[] {
  const places = tried.flatMap((figure) => {
    const shape = byId.get(figure.region);
    if (shape === undefined) return [];
    const rings = shape.rings.map((ring) => ring.map((point) => pixelOf(pose, size, point)));
    const widths = figure.lines.map(({ words }) => SMALL * measure(words, true));
    return [{ figure, rings, middle: pixelOf(pose, size, figure.at), widths }];
  });
  return placeTried(places, room).map(({ place: { figure, widths }, form, at }) => ({
    id: `${figure.region} ${figure.text}`,
    form,
    lines: figure.lines.map((line, index) => ({ ...line, width: itemAt(widths, index) })),
    at: pointSeenAt(pose, size, at),
    z: 0,
  }));
}

function boxesOf(...placed: readonly (readonly { readonly box: Box }[])[]): Box[] {
  return placed.flat().map(({ box }) => box);
}

/** Figures that something is asked about first, those of larger regions before; then the others in the order of the drawing. */
function textsApart(
  { texts = [], tried = [], seen: { pose, size }, measure }: MarksAsk,
  byId: ReadonlyMap<string, RegionShape>,
) {
  const roomOf = ({ text, at }: DrawnNote) => {
    const figure = tried.find((each) => each.text === text && each.at === at);
    const box = figure && byId.get(figure.region)?.box;
    return box === undefined ? 0 : (box.maxX - box.minX) * (box.maxY - box.minY);
  };
  const all = texts.map((note) => {
    const box = boxOfHung(note, hungOnScreen(note, pose, size), SMALL * measure(note.text, false));
    return { note, box, room: roomOf(note) };
  });
  return keptApart(all.sort((a, b) => b.room - a.room));
}

function numbersOf({ section, cut, plan, seen }: MarksAsk): readonly BandNumber[] {
  if (section === undefined || cut === undefined) return [];
  const { pose, exaggeration } = seen;
  return bandNumbers({ section, cut, stages: plan.stages, pose, exaggeration });
}

function requestOf(shape: RegionShape, ask: MarksAsk): LabelRequest[] {
  const { region } = shape;
  if (region.level === 0 && region.asked.depth === 0) return [];
  const { pose, size } = ask.seen;
  const z = heightOf(region, ask);
  const onScreen = (point: Point) => pixelOf(pose, size, point, z);
  const [x, y] = region.label;
  const nameWidth = ask.measure(region.id, false);
  const { minX, minY, maxX, maxY } = shape.box;
  // Far too small for a name, or out of sight: not worth a polygon.
  const middle = onScreen({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  const half = (Math.hypot(maxX - minX, maxY - minY) / 2) * pose.pixelsPerMm;
  if (2 * half < nameWidth || Math.abs(middle.x - size.width / 2) > size.width / 2 + half) return [];
  if (Math.abs(middle.y - size.height / 2) > size.height / 2 + half) return [];
  return [
    {
      id: region.id,
      rings: shape.rings.map((ring) => ring.map(onScreen)),
      middle: onScreen({ x, y }),
      nameWidth,
      figureWidth: ask.measure(ask.figureOf(region), true),
    },
  ];
}

function heightOf(region: ShownRegion, { seen }: MarksAsk): number {
  return heightAt(region.level * seen.exaggeration, seen);
}

function isFloorSeen(shape: RegionShape | undefined, box: Box, { shapes, seen }: MarksAsk): boolean {
  const corners = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.minX, y: box.maxY },
    { x: box.maxX, y: box.maxY },
  ];
  return corners.every((corner) => pickRegion(shapes, corner, seen).shape === shape);
}

function floorColors({ plan, isRelief, theme, isMasked }: MarksAsk): Map<string, string> {
  const onMasked = wordsOn(isRelief ? theme.land : theme.maskant);
  return new Map(
    plan.stages.flatMap((stage) => {
      const { regions, color } = stage;
      const onBare = isRelief ? wordsOn(color) : lookOf(color, theme).words;
      return regions.map((id) => [id, isMasked?.(stage) === true ? onMasked : onBare] as const);
    }),
  );
}

function placedFindings({ findings, seen }: MarksAsk) {
  const { pose, size } = seen;
  const placed = new Map<
    string,
    { readonly request: FlagRequest; readonly finding: Finding; readonly at: Point }
  >();
  findings.forEach((finding, index) => {
    const { at } = finding.place;
    if (at === undefined || finding.severity === 'note') return;
    // One shape a place, of the most serious: findings come most serious first.
    const key = `${at.x.toFixed(2)} ${at.y.toFixed(2)}`;
    if (!placed.has(key) && placed.size < MOST.findings)
      placed.set(key, { request: { id: `f${index}`, point: pixelOf(pose, size, at) }, finding, at });
  });
  const all = [...placed.values()];
  const flags = placeFlags(
    all.map(({ request }) => request),
    { ...size, taken: [], ...FINDING },
  );
  return flags.flatMap((flag) => {
    const of = all.find(({ request }) => request.id === flag.id);
    if (of === undefined) return [];
    return [{ ...held(flag, of.at), box: flag.box, finding: of.finding }];
  });
}

/** On their bands. */
function placedEdges({ edges = [], seen: { pose, size }, measure, lined }: MarksAsk, room: EdgeRoom) {
  const banded = edges.filter(({ lines }) => lines !== undefined).slice(0, MOST.edges);
  if (banded.length === 0) return [];
  const segmentsOf = (line: Contour) => {
    const points = contourPoints(line).map((point) => pixelOf(pose, size, point));
    return points.flatMap((to, index) => {
      const from = points[index - 1] ?? (line.closed ? points.at(-1) : undefined);
      return from === undefined ? [] : [{ from, to }];
    });
  };
  const requests = banded.map(({ index, at, says, lines = [] }) => ({
    id: `e${index}`,
    wanted: pixelOf(pose, size, at),
    lines: lines.map(segmentsOf),
    width: measure(says, true),
  }));
  const marks = markBoxes(lined, (at) => pixelOf(pose, size, at), pose.pixelsPerMm);
  return placeEdges(requests, { ...room, taken: [...room.taken, ...marks] }).flatMap(({ id, at, box }) => {
    const of = banded.find(({ index }) => id === `e${index}`);
    const off = { x: 0, y: 0 };
    return of === undefined ? [] : [{ id, at: pointSeenAt(pose, size, at), z: 0, off, box, says: of.says }];
  });
}

/** Beside the places that they speak of. */
function placedWords({ edges = [], seen: { pose, size } }: MarksAsk, taken: readonly Box[]) {
  const flags = placeFlags(
    edges
      .filter(({ lines }) => lines === undefined)
      .slice(0, MOST.edges)
      .map(({ index, at }) => ({ id: `e${index}`, point: pixelOf(pose, size, at) })),
    { ...size, taken, ...EDGE },
  );
  return flags.flatMap((flag) => {
    const of = edges.find(({ index }) => flag.id === `e${index}`);
    return of === undefined ? [] : [{ ...held(flag, of.at), box: flag.box, says: of.says }];
  });
}

function placedTags(ask: MarksAsk, taken: readonly Box[]) {
  const { pose, size } = ask.seen;
  const all: { readonly request: FlagRequest; readonly at: Point; readonly stage: ShownStage }[] = [];
  for (const stage of ask.lined) {
    stage.lines.forEach((line, index) => {
      if (all.length >= MOST.tags) return;
      const at = placeOfTag(line, stage.number, pose.pixelsPerMm);
      if (at === undefined) return;
      const point = pixelOf(pose, size, at);
      const isSeen = point.x > 0 && point.y > 0 && point.x < size.width && point.y < size.height;
      if (isSeen) all.push({ request: { id: `t${stage.number} ${index}`, point }, at, stage });
    });
  }
  const flags = placeFlags(
    all.map(({ request }) => request),
    { ...size, taken, ...TAG },
  );
  return flags.flatMap((flag) => {
    const of = all.find(({ request }) => request.id === flag.id);
    return of === undefined ? [] : [{ ...held(flag, of.at), stage: of.stage }];
  });
}

function held(flag: { readonly id: string; readonly at: Point; readonly point: Point }, at: Point): FlagMark {
  return { id: flag.id, at, z: 0, off: { x: flag.at.x - flag.point.x, y: flag.at.y - flag.point.y } };
}
