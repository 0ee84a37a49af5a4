/** Names, figures, findings and tags over the sheet, each on its place of the part while the view moves. */
import { useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { wordsOn } from '#app/scene/stage-looks.ts';
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { WORD_GAP } from './place-labels.ts';
import type { FlagMark, NameMark, SheetMarks, TriedMark } from './sheet-marks.ts';
import { TRIED_LINE } from './tried-figures.ts';

interface SheetLabelsProps {
  readonly marks: SheetMarks;
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

export function SheetLabels({ marks, pose, size }: SheetLabelsProps) {
  const svg = useRef<SVGSVGElement>(null);
  const buttons = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (size === undefined) return undefined;
    const held = [
      ...marks.names,
      ...marks.findings,
      ...marks.tags,
      ...marks.edges,
      ...marks.tried,
      ...marks.numbers,
    ];
    const groups = [...(svg.current?.querySelectorAll<SVGGElement>('g.held') ?? [])];
    const shapes = [...(buttons.current?.children ?? [])];
    const draw = (now: ViewPose) => {
      held.forEach(({ at, z }, index) => {
        const { x, y } = pixelOf(now, size, at, z);
        groups[index]?.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
      });
      marks.findings.forEach(({ at, z, off }, index) => {
        const { x, y } = pixelOf(now, size, at, z);
        const shape = shapes[index];
        if (shape instanceof HTMLElement)
          shape.style.translate = `${(x + off.x).toFixed(1)}px ${(y + off.y).toFixed(1)}px`;
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [marks, pose, size]);
  return (
    <div className="sheet-labels">
      <svg ref={svg} aria-hidden="true">
        {marks.names.map((name) => (
          <Name key={name.id} name={name} />
        ))}
        {marks.findings.map((flag) => (
          <Leader key={flag.id} flag={flag} />
        ))}
        {marks.tags.map((flag) => (
          <g key={flag.id} className="held tag" data-stage={flag.stage.number}>
            <path d={`M0 0L${flag.off.x} ${flag.off.y}`} />
            <rect
              x={flag.off.x - 7}
              y={flag.off.y - 7}
              width={14}
              height={14}
              rx={3}
              fill={flag.stage.color}
            />
            <text x={flag.off.x} y={flag.off.y + 4} fill={wordsOn(flag.stage.color)}>
              {flag.stage.number}
            </text>
          </g>
        ))}
        {marks.edges.map(({ id, off, says }) => (
          <g key={id} className="held edge">
            <text x={off.x} y={off.y + 4.5}>
              {says}
            </text>
          </g>
        ))}
        {marks.tried.map((tried) => (
          <Tried key={tried.id} tried={tried} />
        ))}
        {marks.numbers.map(({ stage, color, at }) => (
          <g key={`${stage} ${at.x} ${at.y}`} className="held number" fill={wordsOn(color)}>
            <text y={3.7}>{stage}</text>
          </g>
        ))}
      </svg>
      <div ref={buttons}>
        {marks.findings.map((flag) => (
          <FindingFlag key={flag.id} flag={flag} />
        ))}
      </div>
    </div>
  );
}

/** Base line of the first of two lines over the middle, of the second below it, and of one line alone; px. */
const BASE = { first: -4, second: 12, only: 4.5 };

function Name({ name }: { readonly name: NameMark }) {
  const { id, form, figure, color, nameWidth, figureWidth } = name;
  const start = -(nameWidth + WORD_GAP + figureWidth) / 2;
  return (
    <g className="held name" data-region={id} data-form={form} fill={color}>
      {form === 'two' && (
        <>
          <text y={BASE.first}>{id}</text>
          <text className="figure" fontWeight={600} y={BASE.second}>
            {figure}
          </text>
        </>
      )}
      {form === 'one' && (
        <>
          <text className="start" x={start} y={BASE.only}>
            {id}
          </text>
          <text className="figure start" fontWeight={600} x={start + nameWidth + WORD_GAP} y={BASE.only}>
            {figure}
          </text>
        </>
      )}
      {form === 'name' && <text y={BASE.only}>{id}</text>}
    </g>
  );
}

/** Base line of small words under their middle, px. */
const SMALL_BASE = 4;

/** A line for each meaning, one under the other or side by side. */
function Tried({ tried: { id, form, lines } }: { readonly tried: TriedMark }) {
  const isStacked = form === 'stacked' && lines.length > 1;
  const whole = lines.reduce((sum, { width }) => sum + width, WORD_GAP * (lines.length - 1));
  return (
    <g className="held tried" data-region={id}>
      {lines.map(({ words, width, isStop }, index) => {
        const before = lines.slice(0, index).reduce((sum, line) => sum + line.width + WORD_GAP, 0);
        const x = isStacked ? 0 : before + (width - whole) / 2;
        const y = SMALL_BASE + (isStacked ? (index - 0.5) * TRIED_LINE : 0);
        return (
          <text key={words} x={x} y={y} className={isStop ? 'stop' : undefined}>
            {words}
          </text>
        );
      })}
    </g>
  );
}

function Leader({ flag: { off } }: { readonly flag: FlagMark }) {
  return (
    <g className="held leader">
      <circle r={2} />
      <path d={`M0 0L${off.x} ${off.y}`} />
    </g>
  );
}

function FindingFlag({ flag }: { readonly flag: SheetMarks['findings'][number] }) {
  const { actions } = useWorkbench();
  const { finding } = flag;
  const { title } = sayFinding(finding);
  const { at, regions, outline } = finding.place;
  const show = () => {
    if (regions !== undefined && regions.length > 0) actions.select(regions);
    if (at !== undefined) actions.flyTo({ to: at, outline });
  };
  return (
    <button type="button" className="finding-flag" title={title} aria-label={title} onClick={show}>
      <SeverityShape severity={finding.severity} />
    </button>
  );
}
