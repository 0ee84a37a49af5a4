/** A plan mirrored about a vertical line: the opposite hand of its part (M9.8), or a face as it is seen from its own side. */
import { mirrorArrangement, mirrorLoop, mirrorPath, mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import type { Taper } from '#job/taper.ts';
import type { EtchPlan, PlannedRegion, Stage } from './etch-plan.ts';

/** Ids, levels, order and colours stay. @param about x of the mirror line, mm */
export function mirrorPlan(plan: EtchPlan, about: number): EtchPlan {
  return {
    ...plan,
    ...(plan.far === undefined ? {} : { far: mirrorPlan(plan.far, about) }),
    arrangement: mirrorArrangement(plan.arrangement, about),
    sheet: plan.sheet.map((loop) => mirrorLoop(loop, about)),
    regions: plan.regions.map((region) => mirrorRegion(region, about)),
    stages: plan.stages.map(
      (stage): Stage => ({
        ...stage,
        piece: stage.piece.map((loop) => mirrorLoop(loop, about)),
        opening: stage.opening.map((loop) => mirrorLoop(loop, about)),
        lines: stage.lines.map((path) => mirrorPath(path, about)),
      }),
    ),
  };
}

function mirrorRegion(region: PlannedRegion, about: number): PlannedRegion {
  const { asked, taper } = region;
  return {
    ...region,
    label: mirrorPoint(region.label, about),
    loops: region.loops.map((loop) => mirrorLoop(loop, about)),
    asked:
      asked.tapers === undefined
        ? asked
        : { ...asked, tapers: asked.tapers.map((each) => mirrorTaper(each, about)) },
    ...(taper === undefined
      ? {}
      : { taper: { ...taper, tapers: taper.tapers.map((each) => mirrorTaper(each, about)) } }),
  };
}

export function mirrorTaper(taper: Taper, about: number): Taper {
  return { ...taper, from: mirrorPoint(taper.from, about), to: mirrorPoint(taper.to, about) };
}
