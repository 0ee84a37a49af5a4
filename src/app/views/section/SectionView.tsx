/** The section strip: the part cut along the line on the sheet, at the clock's minute. */
import { useRef } from 'react';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { hasFarFace } from '#app/state/shown-face.ts';
import { useSize } from '#app/views/use-size.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { showLength } from '#units/show-length.ts';
import { SectionFigure } from './SectionFigure.tsx';
import { sectionScale } from './section-paths.ts';

/** As wide as the clock under it, to the pixel. */
const MARGIN = { left: 0, right: 0, top: 2, bottom: 2 };
export function SectionView() {
  const { actions } = useWorkbench();
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const job = useDocument()?.job;
  const { unit, sectionHeight, cut, minute } = useWorkbenchState((state) => state.session);
  const { section, page, isStale } = useWorkbenchState((state) => state.derived);
  // Where no plan came of the job, the last section is another job's.
  const shown = page?.plan === undefined && !isStale ? undefined : section;
  const isBehind =
    shown !== undefined &&
    (isStale || shown.of !== page?.plan || shown.cut !== cut || shown.minute !== minute);
  const thickness = job === undefined ? 0 : sheetThickness(job);
  const isOfBoth = useWorkbenchState(hasFarFace);
  const length =
    shown === undefined
      ? 0
      : Math.hypot(shown.cut.to.x - shown.cut.from.x, shown.cut.to.y - shown.cut.from.y);
  const scale =
    size === undefined || length === 0 || thickness === 0
      ? undefined
      : sectionScale({ length, thickness, room: { ...size, ...MARGIN }, isEqual: sectionHeight === 'equal' });
  return (
    <section className={isBehind ? 'section behind' : 'section'} aria-labelledby="section-heading">
      <header>
        <h2 id="section-heading">Section A–A</h2>
        {scale !== undefined && (
          <>
            <p className="section-scale">{showLength(length, unit)} long</p>
            <button
              type="button"
              className="heights"
              title="Heights as the room allows, or to the scale of lengths"
              aria-pressed={sectionHeight === 'equal'}
              onClick={() => actions.drawHeights(sectionHeight === 'equal' ? 'fitted' : 'equal')}
            >
              {scale.exaggeration === 1
                ? 'heights to scale'
                : `heights ×${Number(scale.exaggeration.toPrecision(3))}`}
            </button>
            <p>dashed: required</p>
            {isOfBoth && <p>near face above</p>}
          </>
        )}
      </header>
      <div className="section-frame" ref={frame}>
        {shown !== undefined && scale !== undefined && size !== undefined && (
          <SectionFigure
            section={shown.section}
            cut={shown.cut}
            stages={shown.of.stages}
            scale={scale}
            size={size}
          />
        )}
        {shown !== undefined && !shown.section.meetsMetal && (
          <p className="aside section-empty">The cut lies beside the sheet: draw its ends across the part.</p>
        )}
      </div>
    </section>
  );
}
