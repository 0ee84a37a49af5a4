/** Alloys by id. A figure that could not be checked against a named document says so in its kind. */
import type { Sourced } from './provenance.ts';

export type Metal = 'aluminium' | 'titanium' | 'magnesium' | 'steel' | 'nickel' | 'copper';

export interface Alloy {
  readonly id: string;
  readonly name: string;
  readonly metal: Metal;
  /** g/cm³ */
  readonly density: Sourced;
  /** Its sheets come under alloy group II of EN 485-4 (1994), whose thickness tolerances are then the default. */
  readonly sheetGroup?: 'EN 485-4 II';
}

export const ALLOYS: readonly Alloy[] = [
  {
    id: 'al-2024-t3',
    name: 'aluminium 2024-T3',
    metal: 'aluminium',
    density: tabled(2.78),
    sheetGroup: 'EN 485-4 II',
  },
  {
    id: 'al-6061-t6',
    name: 'aluminium 6061-T6',
    metal: 'aluminium',
    density: tabled(2.7),
    sheetGroup: 'EN 485-4 II',
  },
  {
    id: 'al-7075-t6',
    name: 'aluminium 7075-T6',
    metal: 'aluminium',
    density: tabled(2.81),
    sheetGroup: 'EN 485-4 II',
  },
  { id: 'al-2219', name: 'aluminium 2219', metal: 'aluminium', density: tabled(2.84) },
  { id: 'ti-6al-4v', name: 'titanium Ti-6Al-4V', metal: 'titanium', density: remembered(4.43) },
  { id: 'mg-az31b', name: 'magnesium AZ31B', metal: 'magnesium', density: tabled(1.77) },
  { id: 'steel-304', name: 'stainless steel 304', metal: 'steel', density: tabled(8) },
  { id: 'steel-316', name: 'stainless steel 316', metal: 'steel', density: tabled(8) },
  {
    id: 'steel-17-7ph',
    name: 'stainless steel 17-7PH',
    metal: 'steel',
    density: { value: 7.65, source: 'engineering tables (another gives 7.80)', kind: 'common-practice' },
  },
  { id: 'nickel-718', name: 'nickel alloy 718', metal: 'nickel', density: remembered(8.19) },
];

/** Engineering tables agree on the figure, but no single document is named for it. */
function tabled(value: number): Sourced {
  return { value, source: 'engineering tables', kind: 'common-practice' };
}

function remembered(value: number): Sourced {
  return { value, source: 'from memory, to three figures', kind: 'memory' };
}
