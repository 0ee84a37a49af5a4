/** The unit of a drawing that states none, by what size the part would have. */

import { boxOfLines } from '#app/state/box-of-lines.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { type LengthUnit, millimetresIn, unitName } from '#units/length-unit.ts';

const LIKELY: readonly LengthUnit[] = ['mm', 'in', 'cm'];

export function UnitStep() {
  const { actions } = useWorkbench();
  const page = useWorkbenchState((state) => state.derived.page);
  const job = useDocument()?.job;
  const stated = page?.statedUnit;
  const size = sizeOf(page, job?.drawingUnits ?? stated);
  return (
    <>
      <p>
        <strong>
          {stated === undefined
            ? 'The drawing states no unit. Which one is it drawn in?'
            : `The drawing states that it is drawn in ${unitName(stated)}s.`}
        </strong>{' '}
        {size !== undefined && 'Choose by the size of the part.'}
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

/** Width and height in the drawing's own unit. Lines are in millimetres where the unit is known, else as drawn. */
function sizeOf(page: PlannedPage | undefined, unit: LengthUnit | undefined): [number, number] | undefined {
  const box = page && boxOfLines(page.lines);
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
