/**
 * What the canvas shows, as plain data: it is drawn by a worker of its own, so that a slow frame never holds up a hand or a
 * keyboard. Types only.
 */

import type { EdgeBand } from '#app/state/shown-bands.ts';
import type { SheetView } from '#app/state/workbench-state.ts';
import type { PackedContours } from '#app/worker/pack-contours.ts';
import type { DrawnLine, ReliefArrays } from '#app/worker/planned-page.ts';
import type { WirePlan } from '#app/worker/wire-page.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import type { Section } from '#run/section-job.ts';
import type { ViewPose } from './view-pose.ts';

export interface ScenePicture {
  readonly plan: ShownPlan | undefined;
  readonly lines: readonly DrawnLine[];
  /** Floors of the face that is not seen, shown faintly through the part. */
  readonly behind?: readonly Contour[];
  /** Where drawn edges will land, those of the face on show. */
  readonly bands?: readonly EdgeBand[];
  /** Lines that came back, held against the plan. */
  readonly returned?: readonly Contour[];
  readonly relief: SceneRelief | undefined;
  /** Along which the relief is cut open; undefined where it is whole. */
  readonly cut?: SceneCut | undefined;
  /** Region ids. */
  readonly selection: readonly string[];
  /** Region ids that are pointed at, here or in another view. */
  readonly lit?: readonly string[];
  readonly view: SheetView;
  readonly exaggeration: number;
  /** Immersed; undefined for the end of the run. */
  readonly minute: number | undefined;
  /** Number of the one stage whose lines are drawn, in full; undefined for all, those sealed over marked so. */
  readonly onlyStage?: number | undefined;
  /** Outline of the finding that was last flown to. */
  readonly marked: readonly Contour[];
  readonly isDark: boolean;
}

export interface SceneCut {
  readonly from: Point;
  readonly to: Point;
  readonly section: Section;
}

export interface SceneRelief {
  /** Coarse, to be turned quickly. */
  readonly draft: ReliefArrays;
  /** Undefined until it is made. */
  readonly fine: ReliefArrays | undefined;
  /** By stage. */
  readonly colors: readonly string[];
}

export interface SceneSize {
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
}

/** What changed of the picture; the plan by the contours that are new to it. */
export interface PictureChange extends Partial<Omit<ScenePicture, 'plan' | 'lines'>> {
  readonly plan?: WirePlan | undefined;
  readonly lines?: PackedContours;
}

/** What the worker says back: the numbers of the picture and of the pose that were drawn last, or that its canvas has no WebGL. */
export type SceneAnswer = { readonly drawn: number; readonly posed: number } | 'unable';

export interface NumberedPose extends ViewPose {
  readonly number: number;
}

export interface SceneMessage {
  /** In the first message. */
  readonly canvas?: OffscreenCanvas;
  readonly size?: SceneSize;
  /** Numbered as they are sent. */
  readonly pose?: NumberedPose;
  /** Numbered as they are sent. */
  readonly picture?: PictureChange & { readonly number: number };
}
