/** A resolved job whose places are reported in a local frame, or put back. */

import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { Job, Requirement } from './job.ts';
import type { HandoffChoices } from './resolve/resolve-handoff.ts';
import type { SurveyFit } from './sheet-survey.ts';
import type { Sizing } from './sizing.ts';
import type { Taper } from './taper.ts';

export function moveJob(job: Job, by: Point): Job {
  const { sheet, holes } = job.layers;
  const { thickness, surveyed } = job.stock;
  const { sizing } = job;
  return {
    ...job,
    layers: {
      ...job.layers,
      ...(sheet === undefined || sheet === 'outermost'
        ? {}
        : { sheet: { ...sheet, at: movePoint(sheet.at, by) } }),
      ...(holes === undefined
        ? {}
        : { holes: holes.map((hole) => ({ ...hole, at: movePoint(hole.at, by) })) }),
    },
    stock: {
      ...job.stock,
      thickness: typeof thickness === 'number' ? thickness : moveTaper(thickness, by),
      ...(surveyed === undefined ? {} : { surveyed: moveSurveyed(surveyed, by) }),
    },
    ...(sizing === undefined ? {} : { sizing: moveSizing(sizing, by) }),
    requirements: job.requirements.map((each) => moveRequirement(each, by)),
  };
}

function moveSizing(sizing: Sizing, by: Point): Sizing {
  const { thickness } = sizing.sheet;
  return typeof thickness === 'number'
    ? sizing
    : { ...sizing, sheet: { ...sizing.sheet, thickness: moveTaper(thickness, by) } };
}

function moveSurveyed(surveyed: NonNullable<Job['stock']['surveyed']>, by: Point): typeof surveyed {
  const { survey, even, thickness, nominal } = surveyed;
  const moveFit = <Fit extends SurveyFit>(fit: Fit): Fit => ({ ...fit, about: movePoint(fit.about, by) });
  const readings = survey.readings.map((each) => ({ ...each, at: movePoint(each.at, by) }));
  const moved = { ...moveFit(survey), readings, tried: survey.tried.map(moveFit) };
  return {
    ...surveyed,
    survey: moved,
    even: survey === even ? moved : moveFit(even),
    thickness: typeof thickness === 'number' ? thickness : moveTaper(thickness, by),
    nominal: typeof nominal === 'number' ? nominal : moveTaper(nominal, by),
  };
}

export function moveTaper(taper: Taper, by: Point): Taper {
  return { ...taper, from: movePoint(taper.from, by), to: movePoint(taper.to, by) };
}

function moveRequirement(requirement: Requirement, by: Point): Requirement {
  const { names, depth, tabs } = requirement;
  return {
    ...requirement,
    ...(tabs?.at === undefined ? {} : { tabs: { ...tabs, at: tabs.at.map((each) => movePoint(each, by)) } }),
    names: 'at' in names ? { at: movePoint(names.at, by) } : names,
    depth: typeof depth === 'number' ? depth : depth.map((taper) => moveTaper(taper, by)),
  };
}

export function moveHandoff(choices: HandoffChoices, by: Point): HandoffChoices {
  const { sections, template } = choices;
  const { at } = template.holes;
  return {
    ...choices,
    sections: sections.map((cut) => ({
      ...cut,
      from: movePoint(cut.from, by),
      to: movePoint(cut.to, by),
    })),
    template: {
      ...template,
      holes: { ...template.holes, at: at?.map((point) => movePoint(point, by)) },
    },
  };
}
