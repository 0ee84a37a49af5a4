/** The clock of a stage, from in to out, and what it alarms of. */
import { describe, expect, it } from 'vitest';
import { stageAim } from '#app/state/tank/stage-aim.ts';
import { stagesOver } from '#app/state/tank/stages-over.ts';
import { tankAlarm } from '#app/state/tank/tank-alarm.ts';
import {
  bathMinutes,
  endRun,
  finishStep,
  goToStep,
  isIn,
  minutesBefore,
  NO_CLOCK,
  putIn,
  stageClock,
  stageInBath,
  stageInHand,
  stateHad,
  type TankClock,
  takeBack,
  takeOut,
} from '#app/state/tank/tank-clock.ts';
import { finding } from '#findings/finding.ts';
import type { RegionForeseen, RunCorrected } from '#run/correct-rates.ts';

const MINUTE = 60_000;
const NOON = Date.UTC(2026, 2, 9, 12);
const at = (minutes: number) => NOON + minutes * MINUTE;
const stage = { number: 2, minutes: 30 };
const byClock: ReadonlySet<number> = new Set([1]);

describe('the clock', () => {
  it('counts from in to out, over several dips, and steps go along', () => {
    let clock = putIn(goToStep(NO_CLOCK, 2, 'bath'), 2, at(0));
    expect(isIn(stageClock(clock, 2))).toBe(true);
    expect(bathMinutes(stageClock(clock, 2), at(7.5))).toBeCloseTo(7.5, 9);
    clock = takeOut(clock, 2, at(24.5));
    expect(stageClock(clock, 2).step).toBe('gauge');
    // Out of the bath no time goes by.
    expect(bathMinutes(stageClock(clock, 2), at(40))).toBeCloseTo(24.5, 9);
    clock = putIn(clock, 2, at(40));
    expect(bathMinutes(stageClock(clock, 2), at(43))).toBeCloseTo(27.5, 9);
  });

  it('the last touch can be taken back: out of the bath as if it had stayed in, in as if it had not gone in', () => {
    const out = takeOut(putIn(NO_CLOCK, 1, at(0)), 1, at(5));
    const back = takeBack(out, 1);
    expect(isIn(stageClock(back, 1))).toBe(true);
    expect(bathMinutes(stageClock(back, 1), at(9))).toBeCloseTo(9, 9);
    expect(stageClock(takeBack(back, 1), 1)).toEqual({ step: 'bath', dips: [] });
  });

  it('minutes stated while it is out count, more or fewer than the clock has, and it goes on from them', () => {
    // In and out by a slip of the glove: the part had been in for 5.5 minutes.
    const slip = stateHad(takeOut(putIn(NO_CLOCK, 1, at(0)), 1, at(0.2)), 1, 5.5);
    expect(bathMinutes(stageClock(slip, 1), at(9))).toBe(5.5);
    const again = putIn(slip, 1, at(12));
    expect(minutesBefore(stageClock(again, 1))).toBe(5.5);
    expect(bathMinutes(stageClock(again, 1), at(12.7))).toBeCloseTo(6.2, 9);
    // It had been out for longer than the clock: fewer.
    const late = putIn(stateHad(takeOut(putIn(NO_CLOCK, 1, at(0)), 1, at(30)), 1, 24.5), 1, at(40));
    expect(bathMinutes(stageClock(late, 1), at(41.5))).toBeCloseTo(26, 9);
    // What is in the bath is counted.
    expect(stateHad(again, 1, 3)).toBe(again);
    expect(bathMinutes(stageClock(stateHad(slip, 1, undefined), 1), at(9))).toBeCloseTo(0.2, 9);
  });

  it('goes on from what the record has, and taken back it is as it was', () => {
    const begun = putIn(NO_CLOCK, 1, at(0), 20);
    expect(bathMinutes(stageClock(begun, 1), at(3))).toBeCloseTo(23, 9);
    expect(bathMinutes(stageClock(takeBack(begun, 1), 1), at(3))).toBe(20);
    const out = stateHad(takeOut(begun, 1, at(4)), 1, 21);
    // Still in the bath: what was stated of its coming out is void.
    expect(bathMinutes(stageClock(takeBack(out, 1), 1), at(5))).toBeCloseTo(25, 9);
  });

  it('peeled and checked once that was said; the sheet gauged first says neither', () => {
    const sheet = goToStep(NO_CLOCK, 1, 'sheet');
    expect(stageClock(sheet, 1)).toEqual({ step: 'sheet', dips: [] });
    const peeled = finishStep(goToStep(sheet, 1, 'peel'), 1, 'peel');
    expect(stageClock(peeled, 1)).toEqual({ step: 'check', dips: [], isPeeled: true });
    expect(stageClock(finishStep(peeled, 1, 'check'), 1)).toMatchObject({ step: 'bath', isChecked: true });
  });

  it('there is one part: while a stage is in the bath no other goes in, and a second press changes nothing', () => {
    const clock = putIn(NO_CLOCK, 1, at(0));
    expect(putIn(clock, 2, at(1))).toBe(clock);
    expect(putIn(clock, 1, at(1))).toBe(clock);
    expect(stageInBath(clock)).toBe(1);
    const out = takeOut(clock, 1, at(2));
    expect(takeOut(out, 1, at(3))).toBe(out);
    expect(stageInBath(out)).toBeUndefined();
    expect(stageInHand(goToStep(out, 3, 'peel'))).toBe(3);
    expect(stageInHand(NO_CLOCK)).toBeUndefined();
  });
});

