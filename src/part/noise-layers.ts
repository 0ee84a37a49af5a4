/**
 * Layers that draw about the part and not the part: dimensions, centre lines, the drawing's border and title block, notes. Known by
 * words in their names, by line types of their curves, or by what else is on them. Only ever an offer: a plate may lie on a layer
 * of any name. Words and line types from memory, English, German and French; line types also ISO 128-2 as drawing programs name them.
 */
import type { Drawing, DrawnCurve } from '#drawing/drawing.ts';
import { layerWords } from '#drawing/layer-words.ts';
import { type Box, boxOfSpans, EMPTY_BOX } from '#geometry/box.ts';

export interface NoiseLayer {
  readonly layer: string;
  /** In a few words, after "for". */
  readonly why: string;
}

const WORDS: ReadonlySet<string> = new Set(
  [
    'dim dims dimension dimensions bemassung vermassung masse maße cote cotes cotation',
    'center centers centre centres centerline centerlines centreline centrelines cl axis axes achse achsen mittellinie mittellinien axe',
    'title titleblock schriftfeld cartouche text texts txt note notes label labels hatch schraffur defpoints viewport viewports vports',
    'construction konstruktion hidden leader leaders anno annotation annotations symbol symbols logo',
  ].flatMap((words) => words.split(' ')),
);
/** A plate has these as well: they count only around everything else. */
const FRAME_WORDS: ReadonlySet<string> = new Set(['border', 'frame', 'rahmen', 'cadre', 'zeichnungsrahmen']);
const LINE_TYPES = /^(?:center|centre|dashdot|dashed|hidden|phantom|divide|dot(?:$|[^a-z])|acad_iso(?!01))/i;
const ANNOTATION = ['DIMENSION', 'LEADER', 'MULTILEADER', 'TOLERANCE', 'ARC_DIMENSION'];

/** In the order of the drawing's layers; none where nothing else would be left. */
export function noiseLayers({ layers, curves }: Drawing): NoiseLayer[] {
  const curvesOn = new Map<string, DrawnCurve[]>(layers.map(({ name }) => [name, []]));
  for (const curve of curves) curvesOn.get(curve.layer)?.push(curve);
  const found = layers.flatMap(({ name, lineType, counts }): NoiseLayer[] => {
    const own = curvesOn.get(name) ?? [];
    if (own.length === 0) return [];
    const word = layerWords(name).find((each) => WORDS.has(each));
    if (word !== undefined) return [{ layer: name, why: `"${word}" in its name` }];
    const type = own.map((curve) => curve.lineType ?? lineType ?? '').find((each) => !LINE_TYPES.test(each));
    if (type === undefined) {
      return [{ layer: name, why: `its line type, ${own[0]?.lineType ?? lineType}` }];
    }
    const kind = ANNOTATION.find((each) => (counts[each] ?? 0) > 0);
    if (kind !== undefined && !own.some(({ closed }) => closed)) {
      return [{ layer: name, why: `the ${kind} on it` }];
    }
    return [];
  });
  const noise = new Set(found.map(({ layer }) => layer));
  const rest = [...curvesOn].filter(([name, own]) => own.length > 0 && !noise.has(name));
  for (const [name, own] of rest) {
    const word = layerWords(name).find((each) => FRAME_WORDS.has(each));
    // Only then: gathering all other layers for each of thousands would be quadratic.
    if (word === undefined) continue;
    const others = rest.filter(([other]) => other !== name).flatMap(([, each]) => each);
    if (others.length > 0 && isAround(boxOf(own), boxOf(others))) {
      found.push({ layer: name, why: `"${word}" in its name, and all else within` });
    }
  }
  return found.length < [...curvesOn.values()].filter((own) => own.length > 0).length ? found : [];
}

function boxOf(curves: readonly DrawnCurve[]): Box {
  return curves.reduce((box: Box, { spans }) => {
    const own = boxOfSpans(spans);
    return {
      minX: Math.min(box.minX, own.minX),
      minY: Math.min(box.minY, own.minY),
      maxX: Math.max(box.maxX, own.maxX),
      maxY: Math.max(box.maxY, own.maxY),
    };
  }, EMPTY_BOX);
}

function isAround(outer: Box, inner: Box): boolean {
  return (
    outer.minX < inner.minX && outer.minY < inner.minY && outer.maxX > inner.maxX && outer.maxY > inner.maxY
  );
}
