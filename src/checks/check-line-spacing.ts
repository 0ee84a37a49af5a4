/** Scribe lines, of whatever stages, that run nearer to each other than a knife can follow. Lines that meet are no case of it. */
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { gatherNarrow } from './gather-narrow.ts';
import type { MakingPlace } from './making.ts';
import { middleOf, narrowPlaces, sidesOfPath } from './narrow-places.ts';
import { regionsBeside, wayPath } from './way-across.ts';

export function checkLineSpacing(making: MakingPlace): Finding[] {
  const { stages } = making.plan;
  const limit = making.job.rules.minLineSpacing;
  const sides = stages.flatMap(({ number, lines }) =>
    lines.flatMap(sidesOfPath).map((side) => ({ ...side, stage: number })),
  );
  const found = narrowPlaces(sides, { widestOf: () => limit, limitOf: () => limit, bothSides: true }).map(
    (place) => ({
      width: place.width,
      limit,
      at: middleOf(place),
      regions: regionsBeside(making, place, 0),
      outline: [wayPath(place)],
      stages: place.sides.map((side) => itemAt(sides, side).stage),
    }),
  );
  return gatherNarrow(found).map(({ first, places, regions, outline }) => {
    const [a = 0, b = 0] = [...first.stages].sort((p, q) => p - q);
    return finding(
      'lines-too-close',
      { spacing: first.width, limit, stages: [a, b], places },
      { at: first.at, regions, outline },
    );
  });
}
