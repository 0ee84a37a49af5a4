/** The menu behind the sign of Isobath: jobs and files, and what is of the user and not of the job. */
import { useRef } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover, Separator } from 'react-aria-components';
import { documentText } from '#app/state/edits/job-text.ts';
import type { Theme } from '#app/state/layout-state.ts';
import { pickFiles } from '#app/views/pick-files.ts';
import { saveBytes } from '#app/views/save-bytes.ts';
import { useLayout, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

const THEMES: readonly { readonly id: Theme; readonly words: string }[] = [
  { id: 'system', words: 'Light or dark: as the system' },
  { id: 'light', words: 'Light' },
  { id: 'dark', words: 'Dark' },
];

export function MainMenu() {
  const workbench = useWorkbench();
  const { layout, store, actions, jobList } = workbench;
  const theme = useLayout((state) => state.theme);
  const unit = useWorkbenchState((state) => state.session.unit);
  const hasJob = useWorkbenchState(
    ({ history }) => history !== undefined && history.present.document.unsaid?.includes('stock') !== true,
  );
  const isOwn = useWorkbenchState((state) => state.openJob?.isOwn === true);
  const trigger = useRef<HTMLButtonElement>(null);
  const saveJob = () => {
    const document = store.getState().history?.present.document;
    if (document === undefined) return;
    const bytes = new TextEncoder().encode(documentText(document));
    saveBytes({ name: document.jobFileName, mime: 'application/json', bytes });
  };
  const copyJob = () => {
    const id = store.getState().openJob?.id;
    if (id !== undefined) void jobList.copy(id);
  };
  return (
    <MenuTrigger>
      <Button ref={trigger} className="icon-button sign" aria-label="Isobath: jobs, files, help">
        <Sign />
      </Button>
      <Popover className="float" placement="bottom start">
        <Menu className="menu" aria-label="Jobs, files, help">
          <MenuItem onAction={() => layout.setState({ over: 'start' })}>Jobs and samples</MenuItem>
          <MenuItem textValue="Open drawing or job" onAction={() => pickFiles(workbench)}>
            Open drawing or job <kbd>Ctrl O</kbd>
          </MenuItem>
          <MenuItem isDisabled={!hasJob} onAction={saveJob}>
            Save the job file
          </MenuItem>
          <MenuItem isDisabled={!isOwn} onAction={copyJob}>
            Copy this job
          </MenuItem>
          <Separator />
          <MenuItem textValue="Undo" onAction={actions.undo}>
            Undo <kbd>Ctrl Z</kbd>
          </MenuItem>
          <MenuItem textValue="Redo" onAction={actions.redo}>
            Redo <kbd>Ctrl Shift Z</kbd>
          </MenuItem>
          <MenuItem onAction={() => actions.readIn(unit === 'mm' ? 'in' : 'mm')}>
            Show lengths in {unit === 'mm' ? 'inches' : 'millimetres'}
          </MenuItem>
          <Separator />
          {THEMES.map(({ id, words }) => (
            <MenuItem key={id} onAction={() => layout.setState({ theme: id })}>
              {words}
              {theme === id && <kbd>now</kbd>}
            </MenuItem>
          ))}
          <Separator />
          <MenuItem href="./help.html" target="_blank" rel="noopener">
            How it works
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** A stepped floor over a line: the sign of the product. */
function Sign() {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <path
        d="M1 4h3.5v4H8v4h4V8h3.5V4H19"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.75"
        strokeLinejoin="round"
      />
      <path d="M1 16.5h18" stroke="var(--accent)" strokeWidth="1.75" />
    </svg>
  );
}
