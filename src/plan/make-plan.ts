/**
 * The plan from regions and what is asked of them: levels, then openings, pieces and scribe lines cluster by cluster,
 * then the stages of the run: deepest level first, or with re-mask shallowest first (M3, M4).
 */
import { etchMinutes } from '#bath/etch-minutes.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import { SAGITTA } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import type { Asked, Part, RegionId } from '#part/part.ts';
import { allowance, type Undercut, undercutOf } from './allowance.ts';
import { chooseLevels, nearLevelFindings } from './choose-levels.ts';
import { compareMaskings } from './compare-maskings.ts';
import { compareWithdrawals } from './compare-withdrawals.ts';
import type { EtchPlan, PlannedRegion, Stage } from './etch-plan.ts';
import { levelCosts } from './level-costs.ts';
import { type ClusterMemory, createClusterMemory, openClusters } from './open-clusters.ts';
import { type ClusterStage, lastOpened, type OpenedCluster } from './opened-cluster.ts';
import { stageColors } from './stage-colors.ts';
import { stripTapers } from './taper-strips.ts';

export interface PlanInput {
  readonly part: Part;
  readonly asked: ReadonlyMap<RegionId, Asked>;
  readonly job: Job;
  readonly memory?: ClusterMemory;
}

/**
 * Findings: `level-missing`, `level-unused`, `opening-missing`, `border-left-as-chords`, `levels-too-near`, `nothing-to-etch`, and those of `taper-strips.ts`.
 * Tapered regions come out as their strips.
 */
export function makePlan(input: PlanInput): EtchPlan {
  const { job, memory = createClusterMemory() } = input;
  const strips = stripTapers(input, memory);
  const { part, asked } = strips;
  const { ofRegion, findings: levelFindings } = chooseLevels(asked, job, strips);
  const regions = part.regions.map((region): PlannedRegion => {
    const taper = strips.taperOf.get(region.id);
    return {
      ...region,
      asked: asked.get(region.id) ?? { depth: 0, plus: 0, minus: 0 },
      level: ofRegion.get(region.id) ?? 0,
      ...(taper === undefined ? {} : { taper }),
    };
  });
  const { etchFactor, masking, rate } = job.process;
  const undercut = undercutOf(job.process, levelsOf(regions));
  const levels = levelsByFace(part, regions);
  const clusters = openClusters({ arrangement: part.arrangement, levels, undercut, memory });
  const stages = stagesOf(
    regions,
    clusters.map((each) => each.stages),
    job.process,
  );
  const drawnOut = compareWithdrawals(input.part, input.asked, {
    process: job.process,
    levels: stages.map(({ level }) => level),
  });
  const findings = [
    ...strips.findings,
    ...drawnOut.findings,
    ...levelFindings,
    ...nearLevelFindings([...strips.bands.values()], job),
    ...missingOpenings(regions, clusters, undercut, part.regionOfFace),
    ...chordFindings(clusters),
  ];
  if (![...input.asked.values()].some(({ depth, tapers }) => depth > 0 || tapers !== undefined))
    findings.push(finding('nothing-to-etch', {}));
  const maskings = compareMaskings({
    arrangement: part.arrangement,
    levels,
    bands: strips.bands,
    process: job.process,
  });
  const levelChoices = levelCosts(strips.bands, job.lockedLevels);
  return {
    arrangement: part.arrangement,
    regionOfFace: part.regionOfFace,
    regions,
    sheet: part.sheet,
    stages,
    masking,
    ...(maskings.length === 0 ? {} : { maskings }),
    etchFactor,
    rate,
    findings,
    levelChoices,
    ...(drawnOut.withdrawals.length === 0 ? {} : { withdrawals: drawnOut.withdrawals }),
  };
}

/** Levels by face. Without a sheet the outside is land that goes on for ever; with one it is no metal. */
function levelsByFace(part: Part, regions: readonly PlannedRegion[]): Float64Array {
  return Float64Array.from(part.regionOfFace, (region, face) => {
    if (region >= 0) return itemAt(regions, region).level;
    return face === 0 && part.sheet.length === 0 ? 0 : -1;
  });
}

function stagesOf(
  regions: readonly PlannedRegion[],
  clusters: readonly (readonly ClusterStage[])[],
  { rate, masking }: Pick<Job['process'], 'rate' | 'masking'>,
): Stage[] {
  const levels = levelsOf(regions);
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
