/** The sheet of a job in millimetres: thickness, tolerance as given or as the standard allows, density of the alloy. */
import type { Alloy, KnownFigures } from '#bath/known-figures.ts';
import type { Provenance, Sourced } from '#bath/provenance.ts';
import { sheetTolerance } from '#bath/sheet-tolerance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import type { Job, Taper } from './job.ts';
import { givenFigure, jobMillimetres, provenanceOf } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import { measuredSheet } from './measured-sheet.ts';
import { drawnPoint, type ResolveUnits, resolveTaper } from './resolve-taper.ts';
import { thickestOf } from './sheet-at.ts';

export interface ResolvedStock {
  readonly stock: Job['stock'];
  readonly alloy: Alloy | undefined;
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

export function resolveStock(
  given: JobFile['stock'],
  { units, alloys }: { readonly units: ResolveUnits } & Pick<KnownFigures, 'alloys'>,
): ResolvedStock {
  const findings: Finding[] = [];
  const alloy = alloys.find((each) => each.id === given.alloy);
  if (given.alloy !== undefined && alloy === undefined) findings.push(unknownAlloy(given.alloy, alloys));

  const nominal =
    typeof given.thickness === 'number'
      ? jobMillimetres(given.thickness, units.job)
      : resolveTaper(given.thickness, units);
  if (typeof nominal !== 'number' && isPointless(nominal)) {
    findings.push(finding('taper-without-length', {}, { path: 'stock.thickness' }));
  }
  const measured = given.measured === undefined ? undefined : readSheet(nominal, given.measured, units);
  const thickness = measured?.thickness ?? nominal;
  const thickest = thickestOf(thickness);
  const standard = sheetTolerance(alloy, thickestOf(nominal));
  const minus = givenLength(given.minus, 'stock.minus', units.job) ?? measured?.minus ?? standard;
  const plus = givenLength(given.plus, 'stock.plus', units.job) ?? measured?.plus ?? standard;
  if (minus === undefined || plus === undefined) {
    findings.push(finding('sheet-tolerance-missing', { thickness: thickest }, { path: 'stock' }));
  }
  const density = given.density === undefined ? alloy?.density : givenFigure(given.density, 'stock.density');

  return {
    stock: {
      alloy: given.alloy,
      thickness,
      minus: minus?.value ?? 0,
      plus: plus?.value ?? 0,
      ...(measured === undefined ? {} : { isMeasured: true }),
      density: density?.value,
    },
    alloy,
    provenance: [
      provenanceOf(
        'sheet thickness',
        'mm',
        measured?.mean(thickest) ?? givenFigure(thickest, 'stock.thickness'),
      ),
      ...(minus === undefined ? [] : [provenanceOf('sheet tolerance, minus', 'mm', minus)]),
      ...(plus === undefined ? [] : [provenanceOf('sheet tolerance, plus', 'mm', plus)]),
      ...(density === undefined ? [] : [provenanceOf('density', 'g/cm³', density)]),
    ],
    findings,
  };
}

interface SheetRead {
  readonly thickness: number | Taper;
  readonly minus: Sourced;
  readonly plus: Sourced;
  readonly mean: (value: number) => Sourced;
}

function readSheet(
  nominal: number | Taper,
  given: NonNullable<JobFile['stock']['measured']>,
  units: ResolveUnits,
): SheetRead {
  const readings = given.map((each) => {
    const { at, thickness } = typeof each === 'number' ? { at: undefined, thickness: each } : each;
    return {
      at: at === undefined ? undefined : drawnPoint(at, units.drawing),
      thickness: jobMillimetres(thickness, units.job),
    };
  });
  const { thickness, minus, plus } = measuredSheet(nominal, readings);
  const many = readings.length === 1 ? 'one reading' : `${readings.length} readings`;
  const sourced = (value: number, what: string): Sourced => ({
    value,
    source: `job file, stock.measured: ${what} of ${many}`,
    kind: 'measured',
  });
  return {
    thickness,
    minus: sourced(minus, 'farthest below the mean'),
    plus: sourced(plus, 'farthest above the mean'),
    mean: (value) => sourced(value, 'mean'),
  };
}

function isPointless({ from, to }: Taper): boolean {
  return from.x === to.x && from.y === to.y;
}

function givenLength(length: number | undefined, path: string, unit: LengthUnit): Sourced | undefined {
  return length === undefined ? undefined : givenFigure(jobMillimetres(length, unit), path);
}

function unknownAlloy(name: string, alloys: readonly Alloy[]): Finding {
  const known = alloys.map((each) => each.id);
  return finding('alloy-unknown', { name, meant: nearestWord(name, known), known }, { path: 'stock.alloy' });
}
