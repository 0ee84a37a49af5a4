/**
 * Baths by id: which metal they etch, and the general figures that stand in until a coupon has given better ones.
 * Sources disagree on the etch factor, so it always counts as not measured.
 */
import type { Metal } from './alloys.ts';
import type { Sourced } from './provenance.ts';

export interface Bath {
  readonly id: string;
  readonly name: string;
  readonly etches: Metal;
  /** Undercut over depth; undefined where no source gives it. */
  readonly etchFactor: Sourced | undefined;
  /** mm/min; undefined where no source gives it. */
  readonly rate: Sourced | undefined;
  /** The reaction, where the plan's gas and caustic can be reckoned from it. */
  readonly reaction?: 'aluminium in caustic soda';
}

const MINUTES_AN_HOUR = 60;
const MILLIMETRES_A_CENTIMETRE = 10;

export const BATHS: readonly Bath[] = [
  {
    id: 'caustic-aluminium',
    name: 'hot caustic soda for aluminium',
    etches: 'aluminium',
    etchFactor: {
      value: 1,
      source: 'from memory; figures from 0.57 to 1.2 are seen, so measure it',
      kind: 'memory',
    },
    rate: centimetresAnHour(0.178),
    reaction: 'aluminium in caustic soda',
  },
  {
    id: 'ferricyanide-aluminium',
    name: 'alkaline ferricyanide spray for aluminium',
    etches: 'aluminium',
    etchFactor: {
      value: 1,
      source: 'Allen, PCM of aerospace materials, PCMI Journal 131 (2018), p. 42: about 1',
      kind: 'published',
    },
    rate: undefined,
  },
  {
    id: 'hydrofluoric-nitric-titanium',
    name: 'hydrofluoric and nitric acid for titanium',
    etches: 'titanium',
    etchFactor: { value: 1, source: 'from memory: 1.0 to 1.2', kind: 'memory' },
    rate: { value: 0.025, source: 'from memory', kind: 'memory' },
  },
  {
    id: 'dilute-acid-magnesium',
    name: 'dilute acid for magnesium',
    etches: 'magnesium',
    etchFactor: { value: 1, source: 'from memory', kind: 'memory' },
    rate: centimetresAnHour(0.46),
  },
  {
    id: 'acid-steel',
    name: 'acid immersion for steel',
    etches: 'steel',
    etchFactor: { value: 1.5, source: 'from memory: 1.0 to 2.0', kind: 'memory' },
    rate: { value: 0.025, source: 'from memory, for mild steel', kind: 'memory' },
  },
  {
    id: 'acid-nickel',
    name: 'acid immersion for nickel alloys',
    etches: 'nickel',
    etchFactor: { value: 1.5, source: 'from memory: 1.0 to 2.0', kind: 'memory' },
    rate: undefined,
  },
  {
    id: 'ferric-chloride-nickel',
    name: 'ferric chloride spray for nickel alloys',
    etches: 'nickel',
    etchFactor: undefined,
    rate: {
      value: 0.00507,
      source: 'PCMI Journal 143 (2024), table 6: alloy X-750 in 2.91 M ferric chloride at 45 °C',
      kind: 'published',
    },
  },
  {
    id: 'cupric-chloride-copper',
    name: 'cupric chloride for copper',
    etches: 'copper',
    etchFactor: {
      value: 0.33,
      source: 'trade magazine, quoted the other way up as 3 : 1',
      kind: 'published',
    },
    rate: undefined,
  },
];

/** The trade gives rates of immersion in centimetres an hour. */
function centimetresAnHour(rate: number): Sourced {
  return {
    value: (rate * MILLIMETRES_A_CENTIMETRE) / MINUTES_AN_HOUR,
    source: `common practice: ${rate} cm/h`,
    kind: 'common-practice',
  };
}
