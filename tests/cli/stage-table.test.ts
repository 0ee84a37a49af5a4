import { describe, expect, it } from 'vitest';
import { stageTable } from '#cli/stage-table.ts';
import { makePlanFile } from '#handoff/make-plan-file.ts';
import { expectGolden } from '#support/golden.ts';
import { plainJobFile } from '#support/jobs/plain-job.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const reached = { floorArea: 1, share: 1, deepest: 1, shallowest: 1 };
const planFile = makePlanFile({
  job: plainJobFile,
  drawing: { file: 'lid.dxf', sha256: '', unit: 'mm' },
  plan: handMadePlan,
  measures: {
    stages: [{ removedVolume: 1200 }, { removedVolume: 3400 }],
    regions: new Map(['R01', 'R02'].map((id) => [id, reached])),
  },
  metal: { density: 2.78, hydrogenLitresPerGram: 1.246, sheetVolume: 120 * 80 * 4 },
  findings: [],
  provenance: [],
  cautions: [],
});

describe('the stage table', () => {
  it('lines up its columns, and ends with minutes, metal and gas', () => {
    expectGolden('stage-table.txt', stageTable(planFile, { unit: 'mm', color: false }));
  });

  it('says first what the sheet is sized by', () => {
    const sizing = {
      amount: 0.045,
      faces: 'both',
      minutes: 1.5152,
      edge: 0.0405,
      doubt: 0.02,
      before: { least: 4.02, most: 4.1 },
      after: { least: 3.93, most: 4.01 },
      removedVolume: 2100,
      removedMass: 5.838,
    } as const;
    expectGolden('stage-table-sized.txt', stageTable({ ...planFile, sizing }, { unit: 'mm', color: false }));
    const [inches] = stageTable({ ...planFile, sizing }, { unit: 'in', color: false }).split('\n');
    expect(inches).toContain('0.1583 to 0.1614 → 0.1547 to 0.1579 in');
  });

  it('colours only where colour is shown', () => {
    expect(stageTable(planFile, { unit: 'mm', color: false })).not.toContain('\u001b');
    expect(stageTable(planFile, { unit: 'mm', color: true })).toContain('\u001b[48;2;11;60;93m');
  });

  it('shortens a long list of regions and says how many it leaves out', () => {
    const stages = planFile.stages.map((stage) => ({
      ...stage,
      regions: Array.from({ length: 40 }, (_, index) => `R${index}`),
    }));
    expect(stageTable({ ...planFile, stages }, { unit: 'mm', color: false })).toContain('R7 and 32 more');
  });

  it('of a job in inches has its lengths in inches: level 2.5 mm is 0.0984', () => {
    const [head, first] = stageTable(planFile, { unit: 'in', color: false }).split('\n');
    expect(head).toMatch(/^stage +level in +etch in +peel at min/);
    expect(first).toMatch(/^ +1 +0\.0984 /);
  });
});
