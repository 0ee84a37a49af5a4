/** Islands of maskant that stand in an opening: what metal is left untouched under each has to hold it. */
import { type Finding, finding } from '#findings/finding.ts';
import { labelPoint } from '#geometry/loops/label-point.ts';
import { type Loop, loopArea, pointAlong } from '#geometry/span.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import { gatherNarrow, type NarrowFound } from './gather-narrow.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';
import { roomIn } from './narrow-places.ts';
import { areaOfDisc, gaugeOf, standingMaskant, undercutterAt } from './standing-maskant.ts';

interface Island extends NarrowFound {
  /** Depth of the highest metal left under one where the fronts have met everywhere, mm; undefined for one too small. */
  readonly ridge?: number;
}

export const maskantIslands: PlaceRule<Island> = { find, report };

function find(making: MakingPlace): Island[] {
  return [...smallIslands(making), ...lostIslands(making)];
}

function report(found: readonly Island[], { job }: WholePlan): Finding[] {
  const least = job.rules.minLandWidth;
  const lost = found.flatMap((each) => (each.ridge === undefined ? [] : [{ ...each, ridge: each.ridge }]));
  return [
    ...gatherNarrow(found.filter(({ ridge }) => ridge === undefined)).map(
      ({ first, places, regions, outline }) =>
        finding(
          'maskant-island-too-small',
          { area: first.width, limit: first.limit, least, places },
          { at: first.at, regions, outline },
        ),
    ),
    ...gatherNarrow(lost).map(({ first, places, regions, outline }) => {
      const { width, limit, ridge } = first;
      return finding(
        'maskant-comes-off',
        { width, undercut: limit, ridge, least, places },
        { at: first.at, regions, outline },
      );
    }),
  ];
}

/** Islands of untouched surface smaller than a disc as wide as the least land. */
function smallIslands({ land, around, job }: MakingPlace): Island[] {
  const limit = areaOfDisc(job.rules.minLandWidth);
  return land
    .filter((loop) => loopArea(loop) > 0 && loopArea(loop) < limit)
    .map((island) => {
      const at = labelPoint([island]);
      const region = around.regionAt(at);
      return {
        width: loopArea(island),
        limit,
        at,
        regions: region === undefined ? [] : [region.id],
        outline: [{ closed: true, spans: island }],
      };
    });
}

/** Islands under which the fronts have met everywhere. */
function lostIslands(making: MakingPlace): Island[] {
  const reach = Math.max(...making.kit.index.reaches);
  const measure = gaugeOf(making);
  const islands = standingMaskant(making).flatMap(({ borders, base }) =>
    borders.filter((loop) => loopArea(loop) > 0).map((island) => ({ island, base })),
  );
  return islands.flatMap(({ island, base }) => {
    const room = roomIn(island, 2 * reach);
    const ridge = room === undefined ? 0 : measure(room.at);
    const region = room === undefined ? undefined : making.around.regionAt(room.at);
    if (room === undefined || ridge <= Math.max(base, region?.level ?? 0) + SCRIBE_ACCURACY) return [];
    return [
      {
        ...room,
        limit: 2 * reachUnder(making, island),
        regions: region === undefined ? [] : [region.id],
        outline: [{ closed: true, spans: island }],
        ridge,
      },
    ];
  });
}

/** Undercut below an island from the stage that cuts farthest under its border, mm. */
function reachUnder(making: MakingPlace, island: Loop): number {
  return Math.max(...island.map((span) => undercutterAt(making, pointAlong(span, 0.5), 'line').reach));
}
