/** What keeps a template from being made or from staying in one piece, and what its maker should know. */
import { type Finding, finding, type Place } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import { distance, type Point } from '#geometry/point.ts';
import { distanceToSpan, type Loop, pointAlong, type Span } from '#geometry/span.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import { isNearItself } from './is-near-itself.ts';
import { layLine } from './lay-line.ts';
import type { LineMeets } from './line-meets.ts';
import type { NearSlots } from './near-slots.ts';
import { patternMisfit } from './pattern-misfit.ts';
import type { RuledLine, Slot, SlotBand, TemplateSet } from './template-set.ts';
import type { ToolingHole } from './tooling-holes.ts';

interface Judged {
  readonly set: TemplateSet;
  /** Of all templates, as `near` numbers them. */
  readonly slots: readonly Slot[];
  readonly near: readonly NearSlots[];
}

/** What is wrong; where nothing is, what is worth knowing. */
export function checkTemplates(judged: Judged): Finding[] {
  const wrong = [...checkPieces(judged), ...checkHoles(judged)];
  return wrong.length > 0
    ? wrong
    : [
        ...countFindings(judged),
        ...byHandFindings(judged.set),
        ...findUnmarked(judged.set),
        ...findTwoWays(judged.set),
      ];
}

/** Choices that contradict each other, whatever the lines. */
export function checkWidths(choices: TemplateChoices, band: SlotBand): Finding[] {
  return [...checkKnife(choices), ...checkMargin(choices, band)];
}

/** Shares of the bridge's width that are tried to find one that would do. */
const NARROWER = [0.75, 0.5, 0.35, 0.25, 0.15, 0.1];

/** Lines on which bridges find no room, reported by the shortest. */
export function noRoomFindings(
  lines: readonly RuledLine[],
  meets: readonly LineMeets[],
  choices: TemplateChoices,
): Finding[] {
  const shortest = lines.reduce(
    (best, { length }, index) => (length < itemAt(lines, best).length ? index : best),
    0,
  );
  const line = itemAt(lines, shortest);
  const { bridge, knife, stretch } = choices;
  const fits = (share: number, clear: number): boolean =>
    lines.every((each, index) => {
      const narrower = { ...bridge, width: bridge.width * share, clear };
      return layLine(each, itemAt(meets, index), { bridge: narrower, knife }) !== undefined;
    });
  const share = NARROWER.find((each) => fits(each, bridge.clear));
  const both = NARROWER.find((each) => fits(each, bridge.clear * each));
  const facts = {
    stage: line.stage.number,
    length: line.length,
    lines: lines.length,
    width: bridge.width,
    apart: bridge.apart,
    clear: bridge.clear,
    isClosed: line.path.closed,
    fits: share === undefined ? undefined : bridge.width * share,
    fitsBoth: both === undefined ? undefined : { width: bridge.width * both, clear: bridge.clear * both },
  };
  return [finding('template-bridge-no-room', facts, placeOn(line.path.spans, stretch))];
}

function placeOn(spans: readonly Span[], stretch: TemplateChoices['stretch']): Place {
  const span = spans[Math.floor(spans.length / 2)];
  if (span === undefined) return {};
  return { at: onPart(pointAlong(span, 0.5), stretch) };
}

function onPart({ x, y }: Point, stretch: TemplateChoices['stretch']): Point {
  return { x: x / stretch.x, y: y / stretch.y };
}

/** A knife wider than the web: what stands between two slots would be thinner than what is taken out of them. */
function checkKnife({ knife, web }: TemplateChoices): Finding[] {
  return knife.width > web ? [finding('template-knife-too-wide', { width: knife.width, web })] : [];
}

/** Lines lie on the part, up to its edge: from there on the margin holds. */
function checkMargin({ margin, web }: TemplateChoices, band: SlotBand): Finding[] {
  const least = web + band.reach;
  return margin < least ? [finding('template-margin-too-small', { margin, least })] : [];
}

