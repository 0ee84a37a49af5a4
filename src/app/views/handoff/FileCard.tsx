/** One file of the hand-off: chosen or not, what it is for, a look inside, and a way to save it alone. */
import { Download } from 'lucide-react';
import { chooseFile } from '#app/state/opening/choose-file.ts';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { saveBytes } from '#app/views/save-bytes.ts';
import { useDocument, useWorkbench } from '#app/views/workbench-context.ts';
import { HANDOFF_LIST } from '#job/handoff-list.ts';
import type { HandoffCard } from './use-handoff-cards.ts';

interface FileCardProps {
  readonly card: HandoffCard;
  readonly isShown: boolean;
  readonly onShow: (name: string) => void;
}

export function FileCard({ card, isShown, onShow }: FileCardProps) {
  const { actions } = useWorkbench();
  const chosen = useDocument()?.job.handoff?.files ?? [];
  const { name, use, word, file, isReady } = card;
  const isChosen = word === undefined || chosen.includes(word);
  const looks = [
    'file-card',
    isShown && 'shown',
    isChosen && file === undefined && 'held',
    !isChosen && 'open',
  ];
  return (
    <li className={looks.filter(Boolean).join(' ')}>
      <input
        type="checkbox"
        aria-label={word === undefined ? name : HANDOFF_LIST[word].label}
        checked={isChosen}
        disabled={word === undefined}
        onChange={({ target }) =>
          word !== undefined &&
          actions.edit(`${target.checked ? 'make' : 'leave out'} the ${HANDOFF_LIST[word].label}`, (before) =>
            chooseFile(before, word, target.checked),
          )
        }
      />
      {file === undefined ? (
        <p>
          <span className="name">{name}</span>
          <span className="aside">{isChosen ? 'held back' : use}</span>
        </p>
      ) : (
        <button type="button" className="look" aria-pressed={isShown} onClick={() => onShow(name)}>
          <span className="name">{name}</span>
          <span className="aside">{use}</span>
        </button>
      )}
      {file !== undefined && (
        <IconButton
          icon={Download}
          name={`Save ${name}`}
          isDisabled={!isReady}
          onPress={() => saveBytes(file)}
        />
      )}
    </li>
  );
}
