/** The bar of the tank page: the way back, the job, and the record of the run as a file. */
import { ArrowLeft, FileText } from 'lucide-react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { readingsText } from '#app/state/tank/run-readings.ts';
import { saveBytes } from '#app/views/save-bytes.ts';
import { FaceSwitch } from '#app/views/sheet/FaceSwitch.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { RecordNotice } from './RecordNotice.tsx';
import { useTank } from './tank-context.ts';
import { useOpenRecord } from './use-open-record.ts';

export function TankBar() {
  const { mode } = useWorkbench();
  const { job, record } = useTank();
  const { pick, notice, close } = useOpenRecord();
  const { recordText } = record.run;
  const save = (name: string, mime: string, text: string) =>
    saveBytes({ name, mime, bytes: new TextEncoder().encode(text) });
  return (
    <div>
      <header className="tank-head">
        <Button
          className="plain"
          aria-label="Back to planning"
          onPress={() => mode.setState({ mode: 'planning' })}
        >
          <ArrowLeft size={24} aria-hidden="true" />
        </Button>
        <h1>
          <span className="unseen">At the tank: </span>
          {job.name}
        </h1>
        <FaceSwitch />
        <MenuTrigger>
          <Button>
            <FileText size={20} aria-hidden="true" /> Record
          </Button>
          <Popover className="float" placement="bottom end">
            <Menu className="menu tank-menu" aria-label="Record of the run">
              <MenuItem onAction={pick}>Open an earlier record</MenuItem>
              <MenuItem
                isDisabled={recordText === undefined}
                onAction={() => save('plan.run.json', 'application/json', recordText ?? '')}
              >
                Save the record
              </MenuItem>
              <MenuItem
                isDisabled={recordText === undefined}
                onAction={() => save('readings.csv', 'text/csv', readingsText(record.run))}
              >
                Save the readings
              </MenuItem>
              <MenuItem onAction={() => window.print()}>Print</MenuItem>
            </Menu>
          </Popover>
        </MenuTrigger>
      </header>
      {notice !== undefined && <RecordNotice notice={notice} onClose={close} />}
    </div>
  );
}
