/** Marks beside slots: whole, and read as the stage that they stand for. Distances by JSTS (tests/oracle/cut-sheet.ts). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayFinding } from '#findings/say-finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Span } from '#geometry/span.ts';

import type { TemplateSet } from '#handoff/template/template-set.ts';
import { circleOf } from '#handoff/template/template-sheet.ts';
import { lineOf, polygonOf } from '#oracle/cut-sheet.ts';
import type { Geometry } from '#oracle/jsts.ts';
import { makePlan } from '#plan/make-plan.ts';
import { polygon, rectangle } from '#support/geometry/shapes.ts';
import { tessellate } from '#support/geometry/tessellate.ts';
import { type GivenTemplate, templateOf } from '#support/handoff/template-of.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';
import { planOf, randomPart } from '#support/random-parts/random-part.ts';
import { trials } from '#support/seeds/property-runs.ts';

const SAG = 0.002;
/** mm between a tick and a slot's edge, as docs/files.md says; the sag of the judge's chords goes off. */
const CLEAR = 0.5 - 2 * SAG;

interface Drawn {
  readonly stage: number;
  readonly ticks: readonly Geometry[];
  readonly words: readonly Geometry[];
}

/** The marks of a template's slots, as JSTS sees them. */
function drawnMarks(set: TemplateSet, number: number): Drawn[] {
  const slots = itemAt(set.templates, number - 1);
  return itemAt(set.marks, number - 1).map(({ lines, texts }, index) => ({
    stage: itemAt(slots, index).stage.number,
    ticks: lines.flatMap(({ path }) => path.spans.map(lineSeen)),
    words: texts.map(({ at, height, text }) => {
      const box = rectangle(at.x, at.y, at.x + height * text.length, at.y + height);
      return polygonOf(tessellate(box, SAG));
    }),
  }));
}

function lineSeen({ start, end }: Span): Geometry {
  return lineOf([
    [start.x, start.y],
    [end.x, end.y],
  ]);
}

/** Marks that do not say their stage, or run into something. */
function markFaults(set: TemplateSet): string[] {
  return set.templates.flatMap((slots, index) => {
    const marks = drawnMarks(set, index + 1);
    const shut = [...slots.flatMap(({ outline }) => outline), ...set.sheet.holes.map(circleOf)].map((loop) =>
      polygonOf(tessellate(loop, SAG)),
    );
    const sheet = polygonOf(tessellate(set.sheet.outline, SAG));
    return marks.flatMap((mark, at) => [
      ...faultsAlone(mark),
      ...faultsOn(mark, shut, sheet),
      ...marks.slice(0, at).flatMap((other) => {
        const gap = leastGap([...mark.ticks, ...mark.words], [...other.ticks, ...other.words]);
        return gap < 1 - 1e-6 ? [`marks of two slots ${gap} mm apart`] : [];
      }),
    ]);
  });
}

function faultsAlone({ stage, ticks, words }: Drawn): string[] {
  const isTicks = words.length === 0 && ticks.length > 0 && ticks.length % stage === 0;
  const isNumber = words.length === 1 && ticks.length === 0;
  // A slot without room beside it is reported by a finding.
  const isNone = words.length + ticks.length === 0;
  const merged = ticks.slice(1).filter((tick, at) => itemAt(ticks, at).distance(tick) < 0.4 - 1e-6);
  return [
    ...(isTicks || isNumber || isNone
      ? []
      : [`${ticks.length} ticks, ${words.length} numbers for stage ${stage}`]),
    ...merged.map(() => 'two ticks that run together'),
  ];
}

function faultsOn({ stage, ticks, words }: Drawn, shut: readonly Geometry[], sheet: Geometry): string[] {
  const near = ticks.map((tick) => leastGap([tick], shut)).filter((gap) => gap < CLEAR);
  return [
    ...near.map((gap) => `a tick of stage ${stage} ${gap} mm from a slot or hole`),
    ...ticks.filter((tick) => tick.difference(sheet).getLength() > 0).map(() => 'a tick off the sheet'),
    ...words.filter((word) => leastGap([word], shut) < CLEAR / 2).map(() => 'a number on a slot'),
  ];
}

function leastGap(some: readonly Geometry[], others: readonly Geometry[]): number {
  return Math.min(...some.flatMap((one) => others.map((other) => one.distance(other))));
}

/** An L of three steps, so that the line round its inside corner is stage 3. */
function threeStepsInL({ wide, high }: { readonly wide: number; readonly high: number }) {
  const shape = polygon([
    [0, 0],
    [100, 0],
    [100, high],
    [wide, high],
    [wide, 90],
    [0, 90],
  ]);
  const part = partOf({
    sheet: rectangle(-30, -30, 130, 120),
    outlines: [shape, rectangle(4, 4.5, 35, 28), rectangle(9, 9.5, 29, 24)],
  });
  const asked = askedAt(part, [
    [15, 16, 3],
    [5, 6, 2.3],
    [3, 50, 1.4],
  ]);
  return makePlan({ part, asked, job: plainJob() });
}

