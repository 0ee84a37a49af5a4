/** Ctrl K: every action, region and finding by its words; a number is read as a region, a depth and a minute at once. */
import { Search } from 'lucide-react';
import { useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Header,
  Input,
  Menu,
  MenuItem,
  MenuSection,
  Modal,
  ModalOverlay,
  SearchField,
} from 'react-aria-components';
import { useLayout, useWorkbench } from '#app/views/workbench-context.ts';
import type { PaletteEntry } from './palette-entry.ts';
import { useEntries } from './use-entries.ts';
import './palette.css';

export function CommandPalette() {
  const { layout } = useWorkbench();
  const isOpen = useLayout(({ over }) => over === 'palette');
  const close = () => layout.setState({ over: 'nothing' });
  return (
    <ModalOverlay className="veil" isOpen={isOpen} isDismissable onOpenChange={(open) => !open && close()}>
      <Modal className="dialog">
        <Dialog aria-label="Find an action, region or finding">
          <Finder close={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Entries of a kind that are shown; more words narrow them down. */
const MOST = 8;

function Finder({ close }: { readonly close: () => void }) {
  const [text, setText] = useState('');
  const sections = useEntries(text);
  const run = (entry: PaletteEntry) => {
    close();
    entry.run();
  };
  return (
    <Autocomplete inputValue={text} onInputChange={setText}>
      <SearchField aria-label="Find" autoFocus className="palette-field">
        <Search size={18} aria-hidden="true" />
        <Input
          placeholder="Action, region, finding, depth or minute"
          onKeyDownCapture={(event) => {
            // The field would first be emptied, and only the next Escape would close.
            if (event.key === 'Escape') close();
          }}
          onKeyDown={(event) => {
            // The list marks its first entry a moment after the last letter; Enter need not wait for it.
            const isMarked = event.currentTarget.hasAttribute('aria-activedescendant');
            const first = sections[0]?.entries[0];
            if (event.key === 'Enter' && !isMarked && first !== undefined) run(first);
          }}
        />
        <kbd>Esc</kbd>
      </SearchField>
      <Menu
        className="menu palette-list"
        aria-label="Found"
        renderEmptyState={() => <p className="palette-empty">Nothing is called that.</p>}
      >
        {sections.map(({ title, entries }) => (
          <MenuSection key={title}>
            <Header>{title}</Header>
            {entries.slice(0, MOST).map((entry) => (
              <MenuItem key={entry.key} id={entry.key} textValue={entry.words} onAction={() => run(entry)}>
                <Matched words={entry.words} text={text} />
                {entry.aside !== undefined && <span className="aside">{entry.aside}</span>}
                {entry.keys !== undefined && <kbd>{entry.keys}</kbd>}
              </MenuItem>
            ))}
          </MenuSection>
        ))}
      </Menu>
      <p className="palette-foot">
        <span>
          <kbd>↑</kbd> <kbd>↓</kbd> choose <kbd>Enter</kbd> do it
        </span>
        <span>A number is a region, a depth or a minute.</span>
      </p>
    </Autocomplete>
  );
}

/** The words with what was typed standing out. */
function Matched({ words, text }: { readonly words: string; readonly text: string }) {
  const at = text.trim() === '' ? -1 : words.toLowerCase().indexOf(text.trim().toLowerCase());
  if (at === -1) return <span>{words}</span>;
  const end = at + text.trim().length;
  return (
    <span>
      {words.slice(0, at)}
      <b className="match">{words.slice(at, end)}</b>
      {words.slice(end)}
    </span>
  );
}
