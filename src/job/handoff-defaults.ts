/**
 * What the hand-off is made with where the job does not say: millimetres, each with where it comes from. They stand in every
 * plan's provenance: which files are made of a plan is no part of it.
 */
import type { Provenance, Sourced } from '#bath/provenance.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { givenFigure, jobMillimetres, provenanceOf } from './job-figures.ts';
import type { JobFile } from './job-file.ts';

/** Inspection points stay clear of a wall by as much as an ultrasonic probe is wide, and stand a hand's length apart. */
export const INSPECTION_DEFAULTS = { margin: ownChoice(3), spacing: ownChoice(150) } as const;

/** For a hand knife and film about a millimetre thick. */
export const TEMPLATE_DEFAULTS = {
  knife: ownChoice(1.5),
  bridge: ownChoice(5),
  apart: ownChoice(150),
  clear: ownChoice(4),
  web: ownChoice(5),
  margin: ownChoice(25),
  diameter: ownChoice(6),
} as const;

function ownChoice(value: number): Sourced {
  return { value, source: 'our own choice', kind: 'memory' };
}

/** Where the job says none: room for a tooling hole in the middle, with a web and a slot to both sides, and no less than that. */
export function templateMargin(widths: {
  readonly diameter: number;
  readonly web: number;
  readonly knife: number;
}): Sourced {
  const { diameter, web, knife } = widths;
  const room = diameter + 2 * (web + knife);
  if (room <= TEMPLATE_DEFAULTS.margin.value) return TEMPLATE_DEFAULTS.margin;
  return { value: room, source: 'tooling hole, two webs and two slots', kind: 'memory' };
}

export function handoffProvenance(handoff: JobFile['handoff'], unit: LengthUnit): Provenance[] {
  const { inspection, template } = handoff ?? {};
  const { knife, bridge, web, margin, holes } = template ?? {};
  const used = (given: number | undefined, otherwise: Sourced): number =>
    given === undefined ? otherwise.value : jobMillimetres(given, unit);
  const room = templateMargin({
    diameter: used(holes?.diameter, TEMPLATE_DEFAULTS.diameter),
    web: used(web, TEMPLATE_DEFAULTS.web),
    knife: used(knife?.width, TEMPLATE_DEFAULTS.knife),
  });
  const row = (quantity: string, given: number | undefined, otherwise: Sourced, path: string) =>
    provenanceOf(
      quantity,
      'mm',
      given === undefined ? otherwise : givenFigure(jobMillimetres(given, unit), `handoff.${path}`),
    );
  return [
    row(
      'inspection points clear of walls',
      inspection?.margin,
      INSPECTION_DEFAULTS.margin,
      'inspection.margin',
    ),
    row('inspection points apart', inspection?.spacing, INSPECTION_DEFAULTS.spacing, 'inspection.spacing'),
    row('template slot', knife?.width, TEMPLATE_DEFAULTS.knife, 'template.knife.width'),
    row('template bridge', bridge?.width, TEMPLATE_DEFAULTS.bridge, 'template.bridge.width'),
    row('template bridges apart', bridge?.apart, TEMPLATE_DEFAULTS.apart, 'template.bridge.apart'),
    row('template bridge clear of corners', bridge?.clear, TEMPLATE_DEFAULTS.clear, 'template.bridge.clear'),
    row('template web', web, TEMPLATE_DEFAULTS.web, 'template.web'),
    row('template margin, at least', margin, room, 'template.margin'),
    row('template tooling hole', holes?.diameter, TEMPLATE_DEFAULTS.diameter, 'template.holes.diameter'),
  ];
}
