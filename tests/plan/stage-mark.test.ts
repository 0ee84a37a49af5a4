import { describe, expect, it } from 'vitest';
import { itemAt } from '#geometry/assert.ts';
import { dot, subtract } from '#geometry/point.ts';
import { arcSpan, lineSpan } from '#geometry/span.ts';
import { stageMark, tickPlaces } from '#plan/stage-mark.ts';

describe('the stage mark', () => {
  it('carries as many ticks in a repeat as the stage has number', () => {
    for (const stage of [1, 2, 5, 8, 13]) expect(tickPlaces(stage)).toHaveLength(stage);
  });

  it('groups ticks in fives: stage 7 is five, a gap, two', () => {
    expect(tickPlaces(7)).toEqual([0, 1, 2, 3, 4, 6, 7]);
  });

  it('repeats whole marks evenly along a line', () => {
    const ticks = stageMark([lineSpan({ x: 0, y: 0 }, { x: 100, y: 0 })], { stage: 3, pitch: 1 });
    expect(ticks.length % 3).toBe(0);
    expect(ticks.length).toBe(30);
    expect(itemAt(ticks, 1).at.x - itemAt(ticks, 0).at.x).toBeCloseTo(1, 12);
    expect(itemAt(ticks, 0).across).toEqual({ x: -0, y: 1 });
  });

  it('goes round corners and arcs, across the line at every tick', () => {
    const arc = arcSpan({ center: { x: 0, y: 0 }, radius: 10, from: 0, sweep: Math.PI });
    const ticks = stageMark([arc, lineSpan(arc.end, { x: 10, y: 0 })], { stage: 4, pitch: 1 });
    expect(ticks.length).toBe(16);
    for (const tick of ticks.slice(0, 8)) {
      expect(Math.hypot(tick.at.x, tick.at.y)).toBeCloseTo(10, 9);
      expect(Math.abs(dot(tick.across, subtract(tick.at, { x: 0, y: 0 })))).toBeCloseTo(10, 9);
    }
  });

  it('leaves a line too short for a whole mark bare', () => {
    expect(stageMark([lineSpan({ x: 0, y: 0 }, { x: 3, y: 0 })], { stage: 6, pitch: 1 })).toEqual([]);
  });
});
