/**
 * The plan from regions and what is asked of them: levels, then openings, pieces and scribe lines cluster by cluster,
 * then the stages of the run: deepest level first (M4.3), or with re-mask shallowest first (M3.5).
 */
import { etchMinutes } from '#bath/etch-minutes.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAGITTA } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { Asked, Part, Region, RegionId } from '#part/part.ts';
import { allowance, throughAllowance, type Undercut, undercutOf } from './allowance.ts';
import { chooseLevels, nearLevelFindings } from './choose-levels.ts';
import { compareMaskings, type MaskedFace } from './compare-maskings.ts';
import { compareWithdrawals } from './compare-withdrawals.ts';
import type { EtchPlan, PlannedRegion, Stage } from './etch-plan.ts';
import type { DepthBand } from './fewest-levels.ts';
import { levelCosts } from './level-costs.ts';
import { type ClusterMemory, createClusterMemory, type FaceToOpen, openClusters } from './open-clusters.ts';
import { type ClusterStage, lastOpened, type OpenedCluster } from './opened-cluster.ts';
import { stageColors } from './stage-colors.ts';
import { depthBands, type Strips, stripTapers } from './taper-strips.ts';

/** A face of the sheet and what is asked of its regions. */
export interface PlanFace {
  readonly part: Part;
  readonly asked: ReadonlyMap<RegionId, Asked>;
}

export interface PlanInput extends PlanFace {
  /** The other face, in the same frame; left out where nothing is asked of it. */
  readonly far?: PlanFace | undefined;
  readonly job: Job;
  readonly memory?: ClusterMemory;
}

/**
 * Findings: `level-missing`, `level-unused`, `opening-missing`, `border-left-as-chords`, `levels-too-near`, `nothing-to-etch`, and those of `taper-strips.ts`.
 * Tapered regions come out as their strips.
 */
export function makePlan(input: PlanInput): EtchPlan {
  return openPlan(levelPlan(input));
}

/** A plan whose levels are chosen, before anything is opened. */
export interface LevelledPlan {
  readonly job: Job;
  /** The near face first. */
  readonly faces: readonly LevelledFace[];
  /** Of both faces, deepest first. */
  readonly all: readonly number[];
  readonly findings: readonly Finding[];
}

export interface LevelledFace {
  /** As it was asked; what is opened goes into its memory. */
  readonly face: FaceWithMemory;
  readonly strips: Strips;
  readonly regions: readonly PlannedRegion[];
  /** What its clusters are opened from. */
  readonly toOpen: FaceToOpen;
}

/** The part of `makePlan` before clusters are opened, which others may open ahead into the faces' memories. */
export function levelPlan({
  part,
  asked,
  far,
  job,
  memory = createClusterMemory(),
}: PlanInput): LevelledPlan {
  const faces =
    far === undefined ? [{ part, asked, memory }] : [{ part, asked, memory }, farFace(far, memory)];
  const strips = faces.map((face) => stripFace(face, faces, job));
  const chosen = chooseLevels(new Map(strips.flatMap((each) => [...each.asked])), job, {
    levels: strips.find(({ levels }) => levels !== undefined)?.levels,
    levelOf: new Map(strips.flatMap(({ levelOf }) => [...levelOf])),
  });
  const regions = strips.map((each) => regionsOf(each, chosen.ofRegion));
  const all = levelsOf(regions.flat());
  const undercut = undercutOf(job.process, all);
  return {
    job,
    all,
    findings: chosen.findings,
    faces: faces.map((face, index): LevelledFace => {
      const own = itemAt(regions, index);
      const cut = itemAt(strips, index);
      return {
        face,
        strips: cut,
        regions: own,
        toOpen: faceToOpen(cut.part, own, undercut),
      };
    }),
  };
}

