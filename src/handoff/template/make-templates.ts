/**
 * The scribe templates of a plan: slots along every scribe line, held by bridges, shared out so that no two slots of a template
 * are nearer than the web, on sheets with tooling holes.
 *
 * A template stays in one piece. Its slots lie apart from each other, from the holes and from the sheet's edge by the web or
 * more (two on one line, by the bridge between them), and none encloses anything, for each has one edge all round; cutting such a
 * slot out of a sheet in one piece leaves it in one piece. What does not keep to that is reported, and there is no template.
 */
import type { Finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { type Span, spansLength } from '#geometry/span.ts';
import { stretchPoint, stretchSpans } from '#geometry/spans/stretch-spans.ts';
import { stagesPastEdge } from '#handoff/run-over-edge.ts';
import { stretchAlong } from '#handoff/stretch-along.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import { checkTemplates, checkWidths, noRoomFindings } from './check-templates.ts';
import { isNearItself } from './is-near-itself.ts';
import { layLine } from './lay-line.ts';
import { type LineMeets, lineMeets } from './line-meets.ts';
import { type Joined, nearSlots } from './near-slots.ts';
import { regionNames } from './region-names.ts';
import { type Sharing, shareOut } from './share-out.ts';
import { slotMarks } from './slot-marks.ts';
import { slotOutline } from './slot-outline.ts';
import { labelSize } from './template-label.ts';
import {
  type LaidLine,
  type RuledLine,
  type Slot,
  type SlotBand,
  slotBand,
  type TemplateInput,
  type TemplateSet,
} from './template-set.ts';
import { templateSheet } from './template-sheet.ts';
import { templateGrid } from './template-tiles.ts';

/** Findings that are no notes stand in place of the templates. */
export function makeTemplates(asked: TemplateInput): {
  readonly set?: TemplateSet;
  readonly findings: readonly Finding[];
} {
  // Stages as the lines of the templates know them: those past the edge are other lines of the same stage.
  const input = {
    ...asked,
    plan: { ...asked.plan, stages: stagesPastEdge(asked.plan, asked.overrun) },
    overrun: 0,
  };
  const { plan, choices } = input;
  const band = slotBand(choices.knife);
  const wrong = checkWidths(choices, band);
  if (wrong.length > 0) return { findings: wrong };
  const ruled = ruledLines(input);
  const meets = lineMeets(ruled, choices.web + 2 * band.reach);
  const laid = ruled.map((line, index) => laidApart(line, itemAt(meets, index), { choices, band }));
  const lines = laid.flatMap((each) => each ?? []);
  const stuck = ruled.filter((_, index) => laid[index] === undefined);
  if (stuck.length > 0) {
    return {
      findings: noRoomFindings(
        stuck,
        meets.filter((_, index) => laid[index] === undefined),
        choices,
      ),
    };
  }
  const slots = lines.flatMap((each, line) => slotsOf(each, line, band));
  const coatOf = slots.map(({ stage }) => (plan.masking === 're-mask' ? stage.number : 0));
  const near = nearSlots(slots, {
    web: choices.web,
    bridge: choices.bridge.width,
    band,
    joined: bridgesBetween(lines),
  }).filter(({ pair: [a, b] }) => coatOf[a] === coatOf[b]);
  const sharing = shareByCoat(
    coatOf,
    near.map(({ pair }) => pair),
  );
  const sheet = templateSheet({
    sheet: plan.sheet.map((loop) => stretchSpans(loop, choices.stretch)),
    lines: ruled.flatMap(({ path }) => path.spans),
    margin: choices.margin,
    diameter: choices.holes.diameter,
    holes: choices.holes.at?.map((hole) => stretchPoint(hole, choices.stretch)),
    clear: choices.web + band.reach,
    label: (partWidth) => labelSize(input, partWidth),
  });
  const templates = Array.from({ length: sharing.count }, (_, number) =>
    slots.filter((_, slot) => sharing.templates[slot] === number),
  );
  const marked = templates.map((each) => slotMarks({ input, sheet, band }, each));
  const marks = marked.map((each) => each.marks);
  const unnamed = { input, sheet, band, lines, templates, marks, least: sharing.least };
  const names = templates.map((each, index) => {
    const { ground } = itemAt(marked, index);
    return regionNames(input, each, { ground, grid: templateGrid(unnamed, index + 1) });
  });
  const set = { ...unnamed, names };
  const findings = checkTemplates({ set, slots, near });
  return findings.some(({ severity }) => severity !== 'note') ? { findings } : { set, findings };
}

/** Lines of two coats never share a template: it would cut the one coat for the other's stage. */
function shareByCoat(coatOf: readonly number[], pairs: readonly (readonly [number, number])[]): Sharing {
  const templates = coatOf.map(() => 0);
  let count = 0;
  let least = 0;
  for (const coat of new Set(coatOf)) {
    const slots = coatOf.flatMap((each, slot) => (each === coat ? [slot] : []));
    const placeOf = new Map(slots.map((slot, place) => [slot, place]));
    const sharing = shareOut(
      slots.length,
      pairs.flatMap(([a, b]) => {
        const [first, second] = [placeOf.get(a), placeOf.get(b)];
        return first === undefined || second === undefined ? [] : [[first, second] as const];
      }),
    );
    for (const [place, slot] of slots.entries()) templates[slot] = count + itemAt(sharing.templates, place);
    count += sharing.count;
    least += sharing.least;
  }
  return { templates, count, least };
}

function ruledLines({ plan, choices, overrun }: TemplateInput): RuledLine[] {
  return stagesPastEdge(plan, overrun).flatMap((stage) =>
    stage.lines.map(({ closed, spans }): RuledLine => {
      const stretched = stretchSpans(spans, choices.stretch);
      return { stage, path: { closed, spans: stretched }, length: spansLength(stretched) };
    }),
  );
}

/** Halvings of the longest slot, before a slot that comes back to itself is reported. */
const MOST_HALVINGS = 4;

/** With slots so short that none comes back to itself, if that can be had. */
function laidApart(
  line: RuledLine,
  meets: LineMeets,
  { choices, band }: { readonly choices: TemplateChoices; readonly band: SlotBand },
): LaidLine | undefined {
  const { bridge, knife, web } = choices;
  let best: LaidLine | undefined;
  let { apart } = bridge;
  for (let halving = 0; halving <= MOST_HALVINGS; halving++, apart /= 2) {
    const laid = layLine(line, meets, { knife, bridge: { ...bridge, apart } });
    if (laid === undefined) return best;
    best = laid;
    if (stretchesOf(laid).every((spans) => !isNearItself(spans, { web, band }))) return laid;
  }
  return best;
}

function slotsOf(laid: LaidLine, number: number, band: SlotBand): Slot[] {
  return stretchesOf(laid).map((spans) => ({
    line: number,
    stage: laid.line.stage,
    spans,
    outline: slotOutline(spans, band),
  }));
}

/** What of the scribe line each slot follows. */
function stretchesOf({ line, slots }: LaidLine): Span[][] {
  const { closed, spans } = line.path;
  const chain = closed ? [...spans, ...spans] : spans;
  return slots.map((range) => stretchAlong(chain, range));
}

/** At which ends of a slot, numbered through all lines, a bridge leads to another one. */
function bridgesBetween(lines: readonly LaidLine[]): (a: number, b: number) => Joined | undefined {
  const places = lines.flatMap(({ line, slots }, number) =>
    slots.map((_, index) => ({ number, index, count: slots.length, isClosed: line.path.closed })),
  );
  return (a, b) => {
    const [one, other] = [itemAt(places, a), itemAt(places, b)];
    if (one.number !== other.number) return undefined;
    const isNext = (from: number, to: number): boolean =>
      to === from + 1 || (one.isClosed && from === one.count - 1 && to === 0);
    const joined = { start: isNext(other.index, one.index), end: isNext(one.index, other.index) };
    return joined.start || joined.end ? joined : undefined;
  };
}
