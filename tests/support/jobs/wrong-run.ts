/** A simulated run (`simulated-run.ts`) in which a tenth of what is written down is wrong. */
import type { Masking } from '#job/job.ts';
import type { Reading } from '#run/correct-fit.ts';
import { correctRates } from '#run/correct-rates.ts';
import { questionReadings } from '#run/question-readings.ts';
import { bathOf, gaugeReading, randomFrom, TOLERANCE, threeFloors } from '#support/jobs/simulated-run.ts';

const WRONG = 0.1;

export interface WrongRun {
  readonly isInside: boolean;
  readonly questions: number;
  readonly readings: number;
  readonly wrong: number;
  /** Of the wrong ones, asked about; of the right ones, too. */
  readonly caught: number;
  readonly inVain: number;
}

interface Written {
  readonly reading: Reading;
  readonly unit: 'mm';
  readonly isConfirmed: boolean;
  readonly isWrong: boolean;
}

export function simulateWrongRun(masking: Masking, seed: number): WrongRun {
  const plan = threeFloors(masking);
  const random = randomFrom(seed);
  const bath = bathOf(plan, random);
  const had = [0, 0, 0];
  const written: Written[] = [];
  const count = { questions: 0, readings: 0, wrong: 0, caught: 0, inVain: 0 };

  const take = (place: Omit<Reading, 'value'>, metal: number): Written => {
    const right = gaugeReading(metal, random);
    const isWrong = random() < WRONG;
    // Off by 10 to 1000 %, as often by 10 to 32 as by 320 to 1000; as often too little.
    const times = 1 + 10 ** (2 * random() - 1);
    const value = isWrong ? Math.round(100 * (random() < 0.5 ? right * times : right / times)) / 100 : right;
    count.readings++;
    if (isWrong) count.wrong++;
    return { reading: { ...place, value }, unit: 'mm', isConfirmed: false, isWrong };
  };
  /** Until what is written needs no question any more. */
  const answered = (first: Written, takeAgain: () => Written): Written => {
    const { question } = questionReadings(plan, [...written, first]).at(-1) ?? {};
    if (question === undefined || first.isConfirmed) return first;
    count.questions++;
    if (first.isWrong) count.caught++;
    else count.inVain++;
    return first.isWrong ? answered(takeAgain(), takeAgain) : { ...first, isConfirmed: true };
  };
  const gauge = (current: number) => {
    for (const { place, metal } of bath.open(had, current)) {
      for (let repeat = 0; repeat < 3; repeat++) {
        const takeAgain = () => take(place, metal);
        written.push(answered(takeAgain(), takeAgain));
      }
    }
  };
  const minutesLeft = (current: number) => {
    const readings = written.map(({ reading }) => reading);
    return correctRates(plan, readings, { had, current }).stages[current]?.left.value ?? 0;
  };
  for (let current = 0; current < 3; current++) {
    had[current] = 0.8 * minutesLeft(current);
    for (let dip = 0; dip < 2; dip++) {
      gauge(current);
      had[current] = (had[current] ?? 0) + minutesLeft(current);
    }
  }
  return { isInside: bath.deviations(had).every((each) => each <= TOLERANCE), ...count };
}
