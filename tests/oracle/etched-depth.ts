/**
 * The depth of an etched part by the closed form of first arrival, max over stages of B + √(D² − (dist / φ)²), every span asked
 * at every place: no index, no contour, no mesh. And its integral over the sheet, by evenly strewn places (the sequence of
 * multiples of the plastic number, M. Roberts, The Unreasonable Effectiveness of Quasirandom Sequences, 2018).
 */
interface Place {
  readonly x: number;
  readonly y: number;
}

/** A line, or an arc of at most half a turn, left positive. */
export type Border =
  | { readonly kind: 'line'; readonly start: Place; readonly end: Place }
  | {
      readonly kind: 'arc';
      readonly start: Place;
      readonly end: Place;
      readonly center: Place;
      readonly radius: number;
      readonly sweep: number;
    };

/** Closed; what is inside lies on the left. */
type Ring = readonly Border[];

export interface BareStage {
  readonly level: number;
  readonly base: number;
  readonly opening: readonly Ring[];
}

export interface EtchedPart {
  readonly stages: readonly BareStage[];
  readonly factor: number;
  readonly sheet: readonly Ring[];
}

/** Numbers of one span: a line from a to b, or an arc with its centre, radius, and the half circle test of its middle. */
interface Figures {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly cx: number;
  readonly cy: number;
  /** 0 for a line. */
  readonly radius: number;
  readonly mx: number;
  readonly my: number;
  readonly cosHalf: number;
  readonly sweep: number;
}

export interface Gauge {
  /** mm; 0 off the sheet. */
  readonly depthAt: (x: number, y: number) => number;
  /** Of the last place: how much longer the surface is there than its plan, at least 1 on a wall and 0 elsewhere. */
  readonly wall: () => number;
  readonly isOnSheet: (x: number, y: number) => boolean;
}

export function gaugeOf({ stages, factor, sheet }: EtchedPart): Gauge {
  const borders = stages.map(({ opening }) => figuresOfRings(opening));
  const rim = figuresOfRings(sheet);
  let slope = 0;
  const depthAt = (x: number, y: number): number => {
    slope = 0;
    if (!holds(rim, x, y)) return 0;
    let deepest = 0;
    stages.forEach(({ level, base }, stage) => {
      const cut = level - base;
      const own = borders[stage] ?? [];
      if (holds(own, x, y)) {
        if (level >= deepest) {
          deepest = level;
          slope = 0;
        }
        return;
      }
      const reach = factor * cut;
      let least = reach * reach;
      for (const border of own) least = Math.min(least, squaredGap(border, x, y));
      if (least >= reach * reach) return;
      const rise = Math.sqrt(cut * cut - least / (factor * factor));
      if (base + rise <= deepest) return;
      deepest = base + rise;
      slope = Math.sqrt(1 + least / (factor ** 4 * rise * rise));
    });
    return deepest;
  };
  return { depthAt, wall: () => slope, isOnSheet: (x, y) => holds(rim, x, y) };
}

/** Of all that the borders enclose, mm² (Green's theorem: chords, and the bow beyond each). */
export function areaWithin(rings: readonly Ring[]): number {
  let double = 0;
  const origin = rings[0]?.[0]?.start ?? { x: 0, y: 0 };
  for (const border of rings.flat()) {
    const { ax, ay, bx, by, radius, sweep } = figuresOf(border);
    double += (ax - origin.x) * (by - origin.y) - (ay - origin.y) * (bx - origin.x);
    double += radius * radius * (sweep - Math.sin(sweep));
  }
  return double / 2;
}

export interface Strewn {
  /** ∫ depth, mm³ */
  readonly volume: number;
  /** Surface of the walls, mm² */
  readonly walls: number;
}

const PLASTIC = 1.324717957244746;

/** The integral over the box that the etch can reach, by `count` places. */
export function strewnVolume(part: EtchedPart, count: number): Strewn {
  const gauge = gaugeOf(part);
  const box = boxOf(part);
  const area = (box.x1 - box.x0) * (box.y1 - box.y0);
  let volume = 0;
  let walls = 0;
  for (let i = 0; i < count; i++) {
    const u = (0.5 + (i + 1) / PLASTIC) % 1;
    const v = (0.5 + (i + 1) / PLASTIC ** 2) % 1;
    volume += gauge.depthAt(box.x0 + u * (box.x1 - box.x0), box.y0 + v * (box.y1 - box.y0));
    walls += gauge.wall();
  }
  return { volume: (volume * area) / count, walls: (walls * area) / count };
}