/** A slot with more than one edge encloses a piece, which falls out; one that comes back to itself, a piece that hangs by little. */
function checkPieces({ set, slots }: Judged): Finding[] {
  const { choices } = set.input;
  const { band } = set;
  return slots
    .filter(({ outline, spans }) => outline.length !== 1 || isNearItself(spans, { web: choices.web, band }))
    .slice(0, 1)
    .map(({ spans, stage }) =>
      finding(
        'template-falls-apart',
        { stage: stage.number, width: choices.knife.width, web: choices.web },
        placeOn(spans, choices.stretch),
      ),
    );
}

function checkHoles({ set, slots }: Judged): Finding[] {
  const { sheet, input } = set;
  const { web, stretch, holes } = input.choices;
  const boxes = indexBoxes(slots.map(({ outline }) => boxOfSpans(outline.flat())));
  return sheet.holes.flatMap((hole, index): Finding[] => {
    const place = { at: onPart(hole.center, stretch), ...(holes.at === undefined ? {} : pathOf(index)) };
    const { name, center, radius } = hole;
    if (!isInsideLoops([sheet.outline], center) || gapTo(sheet.outline, hole) < web) {
      return [finding('tooling-hole-outside', { name, web }, place)];
    }
    const other = sheet.holes
      .slice(0, index)
      .find((each) => distance(each.center, center) - each.radius - radius < web);
    if (other !== undefined)
      return [finding('tooling-holes-too-close', { name, other: other.name, web }, place)];
    const around = growBox({ minX: center.x, minY: center.y, maxX: center.x, maxY: center.y }, radius + web);
    const hit = boxes.meeting(around).find((slot) => {
      const { outline } = itemAt(slots, slot);
      return isInsideLoops(outline, center) || gapTo(outline.flat(), hole) < web;
    });
    if (hit === undefined) return [];
    return [finding('tooling-hole-on-slot', { name, web, stage: itemAt(slots, hit).stage.number }, place)];
  });
}

function pathOf(index: number): Place {
  return { path: `handoff.template.holes.at[${index}]` };
}

function gapTo(loop: Loop, { center, radius }: ToolingHole): number {
  return (
    loop.reduce((least, span) => Math.min(least, distanceToSpan(span, center)), Number.POSITIVE_INFINITY) -
    radius
  );
}

/** More than one template, and not only for there being more than one coat: how near the slots come, and whether fewer could do. */
function countFindings({ set, slots, near }: Judged): Finding[] {
  const { templates, least, input } = set;
  const [first] = near;
  if (templates.length < 2 || first === undefined) return [];
  const closest = near.reduce((best, each) => (each.gap < best.gap ? each : best), first);
  const facts = { templates: templates.length, least, gap: closest.gap, web: input.choices.web };
  const [slot] = closest.pair;
  return [finding('template-in-several', facts, placeOn(itemAt(slots, slot).spans, input.choices.stretch))];
}

/** Lines too short for any slot. */
function byHandFindings({ lines, input }: TemplateSet): Finding[] {
  const without = lines.filter(({ slots }) => slots.length === 0);
  const [first] = without;
  if (first === undefined) return [];
  const longest = Math.max(...without.map(({ line }) => line.length));
  return [
    finding(
      'template-line-by-hand',
      { lines: without.length, longest, width: input.choices.knife.width },
      placeOn(first.line.path.spans, input.choices.stretch),
    ),
  ];
}

/** mm that every wrong way of laying is off at one hole at least. */
const LEAST_MISFIT = 5;

function findTwoWays({ sheet }: TemplateSet): Finding[] {
  const { holes } = sheet;
  const misfit = patternMisfit(holes.map(({ center }) => center));
  if (misfit >= LEAST_MISFIT) return [];
  return [finding('template-fits-two-ways', { holes: holes.length, misfit, limit: LEAST_MISFIT })];
}

/** Slots beside which neither ticks nor a number have room. */
function findUnmarked({ templates, marks, input }: TemplateSet): Finding[] {
  const unmarked = templates.flatMap((slots, template) =>
    slots.filter((_, slot) => {
      const { lines, texts } = itemAt(itemAt(marks, template), slot);
      return lines.length + texts.length === 0;
    }),
  );
  const [first] = unmarked;
  if (first === undefined) return [];
  const facts = { slots: unmarked.length, stage: first.stage.number };
  return [finding('template-mark-no-room', facts, placeOn(first.spans, input.choices.stretch))];
}
