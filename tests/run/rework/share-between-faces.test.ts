/** M8.5 what floors of both faces may still get, against parts whose answer is known because they were made from it. */
import { describe, expect, test } from 'vitest';
import { extraDips } from '#run/rework/extra-dips.ts';
import { type PlaceNeed, shareBetweenFaces } from '#run/rework/share-between-faces.ts';
import { rollDice } from '#support/random-drawings/dice.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

const place = (least: number, most: number, ...floors: string[]): PlaceNeed => ({ floors, least, most });

describe('M8.5 shared between faces', () => {
  test('floors that lie behind each other and nowhere else get half each', () => {
    const shared = shareBetweenFaces([place(0.12, 0.32, 'R01', 'F02')]);
    expect(Object.fromEntries(shared)).toEqual({
      R01: { least: expect.closeTo(0.06, 6), most: expect.closeTo(0.16, 6) },
      F02: { least: expect.closeTo(0.06, 6), most: expect.closeTo(0.16, 6) },
    });
  });

  test('one that has land behind it elsewhere gets what it needs there, and the other the rest', () => {
    // 0.21 by itself, 0.27 of both: 0.06 is left for the other.
    const shared = shareBetweenFaces([place(0.16, 0.26, 'F02'), place(0.17, 0.37, 'R01', 'F02')]);
    expect(shared.get('F02')).toEqual({ least: expect.closeTo(0.16, 6), most: expect.closeTo(0.26, 6) });
    expect(shared.get('R01')).toEqual({ least: expect.closeTo(0.01, 6), most: expect.closeTo(0.11, 6) });
  });

  test('where the middles can’t be had together, whatever meets all of them', () => {
    const places = [place(0, 0.02, 'R01'), place(0.3, 0.5, 'F02'), place(0.5, 0.52, 'R01', 'F02')];
    const shared = shareBetweenFaces(places);
    const [near, far] = ['R01', 'F02'].map((id) => shared.get(id) ?? { least: Number.NaN, most: Number.NaN });
    expect((near?.least ?? 0) + (far?.least ?? 0)).toBeGreaterThan(0.5 - 1e-6);
    expect(near?.most).toBeLessThan(0.02 + 1e-6);
    expect(far?.most).toBeLessThan(0.5 + 1e-6);
  });

  test('a floor of one place alone needs just what the place needs', () => {
    const shared = shareBetweenFaces([place(0.1, 0.2, 'R01'), place(0, -0.03, 'R02')]);
    expect(shared.get('R01')).toEqual({ least: 0.1, most: 0.2 });
    expect(shared.get('R02')?.most).toBeLessThan(0);
  });

  test('a place that is too thin holds both of its floors; what else they need is not met', () => {
    const shared = shareBetweenFaces([place(0, -0.02, 'R01', 'F02'), place(0.2, 0.3, 'R01', 'F03')]);
    expect([shared.get('R01')?.most, shared.get('F02')?.most]).toEqual([-1, -1]);
    // The other floor makes up for the one that is held.
    expect(shared.get('F03')).toEqual({ least: 0.2, most: 0.3 });
  });

  test('500 random parts that can be saved are: at every place what its floors get is what it needs', () => {
    for (let index = 0; index < 500; index++) {
      const dice = rollDice(PROPERTY_SEED, index);
      const dips = [dice.between(0.02, 0.1), dice.between(0.15, 0.4)];
      const makeFloors = (letter: string) =>
        Array.from({ length: dice.whole(1, 3) }, (_, i) => ({
          id: `${letter}${i}`,
          gets: dice.pick([0, ...dips]),
        }));
      const [near, far] = [makeFloors('R'), makeFloors('F')];
      const pairs = near.flatMap((one) => far.filter(() => dice.chance(0.6)).map((other) => [one, other]));
      const all = [...pairs, ...[...near, ...far].filter(() => dice.chance(0.5)).map((one) => [one])];
      const places = all.map((floors): PlaceNeed => {
        const sum = floors.reduce((total, { gets }) => total + gets, 0);
        // Lopsided, so that the middles of all places can't be had together.
        const [under, above] = [dice.pick([0.004, 0.02, 0.15]), dice.pick([0.004, 0.02, 0.15])];
        return { floors: floors.map(({ id }) => id), least: Math.max(0, sum - under), most: sum + above };
      });
      const shared = shareBetweenFaces(places);
      const { gets } = extraDips([...shared.values()]);
      const getsOf = new Map([...shared.keys()].map((id, i) => [id, gets[i] ?? Number.NaN]));
      for (const { floors, least, most } of places) {
        const sum = floors.reduce((total, id) => total + (getsOf.get(id) ?? Number.NaN), 0);
        expect(sum, `case ${index}`).toBeGreaterThan(least - 1e-6);
        expect(sum, `case ${index}`).toBeLessThan(most + 1e-6);
      }
    }
  });

  test('500 random parts, whether they can be saved or not: no place gets more than it bears', () => {
    for (let index = 0; index < 500; index++) {
      const dice = rollDice(PROPERTY_SEED + 1, index);
      const places = Array.from({ length: dice.whole(1, 6) }, (): PlaceNeed => {
        const floors = dice.pick([
          [`R${dice.whole(0, 2)}`],
          [`F${dice.whole(0, 2)}`],
          [`R${dice.whole(0, 2)}`, `F${dice.whole(0, 2)}`],
        ]);
        const least = dice.between(0, 0.3);
        return { floors, least, most: least + dice.between(-0.01, 0.15) };
      });
      const shared = shareBetweenFaces(places);
      const { gets } = extraDips([...shared.values()]);
      const getsOf = new Map([...shared.keys()].map((id, i) => [id, gets[i] ?? 0]));
      for (const { floors, most } of places) {
        const sum = floors.reduce((total, id) => total + (getsOf.get(id) ?? 0), 0);
        expect(sum, `case ${index}`).toBeLessThan(Math.max(0, most) + 1e-6);
      }
    }
  });
});
