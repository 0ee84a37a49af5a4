/**
 * plan.json: the plan as others read it (format `isobath-plan`, version 1). Millimetres, minutes, grams; coordinates in the
 * drawing's own frame, scaled to millimetres. One schema: what is written has its type, what is read is held to it, and it is
 * published. A key that is not known here is passed over.
 */
import * as z from 'zod/mini';
import { bathSheetSchema } from '#bath/bath-sheet.ts';
import { provenanceKind } from '#bath/figures-file.ts';
import { JOB } from '#job/job-file.ts';
import { LENGTH_UNITS } from '#units/length-unit.ts';

const figure = z.number();
const atLeastNothing = z.number().check(z.gte(0));
const figureOrNone = z.nullable(figure);
const place = z.tuple([figure, figure]);
const ids = z.array(z.string());
const count = z.number().check(z.gte(0), z.multipleOf(1));
const masking = z.enum(['peel-next', 're-mask']);

/** Vertices are [x, y, bulge]; the bulge, tan(included angle / 4), bends the way to the next vertex, counter-clockwise positive. */
const contour = z.object({ closed: z.boolean(), vertices: z.array(z.tuple([figure, figure, figure])) });
const contours = z.array(contour);

const region = z.object({
  id: z.string(),
  /** Of a part that is etched on both faces; ids of the far face begin with F. */
  face: z.exactOptional(z.enum(['near', 'far'])),
  layer: z.string(),
  label: place,
  area: figure,
  contours,
  asked: z.object({ depth: figure, plus: figure, minus: figure }),
  level: figure,
  reached: z.object({ floorArea: figure, share: figure, deepest: figure, shallowest: figure }),
});

const stage = z.object({
  number: count,
  level: atLeastNothing,
  etch: atLeastNothing,
  minutes: atLeastNothing,
  startMinute: atLeastNothing,
  color: z.string(),
  regions: ids,
  /** Numbers of the stages whose lines are still sealed while this one is in the bath. */
  sealed: z._default(z.array(count), []),
  piece: contours,
  opening: contours,
  lines: contours,
  /** What the far face opens, peels and cuts, seen through the part; only where the plan has both faces. */
  far: z.exactOptional(z.object({ piece: contours, opening: contours, lines: contours })),
  removedVolume: figure,
  removedMass: figureOrNone,
});

/** What a number of stages would cost in tolerance, whatever rule the plan's own levels follow. */
const levelChoice = z.object({
  stages: count,
  /** The best levels of that number, deepest first. */
  levels: z.array(figure),
  /** Greatest share of its tolerance that any region would use up; more than 1 where one falls out. */
  worstShare: figure,
  /** Every etched region of the drawing; of a taper the depth that is worst off, and its level. */
  regions: z.array(z.object({ id: z.string(), level: figure, share: figure })),
});

/** One side; negative figures are room that is left before the depth required is passed at all. */
const side = {
  /** Known beforehand: the level chosen, and a sheet whose tolerance is not even. */
  shift: figure,
  /** A bound: what no run passes, readings off by up to five standard deviations of their mean. */
  worst: figure,
  /** Shift and root-sum-square of the parts. */
  likely: figure,
  allowed: figure,
};
const budgetSum = z.object({
  /** ±, at worst. */
  parts: z.object({ sheet: figure, rate: figure, timing: figure, gauge: figure }),
  tooDeep: z.object(side),
  tooShallow: z.object(side),
  /** Root-sum-square over what is allowed, on the worse side; null where nothing is allowed. */
  share: figureOrNone,
});

/** What may go wrong with the floors of one level and one tolerance against what is asked; docs/method.md, M6. */
const budget = z.object({
  regions: ids,
  level: figure,
  /** Least and greatest depth asked of them; as a depth, or as the final thickness that it leaves. */
  asked: z.object({
    what: z.enum(['depth', 'thickness']),
    low: figure,
    high: figure,
    plus: figure,
    minus: figure,
  }),
  byClock: budgetSum,
  /** Each stage gauged at four fifths and its minutes corrected. */
  gauged: budgetSum,
  /** What helps most, one change after the other until the tolerance is held or nothing helps more; the worse side then. */
  remedy: z.object({ changes: ids, ...side }),
});

/** mm off the drawn line; null where nothing is asked. */
const lineSide = { worst: figure, likely: figure, allowed: figureOrNone };
const lineSum = z.object({
  /** What each cause alone comes to, ±; one that is not there is left out. */
  parts: z.object({
    factor: z.exactOptional(figure),
    rate: z.exactOptional(figure),
    depth: z.exactOptional(figure),
    floor: z.exactOptional(figure),
    scribing: z.exactOptional(figure),
    slot: z.exactOptional(figure),
    laying: z.exactOptional(figure),
    stretch: z.exactOptional(figure),
  }),
  outward: z.object(lineSide),
  inward: z.object(lineSide),
});

