/** Figures that the hand-off is made with, and where the plan says that they come from. */
import { describe, expect, test } from 'vitest';
import type { JobFile } from '#job/job-file.ts';
import { handoffProvenance, resolveHandoff } from '#job/resolve/resolve-handoff.ts';

type Template = NonNullable<NonNullable<JobFile['handoff']>['template']>;

/** The margin that a template is made with, and what the plan's provenance says of it. */
function marginOf(template: Template, units: 'mm' | 'in') {
  const jobFile: JobFile = {
    format: 'isobath-job',
    version: 1,
    drawing: 'gondola.dxf',
    units,
    stock: { thickness: 1 },
    process: {},
    requirements: [],
    handoff: { template },
  };
  const said = handoffProvenance(jobFile).filter(({ quantity }) => quantity.startsWith('template margin'));
  expect(said).toHaveLength(1);
  return { used: resolveHandoff(jobFile, 'mm').template.margin, said: said[0] };
}

describe('the margin of a template', () => {
  test('another-figure: where web, hole or knife ask for more than 25 mm, the plan names what is used', () => {
    // 6 + 2 · (14 + 1.5) = 37; 9.5 + 2 · (8 + 2.5) = 30.5.
    const wide = marginOf({ web: 14 }, 'mm');
    expect(wide.used).toBe(37);
    expect(wide.said).toMatchObject({ value: 37, source: 'tooling hole, two webs and two slots' });
    const drilled = marginOf({ web: 8, holes: { diameter: 9.5 }, knife: { width: 2.5 } }, 'mm');
    expect([drilled.used, drilled.said?.value]).toEqual([30.5, 30.5]);
    // 0.6 in: 6 + 2 · (15.24 + 1.5).
    const inches = marginOf({ web: 0.6 }, 'in');
    expect(inches.used).toBeCloseTo(39.48, 9);
    expect(inches.said?.value).toBe(inches.used);
  });

  test('else it is our own choice, or the job’s', () => {
    expect(marginOf({ web: 7 }, 'mm')).toMatchObject({
      used: 25,
      said: { value: 25, source: 'our own choice' },
    });
    expect(marginOf({ web: 14, margin: 33 }, 'mm')).toMatchObject({
      used: 33,
      said: { value: 33, source: 'job file, handoff.template.margin' },
    });
  });

  test('every figure of the provenance is the one that files are made with', () => {
    const given: Template = { web: 6.5, knife: { width: 2.1 }, bridge: { width: 3.7, clear: 5.3 } };
    const { template, inspection } = resolveHandoff(
      {
        format: 'isobath-job',
        version: 1,
        drawing: 'gondola.dxf',
        stock: { thickness: 1 },
        process: {},
        requirements: [],
        handoff: { template: given, inspection: { spacing: 87 } },
      },
      'mm',
    );
    const { knife, bridge, web, margin, holes } = template;
    expect(
      handoffProvenance({ handoff: { template: given, inspection: { spacing: 87 } } }).map(
        ({ value }) => value,
      ),
    ).toEqual([
      inspection.margin,
      inspection.spacing,
      knife.width,
      bridge.width,
      bridge.apart,
      bridge.clear,
      web,
      margin,
      holes.diameter,
    ]);
  });
});
