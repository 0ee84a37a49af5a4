/** A card for each file of the hand-off, made or to be chosen, by what one does with it. */
import { useMemo } from 'react';
import { documentText } from '#app/state/edits/job-text.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';
import {
  type FileGroup,
  HANDOFF_FILES,
  HANDOFF_LIST,
  type HandoffFile,
  plainName,
} from '#job/handoff-list.ts';
import type { OutputFile } from '#run/output-file.ts';

export interface HandoffCard {
  readonly key: string;
  readonly group: FileGroup;
  /** Its name; of files that are not made yet, the job's key for them. */
  readonly name: string;
  readonly use: string;
  /** What a tick chooses; undefined where the file is always made. */
  readonly word: HandoffFile | undefined;
  /** Undefined where it is not made: not chosen, held back, or still to come. */
  readonly file: OutputFile | undefined;
  readonly isReady: boolean;
}

export function useHandoffCards(): readonly HandoffCard[] {
  const document = useDocument();
  const page = useWorkbenchState((state) => state.derived.page);
  const isStale = useWorkbenchState((state) => state.derived.isStale);
  const jobFile = useMemo<OutputFile | undefined>(
    () =>
      document && {
        name: document.jobFileName,
        what: 'the job, to open again',
        mime: 'application/json',
        bytes: new TextEncoder().encode(documentText(document)),
      },
    [document],
  );
  const drawing = document?.drawing;
  const farDrawing = document?.farDrawing;
  return useMemo(() => {
    const isReady = !isStale && page?.isWhole === true;
    const made = page?.files ?? [];
    const cards = made.map((file): HandoffCard => {
      const word = wordOf(file.name);
      return { ...faceOf(file, word), word, file, isReady };
    });
    const missing = HANDOFF_FILES.filter((word) => !cards.some((card) => card.word === word));
    const open = missing.map((word): HandoffCard => {
      const { label, names } = HANDOFF_LIST[word];
      const name = (names[0] ?? word).replace('#', '01');
      return { key: word, group: HANDOFF_LIST[word].group, name, use: label, word, file: undefined, isReady };
    });
    const own = [
      jobFile,
      drawing && { ...drawing, what: 'the drawing', mime: 'image/vnd.dxf' },
      farDrawing && { ...farDrawing, what: 'the drawing of the far face', mime: 'image/vnd.dxf' },
    ];
    return [
      ...cards,
      ...open,
      ...own.flatMap((file) =>
        file === undefined ? [] : [{ ...faceOf(file, undefined), word: undefined, file, isReady: true }],
      ),
    ];
  }, [page, isStale, jobFile, drawing, farDrawing]);
}

function faceOf(file: OutputFile, word: HandoffFile | undefined) {
  const { name, what } = file;
  return { key: name, group: groupOf(plainName(name), word), name, use: what };
}

/** Files of the far face and of the opposite hand stand with those that they are of. */
function groupOf(name: string, word: HandoffFile | undefined): FileGroup {
  if (/^scribe(-\d\d)?\.dxf$/.test(name)) return 'cut';
  if (name === 'template.pdf') return 'print';
  const listed = word ?? wordOf(name);
  return listed === undefined ? 'show' : HANDOFF_LIST[listed].group;
}

/** The word that a file is chosen by: its name is one of the word's, with a number in the place of `#`. */
function wordOf(name: string): HandoffFile | undefined {
  return HANDOFF_FILES.find((word) =>
    HANDOFF_LIST[word].names.some((pattern) =>
      new RegExp(`^${pattern.replaceAll('.', '\\.').replace('#', '\\d\\d')}$`).test(name),
    ),
  );
}
