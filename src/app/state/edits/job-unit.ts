/**
 * The job written in another unit, as a pure function: every length keeps its size, to a millionth of the new unit; places stay, for they are in the
 * drawing's own unit. What follows is each key of the file that holds a length, a rate or a depth: a test compares the job
 * as read before and after.
 */

import type { JobFile } from '#job/job-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import type { ShownUnit } from '#units/show-length.ts';

type Turn = (length: number) => number;
type Process = JobFile['process'];
type Coupon = Exclude<NonNullable<Process['coupon']>, readonly unknown[]>;
type Factor = NonNullable<Process['etchFactor']>;

export function setJobUnit(job: JobFile, unit: ShownUnit): JobFile {
  const scale = millimetresIn(job.units ?? 'mm') / millimetresIn(unit);
  if (scale === 1) return { ...job, units: unit };
  const length: Turn = (value) => {
    const turned = toMillionth(value * scale);
    // More places where the length would else not be itself again when it is turned back.
    const isSame = toMillionth(turned / scale) === toMillionth(value);
    return isSame ? turned : Number((value * scale).toFixed(9));
  };
  const { joinTolerance, levels, lockedLevels, rules, handoff, far } = job;
  return {
    ...job,
    units: unit,
    ...(joinTolerance === undefined ? {} : { joinTolerance: length(joinTolerance) }),
    stock: turnedStock(job.stock, length),
    process: turnedProcess(job.process, length, scale),
    requirements: job.requirements.map((each) => turnedRequirement(each, length)),
    ...(rules === undefined ? {} : { rules: turnedKeys(rules, length) }),
    ...(far?.registration === undefined ? {} : { far: { ...far, registration: length(far.registration) } }),
    ...(levels === undefined ? {} : { levels: Array.isArray(levels) ? levels.map(length) : levels }),
    ...(lockedLevels === undefined ? {} : { lockedLevels: lockedLevels.map(length) }),
    ...(handoff === undefined ? {} : { handoff: turnedHandoff(handoff, length) }),
  };
}

function turnedStock(stock: JobFile['stock'], length: Turn): JobFile['stock'] {
  const { thickness, minus, plus, measured, survey } = stock;
  return {
    ...stock,
    thickness: typeof thickness === 'number' ? length(thickness) : turnedTaper(thickness, length),
    ...(minus === undefined ? {} : { minus: length(minus) }),
    ...(plus === undefined ? {} : { plus: length(plus) }),
    ...(measured === undefined
      ? {}
      : {
          measured: measured.map((each) =>
            typeof each === 'number' ? length(each) : { ...each, thickness: length(each.thickness) },
          ),
        }),
    ...(Array.isArray(survey)
      ? { survey: survey.map(([x, y, each]): [number, number, number] => [x, y, length(each)]) }
      : {}),
  };
}

/** Ends of a taper that are lengths; its places are not. */
function turnedTaper<Taper extends object>(taper: Taper, length: Turn): Taper {
  const ends = ['thicknessFrom', 'thicknessTo', 'depthFrom', 'depthTo'];
  const entries = Object.entries(taper).map(([key, value]) => [
    key,
    ends.includes(key) && typeof value === 'number' ? length(value) : value,
  ]);
  return Object.fromEntries(entries) as Taper;
}

/** Digits and not places for a rate: a slow bath in inches has its first one in the fourth place. */
function turnedProcess(process: Process, length: Turn, scale: number): Process {
  const rate: Turn = (value) => Number((value * scale).toPrecision(7));
  const { rate: given, coupon, hoist, etchFactor, depthPerUndercut } = process;
  return {
    ...process,
    ...(given === undefined ? {} : { rate: rate(given) }),
    ...(coupon === undefined
      ? {}
      : {
          coupon: Array.isArray(coupon)
            ? coupon.map((each) => turnedCoupon(each, length))
            : turnedCoupon(coupon, length),
        }),
    ...(hoist === undefined ? {} : { hoist: { slowest: rate(hoist.slowest), fastest: rate(hoist.fastest) } }),
    ...(etchFactor === undefined ? {} : { etchFactor: turnedFactor(etchFactor, length) }),
    ...(depthPerUndercut === undefined ? {} : { depthPerUndercut: turnedFactor(depthPerUndercut, length) }),
  };
}

/** Of a table the depths; a factor is one length over another. */
function turnedFactor(factor: Factor, length: Turn): Factor {
  return Array.isArray(factor)
    ? factor.map(([depth, each]): [number, number] => [length(depth), each])
    : factor;
}

function turnedCoupon(coupon: Coupon, length: Turn): Coupon {
  const { before, after, gauge, opening } = coupon;
  return {
    ...coupon,
    before: length(before),
    after: length(after),
    ...(gauge === undefined ? {} : { gauge: length(gauge) }),
    ...(opening === undefined ? {} : { opening: turnedKeys(opening, length) }),
  };
}

function turnedRequirement(
  requirement: JobFile['requirements'][number],
  length: Turn,
): JobFile['requirements'][number] {
  const { taper, at, layer, tabs, ...lengths } = requirement;
  return {
    ...(layer === undefined ? {} : { layer }),
    ...(at === undefined ? {} : { at }),
    ...turnedKeys(lengths, length),
    ...(taper === undefined ? {} : { taper: turnedTaper(taper, length) }),
    ...(tabs === undefined ? {} : { tabs: { ...tabs, width: length(tabs.width) } }),
  };
}

function turnedHandoff(
  handoff: NonNullable<JobFile['handoff']>,
  length: Turn,
): NonNullable<JobFile['handoff']> {
  const { inspection, scribe, program, template } = handoff;
  return {
    ...handoff,
    ...(inspection === undefined ? {} : { inspection: turnedKeys(inspection, length) }),
    ...(scribe === undefined ? {} : { scribe: turnedOvercut(scribe, length) }),
    ...(program === undefined ? {} : { program: turnedOvercut(program, length) }),
    ...(template === undefined ? {} : { template: turnedTemplate(template, length) }),
  };
}

function turnedOvercut<Cutting extends { readonly overcut?: number | undefined }>(
  cutting: Cutting,
  length: Turn,
): Cutting {
  const { overcut } = cutting;
  return overcut === undefined ? cutting : { ...cutting, overcut: length(overcut) };
}

type Template = NonNullable<NonNullable<JobFile['handoff']>['template']>;

function turnedTemplate(template: Template, length: Turn): Template {
  const { knife, bridge, holes, web, margin } = template;
  return {
    ...template,
    ...(knife?.width === undefined ? {} : { knife: { ...knife, width: length(knife.width) } }),
    ...(bridge === undefined ? {} : { bridge: turnedKeys(bridge, length) }),
    ...(holes?.diameter === undefined ? {} : { holes: { ...holes, diameter: length(holes.diameter) } }),
    ...(web === undefined ? {} : { web: length(web) }),
    ...(margin === undefined ? {} : { margin: length(margin) }),
  };
}

/** Every figure of an object that holds nothing but lengths. */
function turnedKeys<Held extends object>(held: Held, length: Turn): Held {
  const entries = Object.entries(held).map(([key, value]) => [
    key,
    typeof value === 'number' ? length(value) : value,
  ]);
  return Object.fromEntries(entries) as Held;
}