/** The rest of `makePlan`; clusters that the memories have are not opened again. */
export function openPlan({ job, faces, all, findings: levelFindings }: LevelledPlan): EtchPlan {
  const strips = faces.map((face) => face.strips);
  const opened = faces.map(openFace);
  const left = new Map(strips.flatMap((each) => [...each.bands]));
  const bands = new Map(
    strips.flatMap((each, index) => askedBands(each.bands, itemAt(faces, index).face.asked)),
  );
  const drawnOut = faces.map(({ face }) =>
    compareWithdrawals(face.part, face.asked, { process: job.process, levels: all }),
  );
  const findings = [
    ...strips.flatMap((each) => each.findings),
    ...drawnOut.flatMap((each) => each.findings),
    ...levelFindings,
    ...nearLevelFindings([...new Set(left.values())], job),
    ...opened.flatMap((each) => each.findings),
    ...(faces.some(({ face }) => asksForEtch(face.asked)) ? [] : [finding('nothing-to-etch', {})]),
  ];
  const maskings = compareMaskings({ sides: opened, bands, process: job.process });
  const withdrawals = drawnOut.flatMap((each) => each.withdrawals);
  const { etchFactor, masking, rate } = job.process;
  const [near, other] = faces.map(
    ({ strips: { part: cut }, regions }, index): EtchPlan => ({
      arrangement: cut.arrangement,
      regionOfFace: cut.regionOfFace,
      regions,
      sheet: cut.sheet,
      stages: stagesOf(regions, itemAt(opened, index).stages, all, job.process),
      clusters: itemAt(opened, index).clusters,
      masking,
      etchFactor,
      rate,
      findings: [],
    }),
  );
  return {
    ...(near as EtchPlan),
    ...(maskings.length === 0 ? {} : { maskings }),
    ...(other === undefined ? {} : { far: other }),
    findings,
    levelChoices: levelCosts(bands, { locked: job.lockedLevels, leftOf: left }),
    ...(withdrawals.length === 0 ? {} : { withdrawals }),
  };
}

interface FaceWithMemory extends PlanFace {
  readonly memory: ClusterMemory;
}

function farFace(far: PlanFace, memory: ClusterMemory): FaceWithMemory {
  memory.far ??= createClusterMemory();
  return { ...far, memory: memory.far };
}

/** Levels serve the tapers of both faces, so that each is cut into strips with those of the other in mind (M9.2). */
function stripFace(face: FaceWithMemory, faces: readonly FaceWithMemory[], job: Job): Strips {
  const others = faces.filter((each) => each !== face);
  const beside = others.flatMap(({ part, asked }) => [...depthBands(part, asked).values()]);
  return stripTapers({ ...face, job }, face.memory, beside);
}

/** What levels must serve, with the whole tolerance that is asked: also what is kept for the run (M8.2). */
function askedBands(
  bands: ReadonlyMap<RegionId, DepthBand>,
  asked: ReadonlyMap<RegionId, Asked>,
): (readonly [RegionId, DepthBand])[] {
  const known = new Map<DepthBand, DepthBand>();
  return [...bands].map(([id, band]) => {
    const { plus, minus } = asked.get(id) ?? band;
    const whole = known.get(band) ?? { ...band, plus, minus };
    known.set(band, whole);
    return [id, whole];
  });
}

function regionsOf(
  { part, asked, taperOf }: Strips,
  levelOf: ReadonlyMap<RegionId, number>,
): readonly PlannedRegion[] {
  return part.regions.map((region): PlannedRegion => {
    const taper = taperOf.get(region.id);
    const planned = plannedRegion(region, {
      asked: asked.get(region.id) ?? NOTHING_ASKED,
      level: levelOf.get(region.id) ?? 0,
    });
    return taper === undefined ? planned : { ...planned, taper };
  });
}

const NOTHING_ASKED: Asked = { depth: 0, plus: 0, minus: 0 };

/** Field by field: a copy by spread with more added to it takes twice the room, and there may be hundreds of thousands. */
function plannedRegion(
  { id, face, layer, layers, label, area, loops }: Region,
  { asked, level }: Pick<PlannedRegion, 'asked' | 'level'>,
): PlannedRegion {
  return { id, face, layer, layers, label, area, loops, asked, level };
}

interface OpenedFace extends MaskedFace {
  readonly clusters: readonly OpenedCluster[];
  /** By cluster. */
  readonly stages: readonly (readonly ClusterStage[])[];
  readonly findings: readonly Finding[];
}

function faceToOpen(
  { arrangement, regionOfFace, sheet }: Part,
  regions: readonly PlannedRegion[],
  undercut: Undercut,
): FaceToOpen {
  const keepOfThrough = new Map(
    regions.flatMap(({ face, level, asked: { wall } }) =>
      wall === undefined || level === 0 ? [] : [[face, throughAllowance(undercut, { level, wall })] as const],
    ),
  );
  return { arrangement, levels: levelsByFace({ regionOfFace, sheet }, regions), undercut, keepOfThrough };
}

