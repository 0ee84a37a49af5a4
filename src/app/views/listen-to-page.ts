/** Keys and pastes that count wherever the focus is, but not while someone types. */
import { fitToPaper } from './fit-to-paper.ts';
import { openHere } from './open-here.ts';
import { pickFiles } from './pick-files.ts';
import { filesOfText, readFiles } from './read-files.ts';
import type { Workbench } from './workbench-context.ts';

export function listenToPage(workbench: Workbench): () => void {
  const { actions, layout } = workbench;
  const listening = new AbortController();
  const { signal } = listening;
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    if (key === 'k') {
      event.preventDefault();
      layout.setState({ over: layout.getState().over === 'palette' ? 'nothing' : 'palette' });
      return;
    }
    if (key === 'o') {
      event.preventDefault();
      pickFiles(workbench);
      return;
    }
    if (isTyping(event.target) || (key !== 'z' && key !== 'y')) return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) actions.redo();
    else actions.undo();
  };
  const onPaste = async (event: ClipboardEvent) => {
    if (isTyping(event.target) || event.clipboardData === null) return;
    const { files } = event.clipboardData;
    const text = event.clipboardData.getData('text/plain');
    if (files.length > 0) await openHere(workbench, await readFiles(files));
    else if (text !== '') await openHere(workbench, filesOfText(text));
  };
  const onPrint = () => {
    const workbench = document.querySelector<HTMLElement>('.workbench');
    if (workbench !== null) fitToPaper(workbench);
  };
  document.addEventListener('keydown', onKeyDown, { signal });
  document.addEventListener('paste', onPaste, { signal });
  window.addEventListener('beforeprint', onPrint, { signal });
  return () => listening.abort();
}

/** A field that shows what is so, with nothing typed into it, leaves the keys to the whole window. */
function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  if (!(target instanceof HTMLInputElement) || target.dataset['settled'] === 'true') return false;
  return !NOT_TYPED.has(target.type);
}

const NOT_TYPED: ReadonlySet<string> = new Set(['radio', 'checkbox', 'range']);
