/**
 * The ladder: the sheet's thickness to scale, surface at the top, with a rung for each level and a stage in each space between
 * two. Read upwards it is the run, read downwards the part.
 */
import { useMemo, useRef } from 'react';
import { moveLevel } from '#app/state/edit-levels.ts';
import { type Rung, rungsOf } from '#app/state/rungs.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { showLength, showMinutes } from '#units/show-length.ts';
import { LadderAxis } from './LadderAxis.tsx';
import { FarFaceRow, RungRow, StageRow } from './LadderRows.tsx';
import { placeRows } from './ladder-layout.ts';
import { RungHandle } from './RungHandle.tsx';

const MARGIN = { top: 26, bottom: 26 };
/** Heights of rows, px: two lines of words where there is room for all, else one. */
const ROOMY = { rung: 40, stage: 40, farFace: 20 };
const TIGHT = { rung: 22, stage: 20, farFace: 20 };
/** The line above the rows, px. */
const NOTE = 20;

export function LadderView() {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const document = useDocument();
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const rungs = useMemo(() => (plan === undefined ? [] : rungsOf(plan)), [plan]);
  const thickness = document === undefined ? 0 : sheetThickness(document.job);
  return (
    <section className={isStale ? 'ladder stale' : 'ladder'} aria-labelledby="ladder-heading">
      <h2 id="ladder-heading">Levels</h2>
      <p className="aside">
        {plan?.masking === 're-mask'
          ? 'Downwards the run and the part.'
          : 'Upwards the run, downwards the part.'}
      </p>
      <div className="ladder-frame" ref={frame}>
        {size !== undefined && thickness > 0 && <Ladder rungs={rungs} thickness={thickness} size={size} />}
      </div>
    </section>
  );
}

interface LadderProps {
  readonly rungs: readonly Rung[];
  readonly thickness: number;
  readonly size: Size;
}

function Ladder({ rungs, thickness, size }: LadderProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const row = neededFor(rungs.length, ROOMY) <= size.height ? ROOMY : TIGHT;
  const height = Math.max(size.height, neededFor(rungs.length, row));
  const scale = (height - MARGIN.top - MARGIN.bottom) / thickness;
  const yOf = (depth: number) => MARGIN.top + depth * scale;
  const rows = useMemo(() => ladderRows(rungs, thickness), [rungs, thickness]);
  const tops = placeRows(
    rows.map(({ kind, depth }) => ({ wanted: yOf(depth) - NOTE, height: row[kind] })),
    height - NOTE,
  ).map((top) => top + NOTE);
  return (
    <div className="ladder-body" style={{ height }}>
      <LadderAxis
        rungs={rungs}
        thickness={thickness}
        height={height}
        yOf={yOf}
        unit={unit}
        leaders={rows.map(({ kind, depth }, index) => ({
          from: yOf(depth),
          to: (tops[index] ?? 0) + row[kind] / 2,
          isFaint: kind === 'stage',
        }))}
      />
      {rungs.map((rung) => (
        <RungHandle
          key={rung.stage.number}
          rung={rung}
          thickness={thickness}
          yOf={yOf}
          onMove={(to) =>
            actions.edit(`level ${showLength(rung.stage.level, unit)} to ${showLength(to, unit)}`, (job) =>
              moveLevel(job, { from: rung.stage.level, to, levels: rungs.map(({ stage }) => stage.level) }),
            )
          }
        />
      ))}
      <ol className={row === TIGHT ? 'ladder-rows tight' : 'ladder-rows'}>
        {rows.map(({ kind, rung }, index) => (
          <li key={`${kind}-${rung?.stage.number ?? 0}`} style={{ top: tops[index] ?? 0, height: row[kind] }}>
            {kind === 'rung' && <RungRow rung={rung} thickness={thickness} />}
            {kind === 'stage' && <StageRow stage={rung.stage} />}
            {kind === 'farFace' && <FarFaceRow thickness={thickness} />}
          </li>
        ))}
      </ol>
      {rungs.length === 0 && (
        <p className="ladder-empty">No levels yet. Pick regions on the sheet and type a depth.</p>
      )}
      {rungs.length > 0 && <p className="surface-note">{totalMinutes(rungs)}</p>}
    </div>
  );
}

function neededFor(rungs: number, row: typeof ROOMY): number {
  return NOTE + rungs * (row.rung + row.stage) + row.farFace;
}

type Row =
  | { readonly kind: 'rung' | 'stage'; readonly rung: Rung; readonly depth: number }
  | { readonly kind: 'farFace'; readonly rung: undefined; readonly depth: number };

/** From the surface down: the space of the last stage, its rung, and so on to the deepest rung and the far face. */
function ladderRows(rungs: readonly Rung[], thickness: number): Row[] {
  const rows: Row[] = [];
  let above = 0;
  for (const rung of [...rungs].reverse()) {
    const { level } = rung.stage;
    rows.push({ kind: 'stage', rung, depth: (above + level) / 2 }, { kind: 'rung', rung, depth: level });
    above = level;
  }
  return [...rows, { kind: 'farFace', rung: undefined, depth: thickness }];
}

function totalMinutes(rungs: readonly Rung[]): string {
  return `${showMinutes(rungs.reduce((sum, { stage }) => sum + stage.minutes, 0))} immersed`;
}
