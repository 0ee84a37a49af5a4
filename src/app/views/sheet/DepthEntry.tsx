/** What is asked of the picked regions, edited in place: depth or what it leaves, and the tolerance. */
import type { RefObject } from 'react';
import type { RequirementEdit } from '#app/state/edit-job.ts';
import { outlineLayers, sheetChoice } from '#app/state/edit-sheet.ts';
import { isTapered, sheetThickness } from '#app/state/sheet-thickness.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownRegion } from '#job/files/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { showArea, showLength } from '#units/show-length.ts';
import { PickHint } from './PickHint.tsx';
import { TaperEntry } from './TaperEntry.tsx';

/** Names that fit; more are counted. */
const MOST_NAMES = 4;

export function DepthEntry({ inputRef }: { readonly inputRef: RefObject<HTMLInputElement | null> }) {
  const { actions } = useWorkbench();
  const document = useDocument();
  const { selection, unit } = useWorkbenchState((state) => state.session);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const regions = shapes.map((shape) => shape.region).filter(({ id }) => selection.includes(id));
  if (regions.length === 0 || document === undefined) return <PickHint />;

  const names = namesOf(regions);
  const thickness = sheetThickness(document.job);
  const depth = common(regions, ({ asked }) => asked.depth);
  const ask = (edit: RequirementEdit, words: string) => actions.askOfSelection(edit, `${words} of ${names}`);
  const layers = [...new Set(regions.map((region) => region.layer))];
  const mates = shapes.filter(({ region }) => layers.includes(region.layer));
  const area = regions.reduce((sum, region) => sum + region.area, 0);
  return (
    <form
      className="depth-entry picked"
      aria-label={`Asked of ${names}`}
      onSubmit={(event) => event.preventDefault()}
    >
      <p>
        <strong>{names}</strong>
        <span className="aside">
          {layers.join(', ')}, {showArea(area, unit)}
        </span>
        {mates.length > regions.length && (
          <button type="button" onClick={() => actions.select(mates.map(({ region }) => region.id))}>
            all {mates.length} on {layers.join(', ')}
          </button>
        )}
        {hasEdge(document.job) && (
          <button type="button" onClick={() => actions.punchSelection(`${names} through the sheet`)}>
            {regions.length === 1 ? 'a hole' : 'holes'} through the sheet
          </button>
        )}
      </p>
      <TaperEntry key={names} names={names} most={thickness} />
      <LengthField
        label="Depth"
        length={depth}
        least={0}
        most={thickness}
        inputRef={(input) => {
          inputRef.current = input;
        }}
        onTake={(length) => ask({ depth: length }, `depth ${showLength(length, unit)}`)}
      />
      <LengthField
        label="Leaves"
        length={depth === undefined || isTapered(document.job) ? undefined : thickness - depth}
        least={0}
        most={thickness}
        onTake={(length) => ask({ thickness: length }, `remaining ${showLength(length, unit)}`)}
      />
      <LengthField
        label="Deeper by"
        length={common(regions, ({ asked }) => asked.plus)}
        least={0}
        most={thickness}
        onTake={(length) => ask({ plus: length }, `plus ${showLength(length, unit)}`)}
      />
      <LengthField
        label="Shallower by"
        length={common(regions, ({ asked }) => asked.minus)}
        least={0}
        most={thickness}
        onTake={(length) => ask({ minus: length }, `minus ${showLength(length, unit)}`)}
      />
    </form>
  );
}

function hasEdge(job: JobFile): boolean {
  return outlineLayers(job).length > 0 || sheetChoice(job) !== undefined;
}

function namesOf(regions: readonly ShownRegion[]): string {
  if (regions.length > MOST_NAMES) return `${regions.length} regions`;
  return regions.map((region) => region.id).join(', ');
}

function common(regions: readonly ShownRegion[], value: (region: ShownRegion) => number): number | undefined {
  const values = new Set(regions.map(value));
  const [first] = values;
  return values.size === 1 ? first : undefined;
}
