/** Findings about one entity of a drawing. None of them costs more than the entity. */
import { counted } from './counted.ts';
import { note, warn } from './words.ts';

/** Which entity: its kind as written and its handle, where it has one. Its line and layer are in the finding's place. */
interface Named {
  readonly kind: string;
  readonly handle: string | undefined;
}

export type SplineProblem =
  | 'degree'
  | 'too few points'
  | 'knot count'
  | 'knots fall'
  | 'knots repeat'
  | 'torn'
  | 'weight count'
  | 'weight';

const SPLINE_PROBLEMS: Readonly<Record<SplineProblem, (found: number, wanted: number) => string>> = {
  degree: (found, wanted) => `its degree is ${found}; 1 to ${wanted} are supported`,
  'too few points': (found, wanted) => `it has ${counted(found, 'point')}; its degree needs ${wanted}`,
  'knot count': (found, wanted) => `it has ${counted(found, 'knot')} where ${wanted} are needed`,
  'knots fall': (found) => `its knots decrease at number ${found}`,
  'knots repeat': (found, wanted) => `one knot repeats ${found} times; at most ${wanted} are allowed`,
  torn: (found) =>
    `an inner knot repeats ${found} times, and the ends of the curve on either side do not meet`,
  'weight count': (found, wanted) =>
    `it has ${counted(found, 'weight')} where ${wanted} ${wanted === 1 ? 'is' : 'are'} needed`,
  weight: (found) => `one weight is ${found}; weights must be above 0`,
};

