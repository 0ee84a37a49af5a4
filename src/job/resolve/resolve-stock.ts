/** The sheet of a job in millimetres: thickness, tolerance as given or as the standard allows, density of the alloy. */
import type { Alloy } from '#bath/known-figures.ts';
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { FollowSetting } from '#job/fields/field.ts';
import { readGroup } from '#job/fields/read-group.ts';
import { alloyOf, type StockValues, sheetOf, stock } from '#job/fields/stock-fields.ts';
import type { Job } from '#job/job.ts';
import { provenanceOf } from '#job/job-figures.ts';
import type { JobFile } from '#job/job-file.ts';
import { isPointless } from '#job/taper.ts';

export interface ResolvedStock {
  readonly stock: Job['stock'];
  readonly values: StockValues;
  readonly alloy: Alloy | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

export function resolveStock(given: JobFile['stock'], setting: FollowSetting): ResolvedStock {
  const { values, provenance } = readGroup(stock, given, { ...setting, path: 'stock.' });
  const { thickness: nominal, measured, survey, ...held } = values;
  const alloy = alloyOf(values, setting);
  const { thickness, thickest, minus, plus, surveyed } = sheetOf(values, setting);
  const findings: Finding[] = [];
  if (given.alloy !== undefined && alloy === undefined) {
    const known = setting.figures.alloys.map(({ id }) => id);
    const facts = { name: given.alloy, meant: nearestWord(given.alloy, known), known };
    findings.push(finding('alloy-unknown', facts, { path: 'stock.alloy' }));
  }
  if (typeof nominal !== 'number' && isPointless(nominal)) {
    findings.push(finding('taper-without-length', {}, { path: 'stock.thickness' }));
  }
  if (
    (given.minus === undefined && minus === undefined) ||
    (given.plus === undefined && plus === undefined)
  ) {
    findings.push(finding('sheet-tolerance-missing', { thickness: thickest.value }, { path: 'stock' }));
  }
  if (surveyed?.survey.lacks !== undefined) {
    const { readings, lacks, spread = 0 } = surveyed.survey;
    const facts = { readings: readings.length, spread, ...lacks };
    findings.push(finding('survey-too-few', facts, { path: 'stock.survey' }));
  }
  return {
    stock: {
      ...held,
      thickness,
      ...(alloy === undefined ? {} : { material: { name: alloy.name, metal: alloy.metal } }),
      ...(measured === undefined && surveyed === undefined ? {} : { isMeasured: true }),
      ...(surveyed === undefined ? {} : { surveyed: { ...surveyed, nominal } }),
    },
    values,
    alloy,
    provenance: [provenanceOf('sheet thickness', 'mm', thickest), ...provenance],
    findings,
  };
}
