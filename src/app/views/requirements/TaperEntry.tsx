/** A taper required of the picked regions: depths at both ends of the section, even between them along the cut. */
import { useState } from 'react';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { JOB } from '#job/job-file.ts';
import { showLength } from '#units/show-length.ts';

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
  const [left, setLeft] = useState<number>();
  const [right, setRight] = useState<number>();
  if (cut === undefined) return null;
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
      <button type="button" disabled={!isWhole} onClick={ask}>
        Require the taper
      </button>
    </details>
  );
}