/** How far drawn edges of one step and one tolerance may come out off their lines; docs/method.md, M6.5. */
const lineBudget = z.object({
  /** Whose edges they are: the deeper regions. */
  regions: ids,
  level: figure,
  /** Depth of the shallower floor; 0 for land. */
  beside: figure,
  /** Of what is cut out: the depth at which the drawn line stands on the wall. */
  wall: z.exactOptional(figure),
  /** Of all these edges, and the middle of the longest. */
  length: figure,
  at: place,
  allowance: figure,
  /** mm that the edge moves for each mm that its step is off, at a factor of 1. */
  amplification: figure,
  byClock: lineSum,
  gauged: lineSum,
  remedy: z.object({ changes: ids, outward: z.object(lineSide), inward: z.object(lineSide) }),
});

/** Root-sum-square over what is allowed, of the worst floor that has a final thickness; null where one has no tolerance. */
const surveyShare = z.object({
  /** Deepest first. */
  levels: z.array(figure),
  byClock: figureOrNone,
  gauged: figureOrNone,
});

/** Thickness of this very sheet: the sum of terms times 1, u, v, u², uv, v², u and v being x and y from `about`, over `scale`; docs/method.md, M8. */
const survey = z.object({
  model: z.enum(['constant', 'plane', 'quadratic']),
  about: place,
  scale: figure,
  terms: z.array(figure),
  /** Root mean square by which readings left out are missed. */
  sigma: figure,
  /** ±, where readings were taken. */
  doubt: figure,
  tried: z.array(z.object({ model: z.string(), sigma: figure })),
  /** `off`: how much thicker than the fit. */
  readings: z.array(z.object({ at: place, thickness: figure, off: figure })),
  /** At each region's label. */
  regions: z.array(z.object({ id: z.string(), thickness: figure, doubt: figure })),
  /** The same readings taken as one thickness with a spread, and as the sheet that they show. */
  before: z.exactOptional(surveyShare),
  after: z.exactOptional(surveyShare),
});

const thicknessRange = z.object({ least: figure, most: figure });

/** An overall etch before masking; outline, regions and stages of the plan are those of what it leaves; docs/method.md, M8.7. */
const sizing = z.object({
  /** Off each bare face. */
  amount: figure,
  faces: z.enum(['both', 'one']),
  minutes: atLeastNothing,
  /** What the outline and the edges of holes move in. */
  edge: figure,
  /** ±, what the sheet may be off by the sizing until it is gauged; it is in the budgets. */
  doubt: figure,
  /** Thickness of the sheet. */
  before: thicknessRange,
  after: thicknessRange,
  /** Null where the drawing has no outline, or the density is not known. */
  removedVolume: figureOrNone,
  removedMass: figureOrNone,
});

/** The wall between a floor and a shallower one or land, mm. */
const wallShape = z.object({
  level: figure,
  beside: figure,
  /** How far the deeper floor's line keeps back from the drawn line. */
  allowance: figure,
  /** Radius of the fillet at the foot, measured down; sideways it is φ times that. */
  fillet: figure,
  /** Smallest radius of an inside corner, in plan, that the edge comes out with as drawn. */
  corner: figure,
});

/** What one way of masking makes of the plan's levels: all in closed form, without its openings. */
const maskingChoice = z.object({
  masking,
  stages: count,
  /** Coats of maskant put on. */
  coats: count,
  /** Immersed. */
  minutes: figure,
  /** Greatest share of its tolerance that any region uses up, and greatest depth off what is asked, mm. */
  worstShare: figure,
  worstDeviation: figure,
  /** Longest overhang of maskant at any stage, mm. */
  overhang: figure,
  /** Each step that the part has, from the deepest down to land. */
  walls: z.array(wallShape),
});

const withdrawal = z.object({
  regions: ids,
  /** Unit vector in the drawing's frame that has to hang down. */
  down: place,
  /** From each row's minute the waterline moves on at its speed (mm/min); it is measured from the shallow end, mm. */
  rows: z.array(z.object({ minute: figure, waterline: figure, speed: figure })),
  minutes: figure,
  worstDeviation: figure,
  steps: z.nullable(z.object({ stages: count, minutes: figure, worstDeviation: figure })),
});

