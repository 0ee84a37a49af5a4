/**
 * All words and shapes that lie on the sheet at one pose: names with figures, findings at their places, tags of lines too short for
 * their mark. Each is kept by its place of the sheet, so that it stays there while the view moves.
 */
import { MARK } from '#app/scene/line-looks.ts';
import { groupMiddles } from '#app/scene/mark-groups.ts';
import { heightAt, pickRegion, type Seen } from '#app/scene/pick-region.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf, wordsOn } from '#app/scene/stage-looks.ts';
import { pixelOf, pointSeenAt } from '#app/scene/view-pose.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { SectionLine } from '#app/state/workbench-state.ts';
import type { DrawnNote } from '#drawing/drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import { pointAlong, spanLength } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownPlan, ShownRegion, ShownStage } from '#job/formats/plan-file.ts';
import type { Section } from '#run/section-job.ts';
import { type BandNumber, bandNumbers } from './band-numbers.ts';
import { boxOfHung, hungOnScreen } from './hung-on-screen.ts';
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
  /** Drawn edges whose bands are on show, and what each says. */
  readonly edges?: readonly { readonly index: number; readonly at: Point; readonly says: string }[];
  /** Stages whose lines are drawn. */
  readonly lined: readonly ShownStage[];
  /** The drawing's own, where they are shown. */
  readonly texts?: readonly DrawnNote[];
  /** What figures of the drawing would give. */
  readonly tried?: readonly TriedFigure[];
  /** Whether floors of the stage still lie under the maskant; where it is left out none does. */
  readonly isMasked?: (stage: ShownStage) => boolean;
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
  /** On the cut face of the relief. */
  readonly numbers: readonly BandNumber[];
}

export const NO_MARKS: SheetMarks = {
  names: [],
  findings: [],
  tags: [],
  edges: [],
  tried: [],
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
  const texts = isRelief ? [] : textBoxes(ask);
  const edges = isRelief ? [] : placedEdges(ask, [...findings.map(({ box }) => box), ...texts]);
  const taken = [...[...findings, ...edges].map(({ box }) => box), ...texts];
  const placed = placeLabels(requests, {
    width,
    height,
    taken,
    lines,
    ...(isRelief ? { isSeenIn: (id, box) => isFloorSeen(byId.get(id), box, ask) } : {}),
  });
  const tags = isRelief ? [] : placedTags(ask, [...taken, ...placed.map(({ box }) => box)]);
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
    edges,
    tags,
    tried: isRelief
      ? []
      : placedTried(ask, byId, { width, height, taken: [...taken, ...placed.map(({ box }) => box)], lines }),
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

/** What the drawing's own texts take of the sheet. */
function textBoxes({ texts = [], seen: { pose, size }, measure }: MarksAsk): Box[] {
  return texts.map((note) =>
    boxOfHung(note, hungOnScreen(note, pose, size), SMALL * measure(note.text, false)),
  );
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

function placedEdges({ edges = [], seen: { pose, size } }: MarksAsk, taken: readonly Box[]) {
  const flags = placeFlags(
    edges.slice(0, MOST.edges).map(({ index, at }) => ({ id: `e${index}`, point: pixelOf(pose, size, at) })),
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

/** Lines longer than this carry any mark somewhere, px. */
const ALWAYS_MARKED = 260;

/** Where a tag points: the middle of a line that has no room for its mark. */
function placeOfTag(line: Contour, stage: number, pixelsPerMm: number): Point | undefined {
  const path = pathOfContour(line);
  const lengths = path.spans.map(spanLength);
  const length = lengths.reduce((sum, each) => sum + each, 0);
  if (length * pixelsPerMm > ALWAYS_MARKED) return undefined;
  const ask = { stage, pixelsPerMm, pitch: MARK.pitch, every: MARK.every };
  if (groupMiddles(path, ask).length > 0) return undefined;
  let left = length / 2;
  for (const [index, span] of path.spans.entries()) {
    const own = itemAt(lengths, index);
    if (left <= own) return pointAlong(span, own === 0 ? 0 : left / own);
    left -= own;
  }
  return undefined;
}

function held(flag: { readonly id: string; readonly at: Point; readonly point: Point }, at: Point): FlagMark {
  return { id: flag.id, at, z: 0, off: { x: flag.at.x - flag.point.x, y: flag.at.y - flag.point.y } };
}