describe('when it comes out', () => {
  const own = (minutes: number) => stageClock(takeOut(putIn(NO_CLOCK, 2, at(0)), 2, at(minutes)), 2);

  it('at four fifths first, then at its end', () => {
    expect(stageAim(stage, stageClock(NO_CLOCK, 2), { corrected: undefined, byClock })).toEqual({
      minutes: 30,
      outAt: 24,
      isEarly: true,
      isCorrected: false,
    });
    expect(stageAim(stage, own(24), { corrected: undefined, byClock })).toMatchObject({
      outAt: 30,
      isEarly: false,
    });
    // Looked at after a third, it is still to be gauged at four fifths.
    expect(stageAim(stage, own(10), { corrected: undefined, byClock })).toMatchObject({
      outAt: 24,
      isEarly: true,
    });
  });

  it('at its end alone where a reading would say nothing, corrected or not', () => {
    const thin = { number: 1, minutes: 2.5 };
    expect(stageAim(thin, own(0), { corrected: undefined, byClock })).toMatchObject({
      outAt: 2.5,
      isEarly: false,
    });
    const again = corrected({ had: 1.1, left: 1.9, verdict: 'in doubt' });
    expect(
      stageAim({ ...thin, number: 2 }, own(1.1), { corrected: again, byClock: new Set([2]) }),
    ).toMatchObject({ outAt: 3, isEarly: false });
  });

  it('as corrected, once something was read', () => {
    expect(stageAim(stage, own(24), { corrected: corrected({ had: 24, left: 3.5 }), byClock })).toEqual({
      minutes: 27.5,
      outAt: 27.5,
      isEarly: false,
      isCorrected: true,
    });
  });

  it('gauged at four fifths of the plan it goes back for the minutes left, in however slow a bath', () => {
    const slow = corrected({ had: 21.7, left: 19, verdict: 'in doubt' });
    // Four fifths of 40.7 would be 32.6.
    expect(stageAim(stage, own(21.7), { corrected: slow, byClock })).toMatchObject({
      outAt: 40.7,
      minutes: 40.7,
      isEarly: false,
    });
    expect(
      stageAim(stage, stageClock(putIn(NO_CLOCK, 2, at(30), 21.7), 2), { corrected: slow, byClock }),
    ).toMatchObject({
      outAt: 40.7,
      isEarly: false,
    });
  });

  it('read after a third it is gauged again while a floor is in doubt, and no more once none is', () => {
    const third = { had: 10, left: 19 } as const;
    expect(
      stageAim(stage, own(10), { corrected: corrected({ ...third, verdict: 'in doubt' }), byClock }),
    ).toMatchObject({
      outAt: expect.closeTo(0.8 * 29, 9),
      isEarly: true,
    });
    expect(
      stageAim(stage, own(10), { corrected: corrected({ ...third, verdict: 'met' }), byClock }),
    ).toMatchObject({ outAt: 29 });
    // No reading of this stage yet: that every floor is met is the plan’s word.
    const unread = corrected({ had: 0, left: 29, verdict: 'met' });
    expect(stageAim(stage, stageClock(NO_CLOCK, 2), { corrected: unread, byClock })).toMatchObject({
      isEarly: true,
    });
  });
});

