/** Scribe lines of one coat that run nearer to each other than a knife can follow. Lines that meet are no case of it. */
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { gatherNarrow } from './gather-narrow.ts';
import type { MakingPlace } from './making.ts';
import { middleOf, narrowPlaces, sidesOfPath } from './narrow-places.ts';
import { regionsBeside, wayPath } from './way-across.ts';

export function checkLineSpacing(making: MakingPlace): Finding[] {
  const { stages, masking } = making.plan;
  const limit = making.job.rules.minLineSpacing;
  const sides = stages.flatMap(({ number, lines }) =>
    lines.flatMap(sidesOfPath).map((side) => ({ ...side, stage: number })),
  );
  const isOneCoat = (a: number, b: number): boolean =>
    masking === 'peel-next' || itemAt(sides, a).stage === itemAt(sides, b).stage;
  const limitOf = (a: number, b: number): number => (isOneCoat(a, b) ? limit : 0);
  const found = narrowPlaces(sides, { widestOf: () => limit, limitOf, bothSides: true }).map((place) => ({
    width: place.width,
    limit,
    at: middleOf(place),
    regions: regionsBeside(making, place, 0),
    outline: [wayPath(place)],
    figures: place.sides.map((side) => itemAt(sides, side).stage).sort((a, b) => a - b),
  }));
  return gatherNarrow(found).map(({ first, places, regions, outline }) => {
    const [a = 0, b = 0] = first.figures;
    return finding(
      'lines-too-close',
      { spacing: first.width, limit, stages: [a, b], places },
      { at: first.at, regions, outline },
    );
  });
}
