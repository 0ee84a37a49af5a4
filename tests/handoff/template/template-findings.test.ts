/** Choices that make no template, or none that holds: each is reported, and there is no file. */
import { describe, expect, test } from 'vitest';
import type { FindingCode } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import type { Point } from '#geometry/point.ts';
import { arcSpan, type Loop, lineSpan, type Path, type Span } from '#geometry/span.ts';
import { checkPaper } from '#handoff/template/template-files.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { makePlan } from '#plan/make-plan.ts';
import { circle, rectangle } from '#support/geometry/shapes.ts';
import { type GivenTemplate, templateOf } from '#support/handoff/template-of.ts';
import { plainJob } from '#support/jobs/plain-job.ts';
import { askedAt, partOf } from '#support/parts/part-of.ts';

/** A lid with one pocket, 2 deep: its scribe line is the outline drawn in by 2 mm. */
const lid = (outline: Loop, at: readonly [number, number], sheet = rectangle(0, 0, 200, 120)) => {
  const part = partOf({ sheet, outlines: [outline] });
  return makePlan({ part, asked: askedAt(part, [[...at, 2]]), job: plainJob() });
};

const square = () => lid(rectangle(20, 20, 120, 80), [50, 50]);

/** The only finding, of the code, and no templates with it. */
function reported<Code extends FindingCode>(code: Code, plan = square(), given: GivenTemplate = undefined) {
  const { set, findings } = templateOf(plan, given);
  expect(findings.map((each) => each.code)).toEqual([code]);
  expect(set).toBeUndefined();
  const [first] = findings;
  if (first === undefined) throw new Error('reported');
  expect(sayFinding(first).reason.length).toBeGreaterThan(40);
  return { facts: first.facts, place: first.place };
}