const findingRecord = z.object({
  code: z.string(),
  severity: z.enum(['stop', 'warn', 'note']),
  message: z.string(),
  remedy: z.string(),
  at: z.nullable(place),
  regions: ids,
  value: figureOrNone,
  limit: figureOrNone,
  file: z.exactOptional(z.string()),
  path: z.exactOptional(z.string()),
  line: z.exactOptional(count),
  layer: z.exactOptional(z.string()),
  outline: z.exactOptional(contours),
});

const provenance = z.object({
  quantity: z.string(),
  value: figure,
  unit: z.string(),
  source: z.string(),
  kind: provenanceKind,
  plusMinus: z.exactOptional(figure),
});

export const planFileSchema = z.object({
  format: z.literal('isobath-plan'),
  version: z.literal(1),
  /** As read, defaults filled in. */
  job: JOB.schema,
  drawing: z.object({ file: z.string(), sha256: z.string(), unit: z.enum(LENGTH_UNITS) }),
  /** Outer border of the sheet; null when no outline layer is named. */
  outline: z.nullable(contour),
  /** Other borders of the sheet: holes through it. */
  cutouts: contours,
  regions: z.array(region),
  /** Plan files from before there were two ways say none. */
  masking: z._default(masking, 'peel-next'),
  stages: z.array(stage),
  totals: z.object({
    minutes: figure,
    removedVolume: figure,
    removedMass: figureOrNone,
    partMass: figureOrNone,
    hydrogenLitres: figureOrNone,
  }),
  /**
   * What the fewest stages within tolerance, one fewer and one more would cost: the share of its tolerance (minus or plus
   * side) that the best such levels leave each region using; more than 1 is out of tolerance.
   */
  levelChoices: z.exactOptional(z.array(levelChoice)),
  budgets: z.exactOptional(z.array(budget)),
  /** Drawn edges: how far they may come out off their lines. */
  lineBudgets: z.exactOptional(z.array(lineBudget)),
  /** Only where the job has a survey. */
  survey: z.exactOptional(survey),
  /** Only where the sheet is sized; totals and bath sheet have it in them. */
  sizing: z.exactOptional(sizing),
  /** The run with one coat and with a new coat for each stage, side by side; only where there are two stages or more. */
  maskings: z.exactOptional(z.array(maskingChoice)),
  /** Tapers drawn out of the bath, beside the same in steps; only where the job names a hoist. */
  withdrawals: z.exactOptional(z.array(withdrawal)),
  bathSheet: z.exactOptional(bathSheetSchema),
  findings: z.array(findingRecord),
  provenance: z.array(provenance),
  /** Words that go with every plan: what can hurt, and who decides. */
  cautions: z._default(z.array(z.string()), []),
});

/** Nothing of it changes once it is made. */
type Fixed<Value> = Value extends object ? { readonly [Key in keyof Value]: Fixed<Value[Key]> } : Value;

export type PlanFile = Fixed<z.output<typeof planFileSchema>>;
export type Contour = Fixed<z.output<typeof contour>>;
export type PlanFileRegion = PlanFile['regions'][number];
export type PlanFileStage = PlanFile['stages'][number];
export type LevelChoice = Fixed<z.output<typeof levelChoice>>;
export type MaskingChoice = Fixed<z.output<typeof maskingChoice>>;
export type WallShape = Fixed<z.output<typeof wallShape>>;
export type SizingRecord = Fixed<z.output<typeof sizing>>;
export type SurveyShare = Fixed<z.output<typeof surveyShare>>;
export type BudgetRecord = Fixed<z.output<typeof budget>>;
export type BudgetSum = BudgetRecord['byClock'];
export type BudgetSide = BudgetSum['tooDeep'];
export type LineBudgetRecord = Fixed<z.output<typeof lineBudget>>;
export type LineSumRecord = Fixed<z.output<typeof lineSum>>;
export type WithdrawalRecord = Fixed<z.output<typeof withdrawal>>;

/** A plan as it is drawn, before what it comes to is measured. A plan file is one, too. */
export interface ShownPlan
  extends Pick<PlanFile, 'job' | 'drawing' | 'outline' | 'cutouts' | 'masking' | 'provenance' | 'cautions'> {
  readonly sizing?: SizingRecord;
  readonly regions: readonly ShownRegion[];
  readonly stages: readonly ShownStage[];
  readonly totals: Pick<PlanFile['totals'], 'minutes'>;
}

export type ShownRegion = Omit<PlanFileRegion, 'reached'>;
export type ShownStage = Omit<PlanFileStage, 'removedVolume' | 'removedMass'>;
