/** The requirements of a job as depths in millimetres. One that the sheet can't give is told and left out. */
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Requirement, Taper } from './job.ts';
import { DEFAULT_DEPTH_TOLERANCE } from './job-defaults.ts';
import { jobMillimetres, provenanceOf, roundLength } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import { drawnPoint, type ResolveUnits, resolveTaper } from './resolve-taper.ts';
import { thickestOf, thinnestOf } from './sheet-at.ts';

export interface ResolvedRequirements {
  readonly requirements: readonly Requirement[];
  readonly provenance: readonly Provenance[];
  readonly findings: readonly Finding[];
}

type Given = JobFile['requirements'][number];

export function resolveRequirements(
  given: JobFile['requirements'],
  { stock, units }: { readonly stock: number | Taper; readonly units: ResolveUnits },
): ResolvedRequirements {
  const requirements: Requirement[] = [];
  const findings: Finding[] = [];
  given.forEach((each, index) => {
    const path = `requirements[${index}]`;
    const names = namesOf(each, units);
    const { depth, findings: faults } = depthOf(each, { path, stock, units });
    findings.push(...faults);
    if (names === undefined || depth === undefined) return;
    requirements.push({
      path,
      names,
      depth,
      plus: toleranceOf(each.plus, units),
      minus: toleranceOf(each.minus, units),
      ...(isThickness(each) ? { asThickness: true } : {}),
    });
  });
  const usesDefault = given.some((each) => each.plus === undefined || each.minus === undefined);
  return {
    requirements,
    provenance: usesDefault
      ? [provenanceOf('depth tolerance where none is asked, ±', 'mm', DEFAULT_DEPTH_TOLERANCE)]
      : [],
    findings,
  };
}

function namesOf({ layer, at }: Given, units: ResolveUnits): Requirement['names'] | undefined {
  if (layer !== undefined) return { layer };
  return at === undefined ? undefined : { at: drawnPoint(at, units.drawing) };
}

function isThickness({ thickness, taper }: Given): boolean {
  return thickness !== undefined || (taper !== undefined && 'thicknessFrom' in taper);
}

function toleranceOf(given: number | undefined, units: ResolveUnits): number {
  return given === undefined ? DEFAULT_DEPTH_TOLERANCE.value : jobMillimetres(given, units.job);
}

interface Setting {
  readonly path: string;
  readonly stock: number | Taper;
  readonly units: ResolveUnits;
}

interface DepthAsked {
  readonly depth?: Requirement['depth'];
  readonly findings: readonly Finding[];
}

function depthOf({ depth, thickness, taper }: Given, { path, stock, units }: Setting): DepthAsked {
  if (taper !== undefined) return depthFromTaper(taper, { path: `${path}.taper`, stock, units });
  if (depth !== undefined) return depthFromDepth(jobMillimetres(depth, units.job), stock, `${path}.depth`);
  if (thickness === undefined) return { findings: [] };
  return depthFromThickness(jobMillimetres(thickness, units.job), stock, `${path}.thickness`);
}

function depthFromTaper(taper: NonNullable<Given['taper']>, { path, stock, units }: Setting): DepthAsked {
  const asked = resolveTaper(taper, units);
  if (asked.from.x === asked.to.x && asked.from.y === asked.to.y) {
    return { findings: [finding('taper-without-length', {}, { path })] };
  }
  if ('depthFrom' in taper) {
    const depth = Math.max(asked.fromValue, asked.toValue);
    const { findings } = depthFromDepth(depth, stock, path);
    return findings.length > 0 ? { findings } : { depth: [asked], findings };
  }
  const thickest = thickestOf(stock);
  const thickness = Math.max(asked.fromValue, asked.toValue);
  if (thickness > thickest) {
    return { findings: [finding('thickness-beyond-stock', { thickness, stock: thickest }, { path })] };
  }
  return { depth: leftOf(asked, stock), findings: [] };
}

function depthFromDepth(depth: number, stock: number | Taper, path: string): DepthAsked {
  const thinnest = thinnestOf(stock);
  if (depth < thinnest) return { depth, findings: [] };
  return { findings: [finding('depth-beyond-stock', { depth, stock: thinnest }, { path })] };
}

function depthFromThickness(thickness: number, stock: number | Taper, path: string): DepthAsked {
  if (typeof stock !== 'number') {
    const toDepth = (value: number) => roundLength(value - thickness);
    return {
      depth: [{ ...stock, fromValue: toDepth(stock.fromValue), toValue: toDepth(stock.toValue) }],
      findings: [],
    };
  }
  if (thickness <= stock) return { depth: roundLength(stock - thickness), findings: [] };
  return { findings: [finding('thickness-beyond-stock', { thickness, stock }, { path })] };
}

/** The depth that leaves a thickness taper: what the sheet has there, less the thickness. */
function leftOf(thickness: Taper, stock: number | Taper): readonly Taper[] {
  const base = typeof stock === 'number' ? stock : 0;
  const less = {
    ...thickness,
    fromValue: roundLength(base - thickness.fromValue),
    toValue: roundLength(base - thickness.toValue),
  };
  return typeof stock === 'number' ? [less] : [stock, less];
}