describe('no template', () => {
  test('template-bridge-no-room: a line of 4 × 4 has no two bridges of 5, but two of 1.25 clear by 1', () => {
    const { facts, place } = reported('template-bridge-no-room', lid(rectangle(20, 20, 28, 28), [24, 24]));
    expect(facts).toMatchObject({ lines: 1, isClosed: true, width: 5, clear: 4 });
    // Sides of 4 mm: 2 · clear + width may be 4 at most, so 13 · share may.
    expect(facts).toMatchObject({ fits: undefined, fitsBoth: { width: 1.25, clear: 1 } });
    expect(place.at?.x).toBeGreaterThan(21);
    const { set } = templateOf(lid(rectangle(20, 20, 28, 28), [24, 24]), {
      bridge: { width: 1.25, clear: 1 },
    });
    expect(set?.lines[0]?.bridges).toHaveLength(2);
  });

  test('template-bridge-no-room: a bridge wider than the slots that would be left', () => {
    // 304 mm of line: two bridges of 77 leave two slots of 75, shorter than the bridges.
    const { facts } = reported('template-bridge-no-room', square(), { bridge: { width: 77, clear: 1 } });
    expect(facts).toMatchObject({ width: 77, fits: 77 * 0.75 });
  });

  test('template-knife-too-wide: a knife of 6 where webs are 5', () => {
    expect(reported('template-knife-too-wide', square(), { knife: { width: 6 } }).facts).toEqual({
      width: 6,
      web: 5,
    });
    expect(templateOf(square(), { knife: { width: 6 }, web: 6 }).findings).toEqual([]);
  });

  test('template-knife-too-wide comes before any lack of room that so wide a knife causes', () => {
    const round = lid(circle(60, 60, 15), [60, 60]);
    reported('template-knife-too-wide', round, { knife: { width: 9 } });
    reported('template-bridge-no-room', round, { knife: { width: 9 }, web: 9 });
  });

  test('template-margin-too-small: a web of 5 and half a knife do not fit into 5.5', () => {
    const holes = { at: [[150, 60] as [number, number]] };
    expect(reported('template-margin-too-small', square(), { margin: 5.5, holes }).facts).toEqual({
      margin: 5.5,
      least: 5.75,
    });
    // One hole, and no room for pins beside the part.
    expect(templateOf(square(), { margin: 5.75, holes }).findings.map(({ code }) => code)).toEqual([
      'template-fits-two-ways',
    ]);
  });

  test('template-falls-apart: an open line nearly all round a circle of 10, its ends 1.7 mm apart, with no room to break it', () => {
    const ring = arcs({ x: 60, y: 60 }, 10, (350 * Math.PI) / 180);
    const plan = withLine(square(), { closed: false, spans: ring });
    const given = { knife: { width: 4 }, bridge: { width: 25, clear: 1 } };
    expect(reported('template-falls-apart', plan, given).facts).toEqual({ stage: 1, width: 4, web: 5 });
    // With narrower bridges the line is broken, and its halves go to two templates.
    const { set, findings } = templateOf(plan, { knife: { width: 2 } });
    expect(set?.lines[1]?.slots.length).toBeGreaterThan(1);
    expect(findings.map(({ code }) => code)).toEqual(['template-in-several']);
  });

  test('template-paper-too-small: a panel of 6 m takes more than 100 sheets of A4, but not of A3', () => {
    const plan = lid(rectangle(20, 20, 5900, 880), [50, 50], rectangle(0, 0, 6000, 900));
    const { set, findings } = templateOf(plan);
    expect(findings).toEqual([]);
    const [found] = set === undefined ? [] : checkPaper(set);
    expect(found).toMatchObject({
      code: 'template-paper-too-small',
      facts: { paper: 'a4', larger: 'a3', limit: 100 },
    });
    const onA3 = templateOf(plan, { paper: 'a3' }).set;
    expect(onA3 && checkPaper(onA3)).toEqual([]);
  });

  test('tooling-hole-outside: a hole of 6 nearer than 5 to the edge of a margin of 25', () => {
    const at = (x: number): GivenTemplate => ({
      holes: {
        at: [
          [150, 60],
          [x, 60],
        ],
      },
    });
    const { facts, place } = reported('tooling-hole-outside', square(), at(217.5));
    expect(facts).toEqual({ name: 'B', web: 5 });
    expect(place).toMatchObject({ path: 'handoff.template.holes.at[1]', at: { x: 217.5, y: 60 } });
    reported('tooling-hole-outside', square(), at(400));
    expect(templateOf(square(), at(216.9)).findings).toEqual([]);
  });

  test('tooling-hole-on-slot: a hole of 6 needs 3 + 5 from the edge of a slot', () => {
    const at = (x: number): GivenTemplate => ({ holes: { at: [[x, 60]] } });
    // The line runs at x = 118, its slot to 118.75.
    expect(reported('tooling-hole-on-slot', square(), at(126.7)).facts).toEqual({
      name: 'A',
      stage: 1,
      web: 5,
    });
    reported('tooling-hole-on-slot', square(), at(118));
    expect(templateOf(square(), at(126.8)).findings).toEqual([]);
  });

  test('tooling-holes-too-close: holes of 6 less than 11 apart', () => {
    const at = (x: number): GivenTemplate => ({
      holes: {
        at: [
          [150, 60],
          [x, 60],
        ],
      },
    });
    expect(reported('tooling-holes-too-close', square(), at(160.9)).facts).toEqual({
      name: 'B',
      other: 'A',
      web: 5,
    });
    expect(templateOf(square(), at(161.1)).findings).toEqual([]);
  });
});

test('template-line-by-hand: an open line shorter than the knife is wide is reported, and the template made', () => {
  const stub = lineSpan({ x: 118, y: 50 }, { x: 119, y: 50 });
  const { set, findings } = templateOf(withLine(square(), { closed: false, spans: [stub] }));
  expect(findings).toMatchObject([
    {
      code: 'template-line-by-hand',
      facts: { lines: 1, longest: 1, width: 1.5 },
      place: { at: { x: 118.5, y: 50 } },
    },
  ]);
  expect(set?.templates).toHaveLength(1);
  expect(set?.lines[1]).toMatchObject({ slots: [], bridges: [{ from: 0, to: 1 }] });
});

/** Two arcs of half the sweep each, from the right. */
function arcs(center: Point, radius: number, sweep: number): Span[] {
  return [0, 1].map((half) => arcSpan({ center, radius, from: (half * sweep) / 2, sweep: sweep / 2 }));
}

/** The plan with one more line in its first stage. */
function withLine(plan: EtchPlan, line: Path): EtchPlan {
  return {
    ...plan,
    stages: plan.stages.map((stage, index) =>
      index === 0 ? { ...stage, lines: [...stage.lines, line] } : stage,
    ),
  };
}
