/** A taper required of the picked regions: depths where the section line meets the part's border, even between them along the line. */
import { useState } from 'react';
import { drawingOrigin } from '#app/state/region-targets.ts';
import { lineOnPart } from '#app/state/taper-line.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { JOB } from '#job/job-file.ts';
import { lengthFigure, showLength } from '#units/show-length.ts';

const PARTS = JOB.members.requirements.item.members.taper.parts;

interface TaperEntryProps {
  /** What is picked, as steps name it. */
  readonly names: string;
  /** Deepest that can be required, mm. */
  readonly most: number;
}

export function TaperEntry({ names, most }: TaperEntryProps) {
  const { actions } = useWorkbench();
  const { unit, cut } = useWorkbenchState((state) => state.session);
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const origin = useWorkbenchState(drawingOrigin);
  const [left, setLeft] = useState<number>();
  const [right, setRight] = useState<number>();
  if (cut === undefined || plan === undefined) return null;
  const { from, to } = lineOnPart(plan, cut);
  const place = (point: Point) => {
    const { x, y } = movePoint(point, origin);
    return `${lengthFigure(x, unit)}, ${lengthFigure(y, unit)}`;
  };
  const isWhole = left !== undefined && right !== undefined;
  const ask = () => {
    if (!isWhole) return;
    const words = `taper ${showLength(left, unit)} to ${showLength(right, unit)} of ${names}`;
    actions.taperAlongCut({ left, right }, words);
  };
  return (
    <details className="taper-entry">
      <summary>As a taper along the section line</summary>
      <LengthField of={PARTS.left} length={left} within={{ most }} placeholder="depth" onTake={setLeft} />
      <LengthField of={PARTS.right} length={right} within={{ most }} placeholder="depth" onTake={setRight} />
      <p className="aside">
        On the part’s border: from {place(from)} to {place(to)} {unit}.
      </p>
      <button type="button" disabled={!isWhole} onClick={ask}>
        Require the taper
      </button>
    </details>
  );
}