function boxOf({ stages, factor }: EtchedPart): { x0: number; y0: number; x1: number; y1: number } {
  let [x0, y0, x1, y1] = [1e300, 1e300, -1e300, -1e300];
  for (const { level, base, opening } of stages) {
    const reach = factor * (level - base);
    for (const { ax, ay, bx, by, cx, cy, radius } of opening.flat().map(figuresOf)) {
      const bulge = radius > 0 ? [cx - radius, cy - radius, cx + radius, cy + radius] : [ax, ay, bx, by];
      // The chord's bow is never more than a half circle's, nor more than the circle itself.
      const half = radius > 0 ? Math.hypot(bx - ax, by - ay) / 2 : 0;
      x0 = Math.min(x0, Math.max(Math.min(bulge[0] ?? 0, bulge[2] ?? 0), Math.min(ax, bx) - half) - reach);
      y0 = Math.min(y0, Math.max(Math.min(bulge[1] ?? 0, bulge[3] ?? 0), Math.min(ay, by) - half) - reach);
      x1 = Math.max(x1, Math.min(Math.max(bulge[0] ?? 0, bulge[2] ?? 0), Math.max(ax, bx) + half) + reach);
      y1 = Math.max(y1, Math.min(Math.max(bulge[1] ?? 0, bulge[3] ?? 0), Math.max(ay, by) + half) + reach);
    }
  }
  return x0 > x1 ? { x0: 0, y0: 0, x1: 0, y1: 0 } : { x0, y0, x1, y1 };
}

/** Ends that differ in the last digit would leave a gap: one border ends where the next starts. */
function figuresOfRings(rings: readonly Ring[]): Figures[] {
  return rings.flatMap((ring) =>
    ring.map((border, i) => figuresOf({ ...border, end: (ring[(i + 1) % ring.length] ?? border).start })),
  );
}

function figuresOf(span: Border): Figures {
  const { start, end } = span;
  const ends = { ax: start.x, ay: start.y, bx: end.x, by: end.y };
  if (span.kind === 'line') return { ...ends, cx: 0, cy: 0, radius: 0, mx: 0, my: 0, cosHalf: 0, sweep: 0 };
  const { center, radius, sweep } = span;
  const middle = Math.atan2(start.y - center.y, start.x - center.x) + sweep / 2;
  return {
    ...ends,
    cx: center.x,
    cy: center.y,
    radius,
    mx: Math.cos(middle),
    my: Math.sin(middle),
    cosHalf: Math.cos(sweep / 2),
    sweep,
  };
}

function squaredGap(border: Figures, x: number, y: number): number {
  const { ax, ay, bx, by, cx, cy, radius, mx, my, cosHalf } = border;
  if (radius > 0) {
    const far = Math.hypot(x - cx, y - cy);
    if ((x - cx) * mx + (y - cy) * my >= far * cosHalf) return (far - radius) ** 2;
    return Math.min((x - ax) ** 2 + (y - ay) ** 2, (x - bx) ** 2 + (y - by) ** 2);
  }
  const square = (bx - ax) ** 2 + (by - ay) ** 2;
  const share = square === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square;
  const at = Math.min(1, Math.max(0, share));
  return (x - ax - at * (bx - ax)) ** 2 + (y - ay - at * (by - ay)) ** 2;
}

/** Winding number by the chords, and by which side of an arc's chord but inside its circle the place lies. */
function holds(borders: readonly Figures[], x: number, y: number): boolean {
  let winding = 0;
  for (const { ax, ay, bx, by, cx, cy, radius, sweep } of borders) {
    const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (ay <= y ? by > y && side > 0 : by <= y && side < 0) winding += by > ay ? 1 : -1;
    if (radius === 0) continue;
    // Between chord and arc: an arc to the left has its bow on the right of its chord. A place on the chord itself counts
    // as the chords have it: a hair to its right, or above it where it is level.
    const beside = side !== 0 ? side : by !== ay ? ay - by : bx - ax;
    const isInBow = sweep > 0 ? beside < 0 : beside > 0;
    if (isInBow && (x - cx) ** 2 + (y - cy) ** 2 < radius * radius) winding += Math.sign(sweep);
  }
  return winding !== 0;
}