export const entityWords = {
  'entity-number-bad': warn<Named & { group: number; text: string }>({
    title: 'Not a number',
    say: ({ group, text, ...named }) => ({
      reason: `${name(named)} has "${text}" where a number is expected (group ${group}); it was left out.`,
      remedy: 'Draw it again or export the drawing again; numbers need a decimal point and no unit.',
    }),
  }),
  'entity-incomplete': warn<Named & { lacks: string }>({
    title: 'Entity incomplete',
    say: ({ lacks, ...named }) => ({
      reason: `${name(named)} lacks ${lacks}; it was left out.`,
      remedy: 'Draw it again or export the drawing again.',
    }),
  }),
  'entity-group-repeated': warn<Named & { group: number; times: number }>({
    title: 'Value given twice',
    say: ({ group, times, ...named }) => ({
      reason: `${name(named)} has ${times === 2 ? 'two values' : `${times} values`} for group ${group}, which takes one; the first was used.`,
      remedy: 'Compare it with the print, or export the drawing again.',
    }),
  }),
  'entity-out-of-range': warn<
    Named & {
      value: number;
      limit: number;
      is: 'too large' | 'too far';
    }
  >({
    title: 'Too large or too far out',
    say: ({ value, limit, is, ...named }, show) => ({
      reason: [
        `${name(named)} ${is === 'too large' ? `is larger than ${show.length(limit, String)}` : `lies more than ${show.length(limit, String)} from most of the drawing`}.`,
        `It was left out.`,
      ],
      remedy: 'Delete it if it does not belong to the part; also check the drawing unit.',
      value,
      limit,
    }),
  }),
  'entity-without-size': warn<Named & { what: string }>({
    title: 'Entity without size',
    say: ({ what, ...named }) => ({
      reason: `${name(named)} has ${what}; there is nothing to cut along.`,
      remedy: 'Delete it, or draw what was meant.',
    }),
  }),
  'entity-tilted': warn<Named & { tiltDeg: number }>({
    title: 'Not in the plane of the sheet',
    say: ({ tiltDeg, ...named }) => ({
      reason: `${name(named)} lies in a plane tilted by ${tiltDeg.toFixed(1)}°; it was left out.`,
      remedy: 'Draw it flat, in the plane of the sheet.',
      value: tiltDeg,
    }),
  }),
  'entity-not-flat': warn<Named & { rise: number }>({
    title: 'Not flat',
    say: ({ rise, ...named }, show) => ({
      reason: `${name(named)} rises by ${show.length(rise, fourDigits)} out of the plane; it was read as seen from above.`,
      remedy: 'Check that the view from above is what was meant, or flatten it.',
      value: rise,
    }),
  }),
  'entity-too-fine': warn<Named & { limit: number }>({
    title: 'Curve too long for arcs',
    say: ({ limit, ...named }, show) => ({
      reason: `${name(named)} would need more than ${limit} arcs to stay within ${show.length(0.001, String)}; it was left out.`,
      remedy: 'Check its size and the drawing unit, or draw it as arcs and lines.',
      limit,
    }),
  }),
  'entity-passed-over': note<{ kind: string; count: number; why: string }>({
    title: 'Skipped',
    say: ({ kind, count, why }) => ({
      reason: [`${count} × ${kind} skipped:`, `${why}.`],
      remedy: `No action is needed, unless ${count === 1 ? 'it' : 'one of them'} was meant as an outline.`,
      value: count,
    }),
  }),
  'entity-cannot-be-read': warn<{
    kind: string;
    count: number;
    why: string;
    firstHandle: string | undefined;
  }>({
    title: 'Cannot be read',
    say: ({ kind, count, why, firstHandle }) => ({
      reason: [
        `${count} × ${kind} cannot be read:`,
        `${why}.${firstHandle === undefined ? '' : ` ${count === 1 ? 'It' : 'The first'} has handle ${firstHandle}.`}`,
      ],
      remedy:
        count === 1
          ? 'If it is an outline, explode it or export it as a polyline.'
          : 'If outlines are among them, explode them or export them as polylines.',
      value: count,
    }),
  }),
  'polyline-count-differs': warn<Named & { stated: number; found: number }>({
    title: 'Vertex count differs',
    say: ({ stated, found, ...named }) => ({
      reason: `${name(named)} states ${counted(stated, 'vertex', 'vertices')} but has ${found}; ${found === 1 ? 'that one was' : 'those were'} used.`,
      remedy: 'Compare it with the print.',
      value: found,
      limit: stated,
    }),
  }),
  'polyline-wide': warn<
    Named & {
      /** mm, the most of it. */
      width: number;
      taken: 'centre' | 'borders' | 'centre for want of borders';
    }
  >({
    title: 'Polyline with a width',
    say: ({ width, taken, ...named }, show) => ({
      reason: [
        `${name(named)} is ${show.length(width, fourDigits)} wide, so it has two borders.`,
        WIDE_TAKEN[taken],
      ],
      remedy:
        taken === 'borders'
          ? 'Set wideLines to "centre" in the job if the centre line is meant.'
          : taken === 'centre'
            ? 'Set wideLines to "borders" in the job if the borders are meant; draw it without a width if not.'
            : 'Draw what is meant without a width.',
      value: width,
    }),
  }),
  'polyline-end-missing': warn<Named & { vertices: number }>({
    title: 'Polyline not ended',
    say: ({ vertices, ...named }) => ({
      reason: `${name(named)} is not ended by SEQEND; its ${vertices === 1 ? 'one vertex was' : `${vertices} vertices were`} used.`,
      remedy: 'Compare it with the print.',
      value: vertices,
    }),
  }),
  'spline-unusable': warn<
    Named & {
      problem: SplineProblem;
      found: number;
      wanted: number;
    }
  >({
    title: 'Spline unusable',
    say: ({ problem, found, wanted, ...named }) => ({
      reason: [
        `${name(named)} cannot be evaluated:`,
        `${SPLINE_PROBLEMS[problem](found, wanted)}. It was left out.`,
      ],
      remedy: 'Draw it again, or convert it to arcs in the drawing.',
      value: found,
    }),
  }),
  'spline-through-points': note<Named & { points: number }>({
    title: 'Spline given by points only',
    say: ({ points, ...named }) => ({
      reason: `${name(named)} is given by ${counted(points, 'point')} on it, not by its curve; a smooth cubic was fitted through them.`,
      remedy: 'Check it against the print; drawing programs differ in how they run between the points.',
      value: points,
    }),
  }),
};

const WIDE_TAKEN = {
  centre: 'The centre line was used.',
  borders: 'The two borders were used.',
  'centre for want of borders':
    'The centre line was used, because borders cannot be made for a width that varies or does not fit.',
} as const;

function name({ kind, handle }: Named): string {
  return handle === undefined ? `This ${kind}` : `${kind} ${handle}`;
}

function fourDigits(value: number): string {
  return String(Number(value.toPrecision(4)));
}
