/** What is required of the picked regions, edited in place: depth or what it leaves, the tolerance, and where the plan lies in it. */
import { ChevronLeft, ChevronRight } from 'lucide-react';
import type { RequirementEdit } from '#app/state/edits/edit-job.ts';
import { outlineLayers, sheetChoice } from '#app/state/edits/edit-sheet.ts';
import { isTapered, sheetThickness } from '#app/state/sheet-thickness.ts';
import { isBehindEtched } from '#app/state/shown-face.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { LengthField } from '#app/views/LengthField.tsx';
import { useLeft } from '#app/views/use-left.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { showArea, showLength } from '#units/show-length.ts';
import { MoreAsked } from './MoreAsked.tsx';
import { PickHint } from './PickHint.tsx';
import { RegionChip } from './RegionChip.tsx';
import { TaperEntry } from './TaperEntry.tsx';
import { ToleranceBar } from './ToleranceBar.tsx';
import './requirements.css';

const { members } = JOB.members.requirements.item;

/** Names that fit; more are counted. */
const MOST_NAMES = 4;

export function RequirementsPanel() {
  const job = useDocument()?.job;
  const selection = useWorkbenchState((state) => state.session.selection);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const regions = shapes.map((shape) => shape.region).filter(({ id }) => selection.includes(id));
  if (regions.length === 0 || job === undefined) return <PickHint />;
  return (
    <form
      className="requirements"
      aria-label={`Required of ${namesOf(regions)}`}
      onSubmit={(event) => event.preventDefault()}
    >
      <PickedLine regions={regions} />
      <AskedFields job={job} regions={regions} />
      <ToleranceBar regions={regions} />
      <AlsoPick regions={regions} />
      <TaperEntry
        key={`taper ${namesOf(regions)}`}
        regions={regions}
        names={namesOf(regions)}
        thickness={sheetThickness(job)}
      />
      <MoreAsked key={`more ${namesOf(regions)}`} job={job} names={namesOf(regions)} />
      <Through job={job} regions={regions} />
    </form>
  );
}

interface PickedProps {
  readonly regions: readonly ShownRegion[];
}

function PickedLine({ regions }: PickedProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const all = useWorkbenchState((state) => state.derived.shapes);
  const at = all.findIndex(({ region }) => region.id === regions[0]?.id);
  const go = (by: number) => {
    const next = all[(at + by + all.length) % all.length];
    if (next !== undefined) actions.select([next.region.id]);
  };
  const area = regions.reduce((sum, region) => sum + region.area, 0);
  return (
    <div className="picked-line">
      <p>
        <strong>{namesOf(regions)}</strong> {regions.length === 1 && <RegionChip region={regions[0]} />}
      </p>
      <span className="aside">{regions.length === 1 ? `${at + 1} of ${all.length}` : ''}</span>
      <IconButton icon={ChevronLeft} name="Region before" keys="Page Up" onPress={() => go(-1)} />
      <IconButton icon={ChevronRight} name="Next region" keys="Page Down" onPress={() => go(1)} />
      <p className="aside where">
        {[...new Set(regions.map(({ layer }) => layer))].join(', ')}, {showArea(area, unit)}
      </p>
    </div>
  );
}

interface AskedProps extends PickedProps {
  readonly job: JobFile;
}

function AskedFields({ job, regions }: AskedProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const names = namesOf(regions);
  const thickness = sheetThickness(job);
  const depth = common(regions, ({ asked }) => asked.depth);
  const ask = (edit: RequirementEdit, words: string) => actions.askOfSelection(edit, `${words} of ${names}`);
  const left = useLeft();
  const isOtherEtched = useWorkbenchState(isBehindEtched);
  const within = { most: thickness };
  return (
    <>
      <div className="pair">
        <span className="figure-depth">
          <LengthField
            of={members.depth}
            length={depth}
            under={thickness}
            onTake={(length) => ask({ depth: length }, `depth ${showLength(length, unit)}`)}
          />
        </span>
        <span className="figure-left">
          <LengthField
            of={members.thickness}
            length={
              isTapered(job) ? undefined : common(regions, ({ id, asked }) => left?.([id], asked.depth).most)
            }
            placeholder={isTapered(job) ? 'by place' : 'mixed'}
            within={within}
            onTake={(length) => ask({ thickness: length }, `thickness left ${showLength(length, unit)}`)}
          />
        </span>
      </div>
      {isOtherEtched && <p className="aside">It leaves less where the other face is etched behind it.</p>}
      <div className="pair">
        <LengthField
          of={members.plus}
          length={common(regions, ({ asked }) => asked.plus)}
          within={within}
          onTake={(length) => ask({ plus: length }, `deeper by ${showLength(length, unit)}`)}
        />
        <LengthField
          of={members.minus}
          length={common(regions, ({ asked }) => asked.minus)}
          within={within}
          onTake={(length) => ask({ minus: length }, `shallower by ${showLength(length, unit)}`)}
        />
      </div>
    </>
  );
}

/** Ways to pick all that lies on the same level, or on the same layer. */
function AlsoPick({ regions }: PickedProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const all = useWorkbenchState((state) => state.derived.shapes).map(({ region }) => region);
  const levels = new Set(regions.map(({ level }) => level));
  const layers = new Set(regions.map(({ layer }) => layer));
  const level = common(regions, (region) => region.level);
  const sameLevel = all.filter((region) => levels.has(region.level));
  const sameLayer = all.filter((region) => layers.has(region.layer));
  const pick = (picked: readonly ShownRegion[]) => actions.select(picked.map(({ id }) => id));
  return (
    <p className="row">
      {level !== undefined && level > 0 && sameLevel.length > regions.length && (
        <button type="button" onClick={() => pick(sameLevel)}>
          Pick all {sameLevel.length} at {showLength(level, unit)}
        </button>
      )}
      {sameLayer.length > regions.length && (
        <button type="button" onClick={() => pick(sameLayer)}>
          Pick all {sameLayer.length} on {[...layers].join(', ')}
        </button>
      )}
    </p>
  );
}

function Through({ job, regions }: AskedProps) {
  const { actions } = useWorkbench();
  if (outlineLayers(job).length === 0 && sheetChoice(job) === undefined) return null;
  return (
    <button type="button" onClick={() => actions.punchSelection(`${namesOf(regions)} through the sheet`)}>
      {regions.length === 1 ? 'Make it a hole' : 'Make them holes'} through the sheet
    </button>
  );
}

function namesOf(regions: readonly ShownRegion[]): string {
  if (regions.length > MOST_NAMES) return counted(regions.length, 'region');
  return regions.map((region) => region.id).join(', ');
}

/** mm; of all of them, where they are the same to a µm. */
function common(
  regions: readonly ShownRegion[],
  value: (region: ShownRegion) => number | undefined,
): number | undefined {
  const [first, ...others] = regions.map(value);
  return others.every((other) => other?.toFixed(3) === first?.toFixed(3)) ? first : undefined;
}
