/** The requirements of a job as depths in millimetres. One that the sheet can't give is reported and left out. */
import type { Provenance } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { type ResolveUnits, usualIn } from '#job/fields/field.ts';
import { DEPTH_TOLERANCE } from '#job/fields/requirement-fields.ts';
import type { Requirement } from '#job/job.ts';
import { provenanceOf } from '#job/job-figures.ts';
import type { JobFile, JobValues } from '#job/job-file.ts';
import { thickestOf, thinnestOf } from '#job/sheet-at.ts';
import { isPointless, type Taper } from '#job/taper.ts';
import { toMillionth } from '#units/round-figures.ts';

type Asked = JobValues['requirements'][number];

/** Both faces are etched at once, and each of them for what it takes of it. */
const FACES = { near: ['near'], far: ['far'], both: ['near', 'far'] } as const;

/** What the usual tolerance is called among the figures of a job that uses it. */
const NO_TOLERANCE_ASKED = 'depth tolerance where none is asked, ±';

/** @param given the same as the job gives them, nothing filled in; `stock` in mm */
export function resolveRequirements(
  asked: readonly Asked[],
  { given, stock }: { readonly given: JobFile['requirements']; readonly stock: number | Taper },
): { readonly requirements: readonly Requirement[]; readonly findings: readonly Finding[] } {
  const requirements: Requirement[] = [];
  const findings: Finding[] = [];
  asked.forEach((each, index) => {
    const path = `requirements[${index}]`;
    const names = namesOf(each);
    const faces = FACES[each.face ?? 'near'];
    const { parts, findings: faults } =
      each.through === undefined ? shareOut(each, stock, path) : cutOut(each, stock);
    for (const fault of faults) findings.push(fault);
    if (names === undefined) return;
    const { thickness, taper, edge } = each;
    const isThickness = thickness !== undefined || taper?.isThickness === true;
    parts.forEach((part, at) => {
      const face = faces[at] ?? 'near';
      requirements.push({
        path,
        names,
        ...part,
        ...(leavesToleranceOut(given[index]) ? { isToleranceUsual: true } : {}),
        ...(face === 'far' ? { face } : {}),
        ...(isThickness ? { asThickness: true, ...behindOf(parts, at) } : {}),
        ...(edge === undefined ? {} : { edge }),
      });
    });
  });
  return { requirements, findings };
}

/** What each face takes, near first; none where the sheet can't give it. */
interface Shares {
  readonly parts: readonly Pick<Requirement, 'depth' | 'plus' | 'minus' | 'wall' | 'tabs'>[];
  readonly findings: readonly Finding[];
}

function behindOf(parts: Shares['parts'], at: number): Pick<Requirement, 'behind'> {
  const other = parts[1 - at];
  if (other === undefined) return { behind: 0 };
  return typeof other.depth === 'number' ? { behind: other.depth } : {};
}

/** Of how deep a contour that is cut out is etched, over what just comes through: our own choice. */
const THROUGH = { both: 1.4, one: 1.2 };

/** The drawn line is the narrowest place: at half the sheet from both faces, at its far side from one (M9.4). */
function cutOut({ through, face = 'near', plus, minus, tabs }: Asked, stock: number | Taper): Shares {
  const thickest = thickestOf(stock);
  const wall = face === 'both' ? thickest / 2 : thickest;
  const depth =
    typeof through === 'number' ? through : toMillionth(wall * THROUGH[face === 'both' ? 'both' : 'one']);
  return {
    parts: FACES[face].map(() => ({ depth, plus, minus, wall, ...(tabs === undefined ? {} : { tabs }) })),
    findings: [],
  };
}

/** A depth is that of each face; a thickness is left by both, as the split says (M9.3). */
function shareOut(asked: Asked, stock: number | Taper, path: string): Shares {
  const { depth, findings } = depthOf(asked, stock, path);
  const { plus, minus, face = 'near', split = 'even' } = asked;
  if (depth === undefined) return { parts: [], findings };
  const isShared = face === 'both' && asked.depth === undefined && asked.taper?.isThickness !== false;
  if (!isShared) return { parts: FACES[face].map(() => ({ depth, plus, minus })), findings };
  if (split === 'even') {
    const half = { depth: scaled(depth, 0.5), plus: plus / 2, minus: minus / 2 };
    return { parts: [half, half], findings };
  }
  const least = typeof depth === 'number' ? depth : leastOf(depth);
  if (split > least) {
    const fault = finding('split-beyond-depth', { near: split, all: least }, { path: `${path}.split` });
    return { parts: [], findings: [...findings, fault] };
  }
  const share = least === 0 ? 0.5 : split / least;
  const rest =
    typeof depth === 'number'
      ? toMillionth(depth - split)
      : [...depth, { ...itemAt(depth, 0), fromValue: -split, toValue: -split }];
  return {
    parts: [
      { depth: split, plus: plus * share, minus: minus * share },
      { depth: rest, plus: plus * (1 - share), minus: minus * (1 - share) },
    ],
    findings,
  };
}

function scaled(depth: Requirement['depth'], by: number): Requirement['depth'] {
  if (typeof depth === 'number') return toMillionth(depth * by);
  return depth.map((each) => ({ ...each, fromValue: each.fromValue * by, toValue: each.toValue * by }));
}

/** No more than the sum of tapers anywhere. */
function leastOf(tapers: readonly Taper[]): number {
  return tapers.reduce((sum, { fromValue, toValue }) => sum + Math.min(fromValue, toValue), 0);
}

/** The tolerance that is filled in, where any requirement leaves it out. */
export function requirementProvenance(given: JobFile['requirements'], units: ResolveUnits): Provenance[] {
  if (!given.some(leavesToleranceOut)) return [];
  return [provenanceOf(NO_TOLERANCE_ASKED, 'mm', { ...DEPTH_TOLERANCE, ...usualIn(DEPTH_TOLERANCE, units) })];
}

function leavesToleranceOut(given: JobFile['requirements'][number] | undefined): boolean {
  return given?.plus === undefined || given.minus === undefined;
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
    const toDepth = (value: number) => toMillionth(value - thickness);
    return {
      depth: [{ ...stock, fromValue: toDepth(stock.fromValue), toValue: toDepth(stock.toValue) }],
      findings: [],
    };
  }
  if (thickness <= stock) return { depth: toMillionth(stock - thickness), findings: [] };
  return { findings: [finding('thickness-beyond-stock', { thickness, stock }, { path })] };
}

/** The depth that leaves a thickness taper: what the sheet has there, less the thickness. */
function leftOf(thickness: Taper, stock: number | Taper): readonly Taper[] {
  const base = typeof stock === 'number' ? stock : 0;
  const less = {
    ...thickness,
    fromValue: toMillionth(base - thickness.fromValue),
    toValue: toMillionth(base - thickness.toValue),
  };
  return typeof stock === 'number' ? [less] : [stock, less];
}
