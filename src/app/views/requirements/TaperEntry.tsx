/** A taper required of the picked regions: depths at both ends of the section, even between them along the cut. */
import { useState } from 'react';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { showLength } from '#units/show-length.ts';

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
      <LengthField
        label="Depth at its left end"
        length={left}
        least={0}
        most={most}
        placeholder="depth"
        onTake={setLeft}
      />
      <LengthField
        label="at its right end"
        length={right}
        least={0}
        most={most}
        placeholder="depth"
        onTake={setRight}
      />
      <button type="button" disabled={!isWhole} onClick={ask}>
        Require the taper
      </button>
    </details>
  );
}
