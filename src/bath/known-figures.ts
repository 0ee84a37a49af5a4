/**
 * Alloys and baths by id, in the units that are calculated in: the built-in ones, with a job's own beside them or in their
 * place. Sources disagree on the etch factor of a bath, and a rate drifts, so general figures always count as not measured.
 */
import BUILT_IN from './alloys-and-baths.json' with { type: 'json' };
import {
  type AlloyGiven,
  type BathGiven,
  DENSITY_UNITS,
  ENERGY_UNITS,
  FACTOR_UNITS,
  type FiguresFile,
  RATE_UNITS,
  WEB_UNITS,
} from './figures-file.ts';
import type { Sourced } from './provenance.ts';

export interface Alloy {
  readonly id: string;
  readonly name: string;
  readonly metal: string;
  /** g/cm³ */
  readonly density: Sourced;
  /** Its sheets come under alloy group II of EN 485-4 (1994), whose thickness tolerances are then the default. */
  readonly sheetGroup?: 'EN 485-4 II';
  /** mm of metal left, by what is made of it; undefined where no source gives it. */
  readonly thinnestWeb?: Sourced;
}

export interface Bath {
  readonly id: string;
  readonly name: string;
  readonly etches: string;
  /** Undercut over depth; undefined where no source gives it. */
  readonly etchFactor: Sourced | undefined;
  /** The least and the greatest that others give, where that is known. */
  readonly factorRange?: { readonly from: number; readonly to: number };
  /** mm/min, at a bath temperature where that is known; undefined where no source gives it. */
  readonly rate: (Sourced & { readonly atC?: number }) | undefined;
  /** kJ/mol, with the least and the greatest that others give. */
  readonly activationEnergy: SpreadFigure | undefined;
  /** The reaction, where the plan's gas and caustic can be calculated from it. */
  readonly reaction?: 'aluminium in caustic soda';
}

export interface SpreadFigure extends Sourced {
  readonly from: number;
  readonly to: number;
}

export interface KnownFigures {
  readonly alloys: readonly Alloy[];
  readonly baths: readonly Bath[];
}

/** A job's own entry takes the place of a built-in one of the same id, whole. */
export function knownFigures(own?: FiguresFile): KnownFigures {
  // Tests hold it to the schema; at each start that would take longer than to read it.
  const builtIn = BUILT_IN as FiguresFile;
  return {
    alloys: merged(builtIn.alloys ?? [], own?.alloys ?? [], alloyOf),
    baths: merged(builtIn.baths ?? [], own?.baths ?? [], bathOf),
  };
}

type CiteSource = (source: string) => string;

function merged<Given extends { readonly id: string }, Known>(
  builtIn: readonly Given[],
  own: readonly Given[],
  read: (given: Given, cite: CiteSource) => Known,
): Known[] {
  const replaced = new Set(own.map(({ id }) => id));
  const had = new Set(builtIn.map(({ id }) => id));
  return [
    ...builtIn.filter(({ id }) => !replaced.has(id)).map((each) => read(each, (source) => source)),
    ...own.map((each) => {
      const whose = had.has(each.id) ? 'job’s figures in place of the built-in' : 'job’s figures';
      return read(each, (source) => `${whose}, ${each.id}: ${source}`);
    }),
  ];
}

function alloyOf({ id, name, metal, density, sheetGroup, thinnestWeb }: AlloyGiven, cite: CiteSource): Alloy {
  return {
    id,
    name,
    metal,
    density: sourced(density, DENSITIES, { unit: DENSITY_UNITS[0], cite }),
    ...(sheetGroup === undefined ? {} : { sheetGroup }),
    ...(thinnestWeb === undefined
      ? {}
      : { thinnestWeb: sourced(thinnestWeb, WEBS, { unit: WEB_UNITS[0], cite }) }),
  };
}

function bathOf(given: BathGiven, cite: CiteSource): Bath {
  const { id, name, etches, etchFactor, rate, activationEnergy, reaction } = given;
  const atC = rate?.atC;
  return {
    id,
    name,
    etches,
    etchFactor: etchFactor && sourced(etchFactor, FACTORS, { unit: FACTOR_UNITS[0], cite }),
    ...(etchFactor === undefined ? {} : factorRange(etchFactor)),
    rate: rate && {
      ...sourced(rate, RATES, { unit: RATE_UNITS[0], cite }),
      ...(atC === undefined ? {} : { atC }),
    },
    activationEnergy: activationEnergy && {
      ...sourced(activationEnergy, ENERGIES, { unit: ENERGY_UNITS[0], cite }),
      from: activationEnergy.from ?? activationEnergy.value,
      to: activationEnergy.to ?? activationEnergy.value,
    },
    ...(reaction === undefined ? {} : { reaction }),
  };
}

/** The other way up the least becomes the greatest. */
function factorRange({ value, from = value, to = value, unit }: NonNullable<BathGiven['etchFactor']>) {
  if (from === value && to === value) return {};
  const ends = [from, to].map(FACTORS[unit]);
  return { factorRange: { from: Math.min(...ends), to: Math.max(...ends) } };
}

interface Valued<Unit extends string> {
  readonly value: number;
  readonly unit: Unit;
  readonly source: string;
  readonly kind: Sourced['kind'];
  readonly plusMinus?: number | undefined;
}

/** How a value in a unit turns into the unit that is calculated in; rising and falling alike. */
type Conversions<Unit extends string> = Readonly<Record<Unit, (value: number) => number>>;

const times = (factor: number) => (value: number) => value * factor;

/** 1 lb = 453.59237 g and 1 in = 2.54 cm, both exact. */
const DENSITIES: Conversions<(typeof DENSITY_UNITS)[number]> = {
  'g/cm³': times(1),
  'kg/m³': times(1e-3),
  'lb/in³': times(453.59237 / (2.54 * 2.54 * 2.54)),
};
const RATES: Conversions<(typeof RATE_UNITS)[number]> = {
  'mm/min': times(1),
  'µm/min': times(1e-3),
  'cm/h': times(10 / 60),
  'in/min': times(25.4),
};
const FACTORS: Conversions<(typeof FACTOR_UNITS)[number]> = {
  'undercut / depth': times(1),
  'depth / undercut': (value) => 1 / value,
};
const WEBS: Conversions<(typeof WEB_UNITS)[number]> = { mm: times(1), in: times(25.4) };
const ENERGIES: Conversions<(typeof ENERGY_UNITS)[number]> = { 'kJ/mol': times(1) };

/** Twelve digits: a job that is written out in them reads back to the same figure. A value in another unit is quoted. */
function sourced<Unit extends string>(
  { value, unit, source, kind, plusMinus }: Valued<Unit>,
  convert: Conversions<Unit>,
  { unit: wanted, cite }: { readonly unit: Unit; readonly cite: CiteSource },
): Sourced {
  const turn = (each: number) => Number(convert[unit](each).toPrecision(12));
  const quoted = unit === wanted ? source : `${source}: ${value} ${unit}`;
  return {
    value: turn(value),
    source: cite(quoted),
    kind,
    ...(plusMinus === undefined ? {} : { plusMinus: (turn(value) * plusMinus) / value }),
  };
}
