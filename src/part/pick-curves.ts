/** Which curves of a drawing the job reads as outline of the sheet and which as borders of regions. */
import type { Drawing, DrawnCurve } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { Job } from '#job/job.ts';

export interface PickedCurves {
  /** Indices of `drawing.curves`, ascending. */
  readonly outline: readonly number[];
  readonly regions: readonly number[];
  readonly findings: readonly Finding[];
}

/** Without named region layers every layer counts that is neither outline nor ignored nor of the far face alone. */
export function pickCurves(drawing: Drawing, layers: Job['layers']): PickedCurves {
  const outlineNames = new Set(layers.outline);
  const { both = [], far = [] } = layers;
  const regionNames = layers.regions === undefined ? undefined : new Set([...layers.regions, ...both]);
  const ignored = new Set([...layers.ignore, ...far.filter((layer) => !both.includes(layer))]);
  const outline: number[] = [];
  const regions: number[] = [];
  drawing.curves.forEach(({ layer }: DrawnCurve, number) => {
    if (outlineNames.has(layer)) outline.push(number);
    else if (regionNames === undefined ? !ignored.has(layer) : regionNames.has(layer)) regions.push(number);
  });
  return { outline, regions, findings: missingLayers(drawing, layers) };
}

function missingLayers(drawing: Drawing, layers: Job['layers']): Finding[] {
  const known = [...new Set(drawing.layers.map(({ name }) => name))].sort();
  const findings: Finding[] = [];
  for (const key of ['outline', 'regions', 'ignore'] as const) {
    (layers[key] ?? []).forEach((layer, i) => {
      if (known.includes(layer)) return;
      const facts = { layer, meant: nearestWord(layer, known), known };
      const place = { layer, path: `layers.${key}[${i}]` };
      findings.push(finding(key === 'outline' ? 'outline-layer-missing' : 'layer-missing', facts, place));
    });
  }
  return findings;
}
