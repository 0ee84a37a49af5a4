/** Opens a review that was saved: its marks come back, with the plan that they were made on. */
import { useCallback, useState } from 'react';
import { useWorkbench } from '#app/views/workbench-context.ts';
import type { Finding } from '#findings/finding.ts';
import { readReview } from '#run/review.ts';

export interface ReviewNotice {
  readonly text: string;
  readonly findings: readonly Finding[];
}

export function useOpenReview() {
  const { mode } = useWorkbench();
  const [notice, setNotice] = useState<ReviewNotice>();
  const open = useCallback(
    async (files: Iterable<File>) => {
      const [file] = files;
      if (file === undefined) return;
      const { review, findings } = readReview(await file.text(), file.name);
      if (review === undefined) {
        setNotice({ text: `${file.name} was not opened; the open review is unchanged.`, findings });
        return;
      }
      const { date, ...draft } = review;
      mode.setState({ draft });
      setNotice({ text: `${file.name}: by ${draft.reviewer}, ${date}.`, findings });
    },
    [mode],
  );
  return { open, notice };
}