interface Sofar {
  readonly had: number;
  readonly left: number;
  readonly verdict?: RegionForeseen['verdict'];
}

function corrected({ had, left, verdict = 'in doubt' }: Sofar): RunCorrected {
  const measured = (value: number) => ({ value, within: 0.4 });
  const asked = { depth: 0.9, plus: 0.05, minus: 0.04 };
  const rate = measured(0.03);
  return {
    rate,
    next: rate,
    stages: [{ number: 2, planned: 30, had, rate, left: measured(left) }],
    regions: [{ id: 'R02', asked, depth: measured(0.91), thickness: undefined, share: 0.2, verdict }],
    off: [],
    noise: 0.01,
  };
}

describe('the alarm', () => {
  const aim = stageAim(stage, stageClock(NO_CLOCK, 2), { corrected: undefined, byClock });
  const low = finding('rate-outside-spread', { rate: 0.02, planned: 0.03, spread: 0.05 });
  const lost = finding('depth-out-of-reach', { depth: 2, low: 2.1, high: 2.2 }, { regions: ['R02'] });

  it('is of time before anything else, and severe once the stage has had more than it needs', () => {
    expect(tankAlarm({ isIn: true, had: 23.9, aim }, [])).toBeUndefined();
    expect(tankAlarm({ isIn: true, had: 25, aim }, [lost])).toMatchObject({
      severity: 'warn',
      action: 'out',
    });
    expect(tankAlarm({ isIn: true, had: 25, aim }, [])).toMatchObject({ past: 1, pastWhat: 'gauging' });
    // A stage of 30 minutes, whenever it was to be gauged.
    expect(tankAlarm({ isIn: true, had: 32.5, aim }, [])).toMatchObject({
      severity: 'stop',
      past: 2.5,
      pastWhat: 'end',
    });
    expect(tankAlarm({ isIn: false, had: 31, aim }, [])).toBeUndefined();
  });

  it('is of the most serious finding else, with how many more there are as serious', () => {
    const idle = { isIn: false, had: 0, aim };
    expect(tankAlarm(idle, [low, lost])).toMatchObject({ finding: lost, severity: 'stop', more: 0 });
    expect(tankAlarm(idle, [low, low])).toMatchObject({ finding: low, action: 'result', more: 1 });
    expect(tankAlarm(idle, [])).toBeUndefined();
  });
});

describe('which stages are over', () => {
  it('those before the one in hand, one with no minutes left, all once the run is said to be over; none in the bath', () => {
    const so = (clock: TankClock, more: { had?: number; left?: number; lastRecorded?: number } = {}) =>
      stagesOver({
        clock,
        corrected: more.left === undefined ? undefined : corrected({ had: more.had ?? 24, left: more.left }),
        lastRecorded: more.lastRecorded ?? 0,
      });
    expect(so(NO_CLOCK)).toBe(0);
    expect(so(NO_CLOCK, { lastRecorded: 3 })).toBe(2);
    // To look at a stage is not to begin it; to peel it is.
    expect(so(goToStep(NO_CLOCK, 3, 'gauge'))).toBe(0);
    const peeled = finishStep(NO_CLOCK, 3, 'peel');
    expect(so(peeled)).toBe(2);
    expect(so(takeOut(putIn(NO_CLOCK, 3, at(0)), 3, at(2)))).toBe(2);
    expect(so(NO_CLOCK, { left: 6.2 })).toBe(0);
    expect(so(NO_CLOCK, { left: 0.02 })).toBe(2);
    expect(so(NO_CLOCK, { had: 0, left: 0 })).toBe(0);
    expect(so(putIn(NO_CLOCK, 2, at(0)), { left: 0.02 })).toBe(1);
    expect(so(endRun(peeled))).toBe(Number.POSITIVE_INFINITY);
    expect(so(putIn(endRun(peeled), 3, at(1)))).toBe(2);
  });
});
