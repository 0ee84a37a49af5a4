/** All readings of the run, the last one first. None is ever taken away: struck out it stays, with the reason. */
import { useState } from 'react';
import { answerReading } from '#app/state/tank/run-readings.ts';
import { counted } from '#findings/counted.ts';
import type { ListedReading } from '#run/listed-readings.ts';
import { type Answering, ReadingRows } from './ReadingRows.tsx';
import { useTank } from './tank-context.ts';
import { stampText } from './tank-words.ts';

const NONE: readonly ListedReading[] = [];

export function ReadingList() {
  const { record, planText, hand, unit, own, goTo } = useTank();
  const [answering, setAnswering] = useState<Answering>();
  const readings = record.result?.readings ?? NONE;
  const answer = (reason: string) => {
    if (answering === undefined) return;
    const { who } = hand;
    const signed = { ...answering, who, when: stampText(Date.now()), reason };
    record.keep(answerReading(record.run, signed, planText));
    setAnswering(undefined);
  };
  const isFree = own.step !== 'gauge' && own.step !== 'sheet' && own.step !== 'bath';
  return (
    <>
      <div className="list-head">
        <p className="aside">
          {readings.length === 0
            ? 'No reading yet: the minutes are those of the plan.'
            : `${counted(readings.length, 'reading')}, kept in this browser. What is struck out stays in the record.`}
        </p>
        {isFree && (
          <button type="button" onClick={() => goTo('gauge')}>
            Add a reading
          </button>
        )}
      </div>
      {readings.length > 0 && (
        <table className="reading-list">
          <thead>
            <tr>
              <th scope="col">Stage</th>
              <th scope="col">Region</th>
              <th scope="col">After</th>
              <th scope="col">Reads</th>
              <th scope="col">Expected</th>
              <th scope="col">Rate, {unit}/min</th>
              <th scope="col">By</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {[...readings].reverse().map((reading) => (
              <ReadingRows
                key={reading.number}
                reading={reading}
                answering={answering?.number === reading.number ? answering : undefined}
                onAnswer={setAnswering}
                onReason={answer}
              />
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
