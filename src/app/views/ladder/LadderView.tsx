/**
 * The ladder: the sheet's thickness to scale, surface at the top, with a line for each level and a stage in each space between
 * two. Read upwards it is the run, read downwards the part. Where both faces are etched it reads from either surface towards the metal
 * between them, and the levels of the face on show can be moved.
 */

import { Pin, PinOff } from 'lucide-react';
import { type CSSProperties, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { fromJobUnits } from '#app/state/edits/edit-figures.ts';
import type { LadderWidth } from '#app/state/layout-state.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { type Size, useSize } from '#app/views/use-size.ts';
import { useSized } from '#app/views/use-sized.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';
import { LadderAxis } from './LadderAxis.tsx';
import { Row } from './LadderRows.tsx';
import { LevelCard } from './LevelCard.tsx';
import { LevelHandle, type MovableLevel } from './LevelHandle.tsx';
import { type LadderMeasures, ladderMeasures } from './ladder-measures.ts';
import { FIGURE, type LadderRow, ladderRows, rowHeight } from './ladder-rows.ts';
import { belowNear, type LadderSide, ladderSides, type SideLevel } from './ladder-sides.ts';

const MARGIN = { top: 8, bottom: 18 };
/** More below, for the name of the far face. */
const FAR_NAME = 16;
/** Of the line above the bar. */
const HEAD = 32;

export function LadderView() {
  const { layout } = useWorkbench();
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const document = useDocument();
  const how = useStore(layout, (state) => state.ladder);
  const unit = useWorkbenchState((state) => state.session.unit);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const faces = useWorkbenchState((state) => state.derived.page?.faces);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const sides = useMemo(() => ladderSides(plan, faces), [plan, faces]);
  const isSaid = document !== undefined && document.unsaid?.includes('stock') !== true;
  const sized = useSized();
  const thickness = isSaid ? sheetThickness(document.job, sized) : 0;
  const measures = ladderMeasures(how, unit);
  return (
    <section
      className={`ladder ${how}${isStale ? ' stale' : ''}`}
      aria-labelledby="ladder-heading"
      style={{ '--ladder-width': `${measures.width}px` } as CSSProperties}
    >
      <h2 id="ladder-heading" className="unseen">
        Levels
      </h2>
      <LadderHead how={how} measures={measures} near={sides.length === 1 ? undefined : sides[0]} />
      <div className="ladder-frame" ref={frame}>
        {!isSaid && how !== 'folded' && (
          <p className="ladder-empty" style={{ left: measures.figures }}>
            No sheet yet.
          </p>
        )}
        {size !== undefined && thickness > 0 && (
          <Ladder
            sides={sides}
            planned={plan?.stages ?? []}
            least={faces?.between?.least}
            {...{ thickness, size, how, measures }}
          />
        )}
      </div>
    </section>
  );
}

interface LadderHeadProps {
  readonly how: LadderWidth;
  readonly measures: LadderMeasures;
  /** Where it is one of two. */
  readonly near: LadderSide | undefined;
}

function LadderHead({ how, measures, near }: LadderHeadProps) {
  const { layout } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const turn = (ladder: LadderWidth) => layout.setState({ ladder });
  return (
    <header className="ladder-head">
      <button
        type="button"
        className="fold"
        title={how === 'folded' ? 'Unfold the ladder' : 'Fold the ladder'}
        onClick={() => turn(how === 'folded' ? 'usual' : 'folded')}
      >
        {how !== 'usual' ? unit : near === undefined ? `Depth, ${unit}` : 'Near face'}
      </button>
      {how === 'pinned' && (
        <>
          <span className="column" style={{ left: measures.figures }}>
            depth
          </span>
          <span className="column" style={{ right: 34 }}>
            leaves
          </span>
        </>
      )}
      {how !== 'folded' && (
        <IconButton
          icon={how === 'pinned' ? PinOff : Pin}
          name={how === 'pinned' ? 'Hide what levels leave' : 'Show what levels leave'}
          onPress={() => turn(how === 'pinned' ? 'usual' : 'pinned')}
        />
      )}
    </header>
  );
}

interface LadderProps {
  readonly sides: readonly LadderSide[];
  readonly planned: readonly ShownStage[];
  /** Metal between both faces, mm. */
  readonly least: number | undefined;
  readonly thickness: number;
  readonly size: Size;
  readonly how: LadderWidth;
  readonly measures: LadderMeasures;
}

function Ladder({ sides, planned: stages, least, thickness, size, how, measures }: LadderProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const litStage = useWorkbenchState((state) => state.lit?.stage);
  const [shown, setShown] = useState<SideLevel>();
  const isTwoFaced = sides.length > 1;
  const bottom = MARGIN.bottom + (isTwoFaced ? FAR_NAME : 0);
  const count = sides.reduce((sum, { levels }) => sum + levels.length, 0);
  const height = Math.max(size.height, count * FIGURE + MARGIN.top + bottom);
  const scale = (height - MARGIN.top - bottom) / thickness;
  const job = useDocument()?.job;
  const levels = useMemo(() => stages.map(({ level }) => level), [stages]);
  const [byKeys, setByKeys] = useState<number>();
  const unused = useMemo(() => unusedLevels(job, levels), [job, levels]);
  const { yOf, rows } = useMemo(() => {
    const yOf = (depth: number) => MARGIN.top + depth * scale;
    return { yOf, rows: ladderRows({ sides, unused, least, thickness, yOf, height }) };
  }, [sides, unused, least, thickness, scale, height]);
  const move = (level: number, to: number, how: 'keys' | 'pointer') => {
    setByKeys(how === 'keys' ? to : undefined);
    actions.moveLevel(level, to, `level ${showLength(level, unit)} to ${showLength(to, unit)}`);
  };
  const onShow = sides.find((side) => side.isOnShow);
  const yOn = (depth: number) => yOf(belowNear(onShow?.face ?? 'near', depth, thickness));
  return (
    <div className="ladder-body" style={{ height }}>
      <LadderAxis {...{ sides, least, thickness, height, yOf, unit, how, measures, rows, litStage }} />
      <MovedFrom yOf={yOn} bar={measures.bar} />
      {movableLevels(onShow, unused, unit).map((movable) => (
        <LevelHandle
          key={movable.level}
          movable={movable}
          thickness={thickness}
          yOf={yOn}
          bar={measures.bar}
          takesFocus={byKeys !== undefined && Math.abs(byKeys - movable.level) < SAME_LEVEL}
          onMove={(to, how) => move(movable.level, to, how)}
          onShow={setShown}
          onPick={() => actions.select(movable.planned?.regions.map(({ id }) => id) ?? [])}
        />
      ))}
      <ol className="ladder-rows">
        {rows.map((row) => (
          <li
            key={row.key}
            className={rowStage(row) !== undefined && rowStage(row) === litStage ? 'lit' : undefined}
            style={
              {
                top: row.to - rowHeight(row.kind) / 2,
                height: rowHeight(row.kind),
                '--figures': `${measures.figures}px`,
              } as CSSProperties
            }
          >
            <Row row={row} saysLeft={how === 'pinned'} onShow={setShown} />
          </li>
        ))}
      </ol>
      {isTwoFaced && how !== 'folded' && (
        <p className={onShow?.face === 'far' ? 'far-name' : 'far-name behind'}>Far face, {unit}</p>
      )}
      {shown !== undefined && onShow?.levels.includes(shown) === true && (
        <LevelCard planned={shown} top={Math.min(yOn(shown.stage.level) - HEAD, height - 104)} />
      )}
      {levels.length === 0 && how !== 'folded' && (
        <p className="ladder-empty" style={{ left: measures.figures }}>
          No levels yet.
        </p>
      )}
    </div>
  );
}

/** Where a level was before it was moved. */
function MovedFrom({ yOf, bar }: { readonly yOf: (depth: number) => number } & Pick<LadderMeasures, 'bar'>) {
  const moved = useWorkbenchState((state) => state.session.moved);
  if (moved === undefined) return null;
  const { left, right } = bar;
  return (
    <i className="moved-from" style={{ top: yOf(moved.from), left: left - 6, width: right - left + 12 }} />
  );
}

/** Those of the face on show, and those that no region accepts. */
function movableLevels(
  side: LadderSide | undefined,
  unused: readonly number[],
  unit: ShownUnit,
): MovableLevel[] {
  return [
    ...(side?.levels ?? []).map((planned) => ({
      level: planned.stage.level,
      name: `Level of stage ${planned.stage.number}`,
      planned,
    })),
    ...unused.map((level) => ({
      level,
      name: `Level ${showLength(level, unit)}, of no stage`,
      planned: undefined,
    })),
  ];
}

function rowStage(row: LadderRow): number | undefined {
  return 'planned' in row ? row.planned.stage.number : undefined;
}

/** Levels of the job's list that came to no stage: no region accepts them. */
function unusedLevels(job: JobFile | undefined, levels: readonly number[]): number[] {
  if (job === undefined || !Array.isArray(job.levels)) return [];
  const isUsed = (level: number) => levels.some((each) => Math.abs(each - level) < SAME_LEVEL);
  return job.levels.map((level: number) => fromJobUnits(job, level)).filter((level) => !isUsed(level));
}
