/** Opens an earlier record of this run. Where it and the readings kept here each have something that the other has not, the user chooses. */
import { useState } from 'react';
import { openRecord } from '#app/state/tank/open-record.ts';
import type { RunReadings } from '#app/state/tank/run-readings.ts';
import type { Finding } from '#findings/finding.ts';
import { useTank } from './tank-context.ts';

export interface RecordNews {
  readonly text: string;
  readonly findings: readonly Finding[];
  /** A record that stands apart from the one kept here, to be chosen in its place. */
  readonly use?: () => void;
}

const SAID = {
  further: 'opened; the run goes on from it.',
  behind: 'is an earlier state of the record kept here, which goes on as it is.',
  apart: 'has readings that the record kept here has not, and the other way round.',
} as const;

export function useOpenRecord() {
  const { record, planText } = useTank();
  const [notice, setNotice] = useState<RecordNews>();
  const take = (name: string, run: RunReadings) => {
    record.replace(run);
    setNotice({ text: `${name} ${SAID.further}`, findings: [] });
  };
  const open = async (file: File) => {
    const opened = openRecord(await file.text(), record.run, planText);
    if ('refused' in opened) {
      setNotice({
        text: `${file.name} was not opened; the record kept here is unchanged.`,
        findings: opened.refused,
      });
    } else if (opened.stands === 'further') {
      take(file.name, opened.run);
    } else {
      const use = opened.stands === 'apart' ? { use: () => take(file.name, opened.run) } : {};
      setNotice({ text: `${file.name} ${SAID[opened.stands]}`, findings: [], ...use });
    }
  };
  const pick = () => {
    const picker = document.createElement('input');
    Object.assign(picker, { type: 'file', accept: '.json' });
    picker.addEventListener('change', () => {
      const [file] = picker.files ?? [];
      if (file !== undefined) void open(file);
    });
    picker.click();
  };
  return { pick, notice, close: () => setNotice(undefined) };
}
