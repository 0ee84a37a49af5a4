/** The drawn section: metal, what each stage removed, what was required; and a gauge moved along it by pointer or keys. */
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react';
import { shapeAt } from '#app/state/shape-finder.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import type { SectionLine } from '#app/state/workbench-state.ts';
import { inkOn } from '#app/views/ink-on.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { bandsOf, metalRuns } from '#handoff/section-shapes.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import type { Section } from '#run/section-job.ts';
import { showLength } from '#units/show-length.ts';
import { gaugeWords } from './gauge-words.ts';
import {
  askedPath,
  farAskedPath,
  metalPath,
  numberPlaces,
  type SectionScale,
  takenPath,
} from './section-paths.ts';
import { useGauge } from './use-gauge.ts';

interface SectionFigureProps {
  readonly section: Section;
  readonly cut: SectionLine;
  readonly stages: readonly ShownStage[];
  readonly scale: SectionScale;
  readonly size: Size;
}

const KEY_SHARES: Record<string, number> = {
  ArrowLeft: -0.005,
  ArrowRight: 0.005,
  PageDown: -0.05,
  PageUp: 0.05,
  Home: -1,
  End: 1,
};

export function SectionFigure({ section, cut: line, stages, scale, size }: SectionFigureProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const frame = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<number>();
  const length = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
  const { reading, ask, forget } = useGauge();
  const face = useWorkbenchState(faceOnShow);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const cuts = useWorkbenchState((state) => state.derived.page?.faces?.between?.cuts);
  const here = reading && shapeAt(shapes, reading)?.region.id;
  const cut = cuts?.find(({ id }) => id === here);
  const drawn = useMemo(() => drawnSection(section, stages, scale), [section, stages, scale]);

  const moveTo = (distance: number) => {
    const held = Math.min(length, Math.max(0, distance));
    setPlace(held);
    const share = held / length;
    ask({
      x: line.from.x + (line.to.x - line.from.x) * share,
      y: line.from.y + (line.to.y - line.from.y) * share,
    });
  };
  const onPointerMove = (event: PointerEvent) => {
    const left = frame.current?.getBoundingClientRect().left ?? 0;
    const perMm = scale.xOf(1) - scale.xOf(0);
    moveTo((event.clientX - left - scale.xOf(0)) / perMm);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = KEY_SHARES[event.key];
    if (by === undefined) return;
    event.preventDefault();
    moveTo((place ?? length / 2) + by * length);
  };
  const leave = () => {
    setPlace(undefined);
    forget();
  };
  const words =
    place === undefined ? '' : `at ${showLength(place, unit)}: ${gaugeWords(reading, { unit, face, cut })}`;
  return (
    <div
      ref={frame}
      className="section-figure"
      role="slider"
      tabIndex={0}
      aria-label="Place along the cut"
      aria-valuemin={0}
      aria-valuemax={length}
      aria-valuenow={place ?? 0}
      aria-valuetext={words === '' ? 'not set; arrow keys move it' : words}
      onPointerMove={onPointerMove}
      onPointerDown={onPointerMove}
      onPointerLeave={leave}
      onKeyDown={onKeyDown}
      onBlur={leave}
    >
      <svg width={size.width} height={size.height} aria-hidden="true">
        {drawn.taken.map(({ stage, path, color }) => (
          <path key={`${stage} ${path.slice(0, 24)}`} data-stage={stage} fill={color} d={path} />
        ))}
        {drawn.numbers.map(({ stage, x, y, color }) => (
          <text key={`${stage} ${x}`} x={x} y={y} fill={inkOn(color)}>
            {stage}
          </text>
        ))}
        {drawn.metal.map((path) => (
          <path key={path.slice(0, 24)} className="metal" d={path} />
        ))}
        <path className="asked-casing" d={drawn.asked} />
        <path className="asked" d={drawn.asked} />
        {place !== undefined && <path className="gauge" d={`M${scale.xOf(place)} 0V${size.height}`} />}
      </svg>
      {place !== undefined && (
        <output className={scale.xOf(place) > size.width / 2 ? 'gauge-reading left' : 'gauge-reading'}>
          {words}
        </output>
      )}
    </div>
  );
}

function drawnSection(section: Section, stages: readonly ShownStage[], scale: SectionScale) {
  const runs = metalRuns(section.points);
  const bands = stages.flatMap(({ number, color }, index) =>
    runs.flatMap((run) => bandsOf(run, index).map((band) => ({ stage: number, color, band }))),
  );
  return {
    metal: runs.map((run) => metalPath(run, scale)),
    taken: bands.map(({ stage, color, band }) => ({ stage, color, path: takenPath(band, scale) })),
    numbers: bands.flatMap(({ stage, color, band }) =>
      numberPlaces(band, scale).map(({ x, y }) => ({ stage, color, x, y })),
    ),
    asked: askedPath(section.asked, scale) + farAskedPath(section.points, scale),
  };
}
