/** The requirements of a job as depths in millimetres. One that the sheet can't give is reported and left out. */
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { DEPTH_TOLERANCE } from '#job/fields/requirement-fields.ts';
import type { Requirement } from '#job/job.ts';
import { provenanceOf, roundLength } from '#job/job-figures.ts';
import type { JobFile, JobValues } from '#job/job-file.ts';
import { thickestOf, thinnestOf } from '#job/sheet-at.ts';
import { isPointless, type Taper } from '#job/taper.ts';

type Asked = JobValues['requirements'][number];

export function resolveRequirements(
  asked: readonly Asked[],
  stock: number | Taper,
): { readonly requirements: readonly Requirement[]; readonly findings: readonly Finding[] } {
  const requirements: Requirement[] = [];
  const findings: Finding[] = [];
  asked.forEach((each, index) => {
    const path = `requirements[${index}]`;
    const names = namesOf(each);
    const { depth, findings: faults } = depthOf(each, stock, path);
    findings.push(...faults);
    if (names === undefined || depth === undefined) return;
    const { plus, minus, thickness, taper } = each;
    const isThickness = thickness !== undefined || taper?.isThickness === true;
    requirements.push({ path, names, depth, plus, minus, ...(isThickness ? { asThickness: true } : {}) });
  });
  return { requirements, findings };
}

/** The tolerance that is filled in, where any requirement leaves it out. */
export function requirementProvenance(given: JobFile['requirements']): Provenance[] {
  const usesDefault = given.some(({ plus, minus }) => plus === undefined || minus === undefined);
  return usesDefault ? [provenanceOf('depth tolerance where none is asked, ±', 'mm', DEPTH_TOLERANCE)] : [];
}

function namesOf({ layer, at }: Asked): Requirement['names'] | undefined {
  if (layer !== undefined) return { layer };
  return at === undefined ? undefined : { at };
}

interface DepthAsked {
  readonly depth?: Requirement['depth'];
  readonly findings: readonly Finding[];
}

function depthOf({ depth, thickness, taper }: Asked, stock: number | Taper, path: string): DepthAsked {
  if (taper !== undefined) return depthFromTaper(taper, stock, `${path}.taper`);
  if (depth !== undefined) return depthFromDepth(depth, stock, `${path}.depth`);
  return thickness === undefined
    ? { findings: [] }
    : depthFromThickness(thickness, stock, `${path}.thickness`);
}

function depthFromTaper(
  { isThickness, ...asked }: NonNullable<Asked['taper']>,
  stock: number | Taper,
  path: string,
): DepthAsked {
  if (isPointless(asked)) return { findings: [finding('taper-without-length', {}, { path })] };
  const most = Math.max(asked.fromValue, asked.toValue);
  if (!isThickness) {
    const { findings } = depthFromDepth(most, stock, path);
    return findings.length > 0 ? { findings } : { depth: [asked], findings };
  }
  const thickest = thickestOf(stock);
  if (most > thickest) {
    const facts = { thickness: most, stock: thickest };
    return { findings: [finding('thickness-beyond-stock', facts, { path })] };
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
