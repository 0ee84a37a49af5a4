/**
 * Areas integrated over depth. Between two levels an area runs like √(D − z) up to the deeper one, so z = b − (b − a) s²
 * makes it smooth in s; Gauss and Kronrod sums (5 and 11 nodes) over s differ by far more than the 11-node sum errs, and
 * the part where they differ most is halved until all of them together agree: only where fronts meet or islands vanish.
 */
import { itemAt } from '#geometry/assert.ts';

/** Nodes and weights of the Gauss and Kronrod pair on [-1, 1]: Kronrod, Nodes and weights of quadrature formulas (1965), n = 5. */
const NODES = [
  0.9840853600948425, 0.906179845938664, 0.7541667265708492, 0.5384693101056831, 0.2796304131617832, 0,
];
const KRONROD = [
  0.0425820367510818, 0.1152333166224734, 0.1868007965564926, 0.2410403392286476, 0.2728498019125589,
  0.2829874178574912,
];
const GAUSS = [0, 0.2369268850561891, 0, 0.4786286704993665, 0, 0.5688888888888889];

/** More would only close in on a leap, of which so many leave less than a thousandth. */
const MOST_HALVINGS = 24;

/** Depths in mm, the shallower first. */
export interface DepthRange {
  readonly shallower: number;
  readonly deeper: number;
}

/**
 * ∫ area dz over the range, mm³. `allowed`: how far the two sums may differ, mm³; without it, a share of the integral.
 */
export function integrateDepth(
  area: (depth: number) => number,
  { shallower, deeper }: DepthRange,
  { share, allowed }: { readonly share: number; readonly allowed?: number | undefined },
): number {
  const span = deeper - shallower;
  const integrand = (s: number): number => 2 * span * s * area(depthIn({ shallower, deeper }, s));
  const whole = kronrod(integrand, 0, 1);
  const within = allowed ?? Math.abs(whole.fine) * share;
  const parts = [whole];
  let off = offOf(whole);
  while (off > within && parts.length <= MOST_HALVINGS) {
    const worst = parts.reduce((at, part, i) => (offOf(part) > offOf(itemAt(parts, at)) ? i : at), 0);
    const { from, to } = itemAt(parts, worst);
    const middle = (from + to) / 2;
    parts.splice(worst, 1, kronrod(integrand, from, middle), kronrod(integrand, middle, to));
    off = parts.reduce((sum, part) => sum + offOf(part), 0);
  }
  return parts.reduce((sum, { fine }) => sum + fine, 0);
}

function depthIn({ shallower, deeper }: DepthRange, s: number): number {
  return deeper - (deeper - shallower) * s * s;
}

/** Of the depths that are asked for first, the two outermost and two between them: the deepest first. */
export function outerDepths(range: DepthRange): number[] {
  const [outer, inner] = [itemAt(NODES, 0), itemAt(NODES, 4)];
  return [-outer, -inner, inner, outer].map((node) => depthIn(range, 0.5 + 0.5 * node));
}

function offOf({ fine, coarse }: Estimate): number {
  return Math.abs(fine - coarse);
}

/** An integral by the finer and by the coarser rule. */
interface Estimate {
  readonly from: number;
  readonly to: number;
  readonly fine: number;
  readonly coarse: number;
}

function kronrod(integrand: (s: number) => number, from: number, to: number): Estimate {
  const half = (to - from) / 2;
  const middle = (to + from) / 2;
  let fine = 0;
  let coarse = 0;
  NODES.forEach((node, i) => {
    const value =
      node === 0 ? integrand(middle) : integrand(middle - half * node) + integrand(middle + half * node);
    fine += itemAt(KRONROD, i) * value;
    coarse += itemAt(GAUSS, i) * value;
  });
  return { from, to, fine: fine * half, coarse: coarse * half };
}
