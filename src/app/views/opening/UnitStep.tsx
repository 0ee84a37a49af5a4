/** The unit of a drawing that states none, or one that is in doubt, by what size the part would have. */

import { boxOfLines } from '#app/state/box-of-lines.ts';
import { outlineLayers } from '#app/state/edits/edit-sheet.ts';
import { isUnitInDoubt } from '#app/state/opening/opening-steps.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import type { JobFile } from '#job/job-file.ts';
import { type LengthUnit, millimetresIn, unitName } from '#units/length-unit.ts';

const LIKELY: readonly LengthUnit[] = ['mm', 'in', 'cm'];

export function UnitStep() {
  const { actions } = useWorkbench();
  const page = useWorkbenchState((state) => state.derived.page);
  const job = useDocument()?.job;
  const stated = page?.statedUnit;
  const isInDoubt = isUnitInDoubt(page);
  const of = partLines(page?.lines ?? [], job);
  const size = sizeOf(of.lines, job?.drawingUnits ?? stated);
  return (
    <>
      <p>
        <strong>
          {stated === undefined
            ? 'The drawing states no unit. Which one is it drawn in?'
            : `The drawing states that its unit is the ${unitName(stated)}${isInDoubt ? ', which is in doubt' : ''}.`}
        </strong>{' '}
        {size !== undefined && `Choose by the size of the ${of.isPart ? 'part' : 'drawing'}.`}
      </p>
      <p className="row">
        {LIKELY.map((unit) => (
          <button key={unit} type="button" onClick={() => actions.sayUnit(unit)}>
            {unitName(unit)}
            {size !== undefined && <span className="aside">{sizeWords(size, unit)}</span>}
          </button>
        ))}
      </p>
    </>
  );
}

/** Those of the part's edge where it is known, else of all layers that are not left out; all there are while nothing is known of layers. */
function partLines(
  lines: readonly DrawnLine[],
  job: JobFile | undefined,
): { readonly lines: readonly DrawnLine[]; readonly isPart: boolean } {
  const edge = job === undefined ? [] : outlineLayers(job);
  const ignored = job?.layers?.ignore ?? [];
  const own = lines.filter(({ layer }) =>
    edge.length > 0 ? edge.includes(layer) : !ignored.includes(layer),
  );
  return { lines: own, isPart: job?.layers?.ignore !== undefined };
}

/** Width and height in the drawing's own unit. Lines are in millimetres where the unit is known, else as drawn. */
function sizeOf(lines: readonly DrawnLine[], unit: LengthUnit | undefined): [number, number] | undefined {
  const box = boxOfLines(lines);
  if (box === undefined) return undefined;
  const scale = unit === undefined ? 1 : millimetresIn(unit);
  return [(box.maxX - box.minX) / scale, (box.maxY - box.minY) / scale];
}

function sizeWords([width, height]: [number, number], unit: LengthUnit): string {
  const scale = millimetresIn(unit) / MILLIMETRES_A_METRE;
  const metres = [width * scale, height * scale].map((length) => Number(length.toPrecision(3)));
  return `${metres.join(' × ')} m`;
}

const MILLIMETRES_A_METRE = 1000;
