/** A taper required of the picked regions along the section line: depths, or what they leave, at both ends of what is picked or of the part. */
import { useState } from 'react';
import { drawingOrigin } from '#app/state/region-targets.ts';
import { lineAcross, lineOnPart } from '#app/state/taper-line.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { JOB } from '#job/job-file.ts';
import { lengthFigure, showLength } from '#units/show-length.ts';

const PARTS = JOB.members.requirements.item.members.taper.parts;

interface TaperEntryProps {
  readonly regions: readonly ShownRegion[];
  /** What is picked, as steps name it. */
  readonly names: string;
  /** Of the sheet, mm: the most that can be left, and what every depth lies under. */
  readonly thickness: number;
}

export function TaperEntry({ regions, names, thickness }: TaperEntryProps) {
  const { actions } = useWorkbench();
  const { unit, cut } = useWorkbenchState((state) => state.session);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const origin = useWorkbenchState(drawingOrigin);
  const [gives, setGives] = useState<'depth' | 'left'>('depth');
  const [span, setSpan] = useState<'picked' | 'part'>('picked');
  const [first, setFirst] = useState<number>();
  const [last, setLast] = useState<number>();
  if (cut === undefined || plan === undefined) return null;
  const contours = regions.flatMap((region) => region.contours);
  const line = span === 'part' ? lineOnPart(plan, cut) : lineAcross(contours, cut);
  const place = (point: Point) => {
    const { x, y } = movePoint(point, origin);
    return `${lengthFigure(x, unit)}, ${lengthFigure(y, unit)}`;
  };
  const isWhole = first !== undefined && last !== undefined && line !== undefined;
  const ask = () => {
    if (!isWhole) return;
    const range = `${showLength(first, unit)} to ${showLength(last, unit)}`;
    const words = `taper ${range}${gives === 'left' ? ' left' : ''} of ${names}`;
    const ends =
      gives === 'left' ? { thicknessFrom: first, thicknessTo: last } : { depthFrom: first, depthTo: last };
    actions.taperAlong(line, ends, words);
  };
  const of = (label: string) => (gives === 'left' ? label.replace(/^Depth/, 'Thickness left') : label);
  const field =
    gives === 'left'
      ? { within: { most: thickness }, placeholder: 'thickness left' }
      : { under: thickness, placeholder: 'depth' };
  return (
    <details className="taper-entry">
      <summary>As a taper along the section line</summary>
      <Segments
        label="What the taper gives"
        options={[
          { value: 'depth', words: 'Depth' },
          { value: 'left', words: 'Thickness left' },
        ]}
        value={gives}
        onTake={setGives}
      />
      <Segments
        label="The taper is measured across"
        options={[
          { value: 'picked', words: `Across ${regions.length === 1 ? names : 'what is picked'}` },
          { value: 'part', words: 'Across the part' },
        ]}
        value={span}
        onTake={setSpan}
      />
      <LengthField {...field} of={PARTS.left} label={of(PARTS.left.label)} length={first} onTake={setFirst} />
      <LengthField {...field} of={PARTS.right} length={last} onTake={setLast} />
      <p className="aside">
        {line === undefined
          ? `The section line misses ${names}: drag it across, the way the taper runs.`
          : `From ${place(line.from)} to ${place(line.to)} ${unit}, as the section shows it from left to right.`}
      </p>
      <button type="button" disabled={!isWhole} onClick={ask}>
        Require the taper
      </button>
    </details>
  );
}