describe('the marks of slots', () => {
  test('corner-in-the-mark: round an inside corner all three ticks of stage 3 are to be seen, and none lies in the slot', {
    tags: ['long'],
  }, () => {
    for (const [wide, high] of [
      [41, 37],
      [43, 44],
      [38, 29],
    ] as const) {
      for (const apart of [41, 56, 73, 100]) {
        const given = { bridge: { apart, width: 3, clear: 3 }, web: 4.5, knife: { width: 1 } };
        const { set, findings } = templateOf(threeStepsInL({ wide, high }), given);
        expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
        expect(set && markFaults(set)).toEqual([]);
      }
    }
  });

  test('thin-land: marks from both sides of a land as wide as the web do not run into each other', {
    tags: ['long'],
  }, () => {
    for (const high of [31, 43, 55, 67, 79]) {
      const part = partOf({
        sheet: rectangle(0, 0, 120, 12 + high + 12),
        outlines: [rectangle(10, 12, 55, 12 + high), rectangle(55.9, 12, 100.9, 12 + high)],
      });
      const asked = askedAt(part, [
        [30, 30, 2],
        [80, 30, 2],
      ]);
      // Lines 0.9 + 2 · 2 = 4.9 apart and slots of 0.6 leave 4.3 of land, 0.1 more than 2 · (0.5 + 1.6) for ticks face to face.
      const plan = makePlan({ part, asked, job: plainJob() });
      for (const apart of [23, 31, 47, 90]) {
        const { set } = templateOf(plan, { web: 4, knife: { width: 0.6 }, bridge: { apart } });
        expect(set?.templates).toHaveLength(1);
        expect(set && markFaults(set)).toEqual([]);
      }
    }
  });

  test('template-mark-no-room: a land of 0.8 mm left between two slots takes neither ticks nor number, and that is reported', () => {
    const part = partOf({
      sheet: rectangle(0, 0, 120, 90),
      outlines: [rectangle(10, 12, 55, 77), rectangle(55.6, 12, 108, 77)],
    });
    const asked = askedAt(part, [
      [30, 30, 0.3],
      [80, 30, 0.3],
    ]);
    // Lines 0.6 + 2 · 0.3 = 1.2 apart, slots of 0.4: what clears one slot by 0.5 stands 0.3 from the other,
    // and bridges of 0.8 leave no gap to stand in either.
    const { set, findings } = templateOf(makePlan({ part, asked, job: plainJob() }), {
      knife: { width: 0.4 },
      web: 0.75,
      bridge: { width: 0.8, clear: 1, apart: 23 },
    });
    expect(set && markFaults(set)).toEqual([]);
    const bare = set?.marks.flat().filter(({ lines, texts }) => lines.length + texts.length === 0) ?? [];
    expect(bare.length).toBeGreaterThan(0);
    const [reported] = findings;
    expect(reported).toMatchObject({
      code: 'template-mark-no-room',
      severity: 'note',
      facts: { slots: bare.length, stage: 1 },
    });
    // On one of the two lines along the land, x 54.7 and 55.9.
    expect(
      Math.min(Math.abs((reported?.place.at?.x ?? 0) - 54.7), Math.abs((reported?.place.at?.x ?? 0) - 55.9)),
    ).toBeLessThan(1e-6);
    if (reported !== undefined) expect(sayFinding(reported).reason).toMatch(/^Beside .*stage 1/);
  });

  test.each([0.7, 1.2, 5])(
    'of any part are whole and outside every slot, with webs of %f mm (JSTS)',
    { tags: ['long'], timeout: 60_000 * trials(1) },
    (web) => {
      const given: GivenTemplate = {
        knife: { width: 0.6 },
        bridge: { width: 1.5, apart: 20, clear: 0.8 },
        web,
        margin: 8 + 2 * web,
        holes: { diameter: 3 },
      };
      let marks = 0;
      let unmarked = 0;
      fc.assert(
        fc.property(randomPart, (random) => {
          const { set, findings } = templateOf(planOf(random), given);
          if (set === undefined) return;
          const drawn = set.marks.flat();
          const bare = drawn.filter(({ lines, texts }) => lines.length + texts.length === 0).length;
          marks += drawn.length;
          unmarked += bare;
          expect(markFaults(set)).toEqual([]);
          const slots = findings.flatMap(({ code, facts }) =>
            code === 'template-mark-no-room' ? [facts] : [],
          );
          expect(slots).toMatchObject(bare === 0 ? [] : [{ slots: bare }]);
        }),
        { numRuns: trials(30), interruptAfterTimeLimit: 45_000 * trials(1) },
      );
      expect(marks).toBeGreaterThan(60);
      expect(unmarked / marks).toBeLessThan(0.003);
    },
  );
});
