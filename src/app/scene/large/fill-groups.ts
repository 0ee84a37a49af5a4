/** Flat pieces of a large part by their colours, each by size: what of them is drawn depends on the view. */
import { isPeeled } from '#app/scene/bath-minute.ts';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { itemAt } from '#geometry/assert.ts';
import { loopArea } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import { type SizedContours, sizedContours } from './sized-contours.ts';

export interface FillGroup {
  readonly sized: SizedContours;
  readonly color: string;
  /** Metal that is bare already. */
  readonly isDotted: boolean;
}

/** The part as it comes out of the run: regions tinted by the stage that took them to their level. */
export function regionGroups(
  plan: ShownPlan | undefined,
  shapes: readonly RegionShape[],
  theme: SceneTheme,
): FillGroup[] {
  const colors = new Map(
    plan?.stages.flatMap(({ regions, color }) => {
      const { floor } = lookOf(color, theme);
      return regions.map((id) => [id, floor] as const);
    }),
  );
  const byColor = new Map<string, Contour[]>();
  for (const { region } of shapes) {
    const color = colors.get(region.id) ?? theme.land;
    const contours = byColor.get(color) ?? [];
    contours.push(itemAt(region.contours, 0));
    byColor.set(color, contours);
  }
  const cutouts = plan?.cutouts ?? [];
  return [
    ...[...byColor].map(([color, contours]) => groupOf(contours, color)),
    ...(cutouts.length === 0 ? [] : [groupOf(cutouts, theme.ground)]),
  ];
}

/** The sheet in the bath, as `BathFills` shows it. */
export function bathGroups(plan: ShownPlan, minute: number, theme: SceneTheme): FillGroup[] {
  const peeled = plan.stages.filter((stage) => isPeeled(stage, minute)).length;
  const bare = plan.stages.slice(plan.masking === 're-mask' ? peeled - 1 : 0, peeled);
  const last = plan.stages[peeled - 1];
  const rims = bare.flatMap(({ piece }) => piece.filter(isRim));
  return [
    groupOf([...(plan.outline === null ? [] : [plan.outline]), ...rims], theme.maskant),
    ...bare.map((stage) => pieceGroup(stage, stage === last, theme)),
    groupOf(plan.cutouts, theme.ground),
  ];
}

function pieceGroup({ piece, color }: ShownStage, isNow: boolean, theme: SceneTheme): FillGroup {
  const contours = piece.filter((contour) => !isRim(contour));
  return isNow
    ? groupOf(contours, lookOf(color, theme).floor)
    : { ...groupOf(contours, theme.metal), isDotted: true };
}

/** Of an island of maskant: it runs clockwise. */
function isRim(contour: Contour): boolean {
  return loopArea(pathOfContour(contour).spans) < 0;
}

function groupOf(contours: readonly Contour[], color: string): FillGroup {
  return { sized: sizedContours(contours), color, isDotted: false };
}