function openFace({ face, strips: { part }, regions, toOpen }: LevelledFace): OpenedFace {
  const { arrangement, levels, undercut } = toOpen;
  const clusters = openClusters(toOpen, face.memory);
  return {
    arrangement,
    levels,
    clusters,
    stages: clusters.map((each) => each.stages),
    findings: [
      ...missingOpenings(regions, clusters, undercut, part.regionOfFace),
      ...chordFindings(clusters),
    ],
  };
}

function asksForEtch(asked: ReadonlyMap<RegionId, Asked>): boolean {
  return [...asked.values()].some(({ depth, tapers }) => depth > 0 || tapers !== undefined);
}

/** Levels by face. Without a sheet the outside is land that goes on for ever; with one it is no metal. */
function levelsByFace(
  part: Pick<Part, 'regionOfFace' | 'sheet'>,
  regions: readonly PlannedRegion[],
): Float64Array {
  return Float64Array.from(part.regionOfFace, (region, face) => {
    if (region >= 0) return itemAt(regions, region).level;
    return face === 0 && part.sheet.length === 0 ? 0 : -1;
  });
}

function stagesOf(
  regions: readonly PlannedRegion[],
  clusters: readonly (readonly ClusterStage[])[],
  /** Of both faces, deepest first. */
  levels: readonly number[],
  { rate, masking }: Pick<Job['process'], 'rate' | 'masking'>,
): Stage[] {
  const isRemasked = masking === 're-mask';
  const colors = stageColors(levels.length);
  const deepest = levels[0] ?? 0;
  const byLevel = groupByLevel(clusters.flat());
  const deepestFirst = levels.map((level, index): Stage => {
    const next = levels[index + 1] ?? 0;
    const etch = level - next;
    return {
      number: isRemasked ? levels.length - index : index + 1,
      level,
      base: isRemasked ? next : 0,
      etch,
      minutes: etchMinutes({ depth: etch, rate }),
      startMinute: etchMinutes({ depth: isRemasked ? next : deepest - level, rate }),
      color: itemAt(colors, index),
      regions: regions.filter((region) => region.level === level).map(({ id }) => id),
      piece: (byLevel.get(level) ?? []).flatMap(({ piece }) => piece),
      opening: clusters.flatMap((each) => lastOpened(each, level)?.opening ?? []),
      lines: (byLevel.get(level) ?? []).flatMap(({ lines }) => lines),
    };
  });
  return isRemasked ? deepestFirst.reverse() : deepestFirst;
}

/** Deepest first. */
function levelsOf(regions: readonly PlannedRegion[]): number[] {
  return [...new Set(regions.map(({ level }) => level))].filter((level) => level > 0).sort((a, b) => b - a);
}

function groupByLevel(stages: readonly ClusterStage[]): Map<number, ClusterStage[]> {
  const groups = new Map<number, ClusterStage[]>();
  for (const stage of stages) {
    const group = groups.get(stage.level);
    if (group === undefined) groups.set(stage.level, [stage]);
    else group.push(stage);
  }
  return groups;
}

/** Borders that could not be made of exact lines and arcs: one finding a level. */
function chordFindings(clusters: readonly OpenedCluster[]): Finding[] {
  const byLevel = groupByLevel(clusters.flatMap((each) => each.stages));
  return [...byLevel].flatMap(([level, stages]) => {
    const [at, ...more] = stages.flatMap(({ chords }) => chords);
    if (at === undefined) return [];
    return [finding('border-left-as-chords', { level, places: more.length + 1, off: SAGITTA }, { at })];
  });
}

/** Regions of which no point may be opened at their level. */
function missingOpenings(
  regions: readonly PlannedRegion[],
  clusters: readonly OpenedCluster[],
  undercut: Undercut,
  regionOfFace: readonly number[],
): Finding[] {
  return clusters.flatMap(({ closedFaces }) =>
    closedFaces.map((face) => {
      const region = itemAt(regions, itemAt(regionOfFace, face));
      const facts = {
        depth: region.level,
        allowance: allowance(undercut, { level: region.level, depth: 0 }),
      };
      return finding('opening-missing', facts, { at: region.label, regions: [region.id] });
    }),
  );
}
