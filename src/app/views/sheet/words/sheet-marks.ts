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
import { ALWAYS_MARKED, markBoxes, placeOfTag } from './mark-places.ts';
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
  const requests: LabelRequest[] = [];
  const byId = shapesOfTried(ask);
  for (const shape of ask.shapes) {
    const request = requestOf(shape, ask);
    if (request === undefined) continue;
    requests.push(request);
    byId.set(request.id, shape);
  }
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
        color: floorColor(id, ask),
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

/** Regions that figures are tried on; few, and found among many. */
function shapesOfTried({ shapes, tried = [] }: MarksAsk): Map<string, RegionShape> {
  if (tried.length === 0) return new Map();
  const wanted = new Set(tried.map(({ region }) => region));
  return new Map(
    shapes.filter(({ region }) => wanted.has(region.id)).map((shape) => [shape.region.id, shape]),
  );
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

/** Of a letter or figure in a name, px at the least. */
const NARROWEST = 3;

function requestOf(shape: RegionShape, ask: MarksAsk): LabelRequest | undefined {
  const { region } = shape;
  if (region.level === 0 && region.asked.depth === 0) return undefined;
  const { pose, size } = ask.seen;
  const { minX, minY, maxX, maxY } = shape.box;
  const half = (Math.hypot(maxX - minX, maxY - minY) / 2) * pose.pixelsPerMm;
  // Far too small for a name, or out of sight: not worth measuring, nor a polygon.
  if (2 * half < NARROWEST * region.id.length) return undefined;
  const z = heightOf(region, ask);
  const onScreen = (point: Point) => pixelOf(pose, size, point, z);
  const [x, y] = region.label;
  const middle = onScreen({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  if (Math.abs(middle.x - size.width / 2) > size.width / 2 + half) return undefined;
  if (Math.abs(middle.y - size.height / 2) > size.height / 2 + half) return undefined;
  const nameWidth = ask.measure(region.id, false);
  if (2 * half < nameWidth) return undefined;
  return {
    id: region.id,
    rings: shape.rings.map((ring) => ring.map(onScreen)),
    middle: onScreen({ x, y }),
    nameWidth,
    figureWidth: ask.measure(ask.figureOf(region), true),
  };
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

/** Of words on a region's floor. */
function floorColor(id: string, { plan, isRelief, theme, isMasked }: MarksAsk): string {
  const stage = plan.stages.findLast(({ regions }) => regions.includes(id));
  if (stage === undefined) return wordsOn(theme.land);
  if (isMasked?.(stage) === true) return wordsOn(isRelief ? theme.land : theme.maskant);
  return isRelief ? wordsOn(stage.color) : lookOf(stage.color, theme).words;
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
      if (all.length >= MOST.tags || !isNearView(line, ask.seen)) return;
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

/** Whether a line short enough to be tagged can be seen: it then begins no farther from the view than it is long. */
function isNearView({ vertices: [first] }: Contour, { pose, size }: Seen): boolean {
  if (first === undefined) return false;
  const { x, y } = pixelOf(pose, size, { x: first[0], y: first[1] });
  const [farX, farY] = [Math.abs(x - size.width / 2), Math.abs(y - size.height / 2)];
  return farX < size.width / 2 + ALWAYS_MARKED && farY < size.height / 2 + ALWAYS_MARKED;
}

function held(flag: { readonly id: string; readonly at: Point; readonly point: Point }, at: Point): FlagMark {
  return { id: flag.id, at, z: 0, off: { x: flag.at.x - flag.point.x, y: flag.at.y - flag.point.y } };
}
