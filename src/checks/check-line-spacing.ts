/** Scribe lines of one coat that run nearer to each other than a knife can follow. Lines that meet are no case of it. */
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import { type MakingPlace, type PlaceRule, stageNumbers, type WholePlan } from './making.ts';
import { middleOf, narrowPlaces } from './narrow-places.ts';
import { sidesOfPath } from './sides.ts';
import { regionsBeside, wayPath } from './way-across.ts';

interface CloseLines extends NarrowFound {
  readonly levels: readonly number[];
}

export const lineSpacing: PlaceRule<CloseLines> = { find, report };

function find(making: MakingPlace): CloseLines[] {
  const { stages, masking } = making.plan;
  const limit = making.job.rules.minLineSpacing;
  const sides = stages.flatMap(({ level, lines }) =>
    lines.flatMap(sidesOfPath).map((side) => ({ ...side, level })),
  );
  const isOneCoat = (a: number, b: number): boolean =>
    masking === 'peel-next' || itemAt(sides, a).level === itemAt(sides, b).level;
  const limitOf = (a: number, b: number): number => (isOneCoat(a, b) ? limit : 0);
  return narrowPlaces(sides, { widestOf: () => limit, limitOf, bothSides: true }).map((place) => ({
    width: place.width,
    limit,
    at: middleOf(place),
    regions: regionsBeside(making, place, 0),
    outline: [wayPath(place)],
    levels: place.sides.map((side) => itemAt(sides, side).level),
  }));
}

function report(found: readonly CloseLines[], whole: WholePlan): Finding[] {
  const { minLineSpacing: limit } = whole.job.rules;
  const numberOf = stageNumbers(whole);
  const numbered = found.map((each) => ({
    ...each,
    figures: each.levels.map(numberOf).sort((a, b) => a - b),
  }));
  return gatherNarrow(numbered).map(({ first, places, regions, outline }) => {
    const [a = 0, b = 0] = first.figures;
    return finding(
      'lines-too-close',
      { spacing: first.width, limit, stages: [a, b], places },
      { at: first.at, regions, outline },
    );
  });
}
