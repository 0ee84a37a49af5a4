import { describe, expect, it } from 'vitest';
import { finding } from '#findings/finding.ts';
import { CAUTIONS, cautionsFor } from '#handoff/cautions.ts';
import { jsonText } from '#handoff/json-text.ts';
import { makePlanFile, type PlanFileInput } from '#handoff/make-plan-file.ts';
import { plainJob, plainJobFile } from '#support/jobs/plain-job.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const reached = { floorArea: 1, share: 0.9, deepest: 2.5, shallowest: 0 };

function input(special: Partial<PlanFileInput> = {}): PlanFileInput {
  return {
    job: plainJobFile,
    drawing: { file: 'lid.dxf', sha256: '00', unit: 'mm' },
    plan: handMadePlan,
    measures: {
      stages: [{ removedVolume: 1000 }, { removedVolume: 500 }],
      regions: new Map([
        ['R01', reached],
        ['R02', reached],
      ]),
    },
    metal: { density: 2.78, hydrogenLitresPerGram: 1.246, sheetVolume: 120 * 80 * 4 },
    findings: [],
    provenance: [],
    cautions: CAUTIONS,
    ...special,
  };
}

describe('plan.json', () => {
  const plan = makePlanFile(input());

  it('weighs what is removed and what is left: 1500 mm³ at 2.78 g/cm³ of a 120 × 80 × 4 plate', () => {
    expect(plan.stages.map(({ removedMass }) => removedMass)).toEqual([2.78, 1.39]);
    expect(plan.totals.removedMass).toBeCloseTo(4.17, 9);
    expect(plan.totals.partMass).toBeCloseTo(120 * 80 * 4 * 0.00278 - 4.17, 6);
    // Derived from standard atomic weights: 1 kg of aluminium gives 1.246 m³ of hydrogen at 0 °C.
    expect(plan.totals.hydrogenLitres).toBeCloseTo(4.17 * 1.246, 5);
  });

  it('writes null, not zero, where a figure is not known', () => {
    const bare = makePlanFile(
      input({
        metal: { density: undefined, hydrogenLitresPerGram: undefined, sheetVolume: undefined },
        plan: { ...handMadePlan, sheet: [] },
      }),
    );
    expect(bare.totals).toMatchObject({ removedMass: null, partMass: null, hydrogenLitres: null });
    expect(bare.outline).toBeNull();
  });

  it('names the stages whose lines are still sealed', () => {
    expect(plan.stages.map(({ sealed }) => sealed)).toEqual([[2], []]);
  });

  it('does not call a stage sealed that has no lines of its own', () => {
    const stages = handMadePlan.stages.map((stage) => (stage.number === 2 ? { ...stage, lines: [] } : stage));
    const { stages: reported } = makePlanFile(input({ plan: { ...handMadePlan, stages } }));
    expect(reported.map(({ sealed }) => sealed)).toEqual([[], []]);
  });

  it('gives a circle as two half turns, an open line with its end', () => {
    expect(plan.stages[0]?.lines[0]).toEqual({
      closed: true,
      vertices: [
        [42.5, 40, 1],
        [17.5, 40, 1],
      ],
    });
    const open = plan.stages[1]?.lines[1];
    expect(open?.closed).toBe(false);
    expect(open?.vertices.at(-1)).toEqual([100, 65, 0]);
    // A quarter turn to the right: −tan(90° / 4).
    expect(open?.vertices[1]?.[2]).toBeCloseTo(-Math.tan(Math.PI / 8), 11);
  });

  it('puts findings into words with place and figures', () => {
    const { findings } = makePlanFile(
      input({
        findings: [
          finding('opening-missing', { depth: 2, allowance: 2 }, { at: { x: 1, y: -0 }, regions: ['R01'] }),
        ],
      }),
    );
    expect(findings[0]).toMatchObject({
      code: 'opening-missing',
      severity: 'stop',
      at: [1, 0],
      regions: ['R01'],
    });
    expect(findings[0]?.message).not.toBe('');
  });

  it('warns of hydrofluoric acid unless the bath is known to be caustic soda', () => {
    const { process } = plainJob();
    const caustic = cautionsFor({ ...process, reaction: 'aluminium in caustic soda' });
    expect(caustic.join(' ')).not.toMatch(/hydrofluoric/i);
    expect(caustic).toHaveLength(CAUTIONS.length - 1);
    for (const bath of [undefined, 'acid-nickel', 'hydrofluoric-nitric-titanium']) {
      const { reaction: _, ...unknown } = process;
      expect(cautionsFor({ ...unknown, bath }).join(' ')).toMatch(/hydrofluoric/i);
    }
  });

  it('always carries the cautions, and no −0 or surplus digit', () => {
    expect(plan.cautions.join(' ')).toMatch(/not an approval[\s\S]*burns[\s\S]*hydrofluoric/i);
    const text = jsonText(plan);
    expect(text).not.toMatch(/-0[,\]\s]/);
    expect(text).not.toMatch(/\d\.\d{13}/);
  });
});
