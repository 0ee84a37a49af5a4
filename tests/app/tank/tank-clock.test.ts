/** The clock of a stage, from in to out, and what it alarms of. */
import { describe, expect, it } from 'vitest';
import { stageAim } from '#app/state/tank/stage-aim.ts';
import { tankAlarm } from '#app/state/tank/tank-alarm.ts';
import {
  bathMinutes,
  goToStep,
  isIn,
  NO_CLOCK,
  putIn,
  stageClock,
  stageInBath,
  stageInHand,
  takeBack,
  takeOut,
} from '#app/state/tank/tank-clock.ts';
import { finding } from '#findings/finding.ts';

const MINUTE = 60_000;
const NOON = Date.UTC(2026, 2, 9, 12);
const at = (minutes: number) => NOON + minutes * MINUTE;
const stage = { number: 2, minutes: 30 };

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
    expect(stageAim(stage, stageClock(NO_CLOCK, 2), undefined)).toEqual({
      minutes: 30,
      outAt: 24,
      isEarly: true,
      isCorrected: false,
    });
    expect(stageAim(stage, own(24), undefined)).toMatchObject({ outAt: 30, isEarly: false });
    // Looked at after a third, it is still to be gauged at four fifths.
    expect(stageAim(stage, own(10), undefined)).toMatchObject({ outAt: 24, isEarly: true });
  });

  it('as corrected, once something was read', () => {
    const measured = (value: number) => ({ value, within: 0.4 });
    const stages = [{ number: 2, planned: 30, had: 24, rate: measured(0.03), left: measured(3.5) }];
    const corrected = {
      rate: measured(0.03),
      next: measured(0.03),
      stages,
      regions: [],
      off: [],
      noise: 0.01,
    };
    expect(stageAim(stage, own(24), corrected)).toEqual({
      minutes: 27.5,
      outAt: 27.5,
      isEarly: false,
      isCorrected: true,
    });
  });
});

describe('the alarm', () => {
  const aim = stageAim(stage, stageClock(NO_CLOCK, 2), undefined);
  const low = finding('rate-outside-spread', { rate: 0.02, planned: 0.03, spread: 0.05 });
  const lost = finding('depth-out-of-reach', { depth: 2, low: 2.1, high: 2.2 }, { regions: ['R02'] });

  it('is of time before anything else, and grave once the stage has had more than it needs', () => {
    expect(tankAlarm({ isIn: true, had: 23.9, aim }, [])).toBeUndefined();
    expect(tankAlarm({ isIn: true, had: 25, aim }, [lost])).toMatchObject({
      severity: 'warn',
      action: 'out',
    });
    expect(tankAlarm({ isIn: true, had: 31, aim }, [])).toMatchObject({ severity: 'stop', past: 7 });
    expect(tankAlarm({ isIn: false, had: 31, aim }, [])).toBeUndefined();
  });

  it('is of the most serious finding else, with how many more there are as serious', () => {
    const idle = { isIn: false, had: 0, aim };
    expect(tankAlarm(idle, [low, lost])).toMatchObject({ finding: lost, severity: 'stop', more: 0 });
    expect(tankAlarm(idle, [low, low])).toMatchObject({ finding: low, action: 'result', more: 1 });
    expect(tankAlarm(idle, [])).toBeUndefined();
  });
});
