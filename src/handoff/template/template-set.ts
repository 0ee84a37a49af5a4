/** What scribe templates are made of, from the scribe line to the whole set; and how a slot lies to its line. */
import type { Loop, Path, Span } from '#geometry/span.ts';
import type { TemplateChoices } from '#job/fields/template-fields.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import type { InkText, SlotMark } from './ink.ts';
import type { Range } from './place-bridges.ts';
import type { TemplateSheet } from './template-sheet.ts';
import type { LabelWords } from './template-words.ts';

/** A scribe line in the template's frame: stretched, where the template is. */
export interface RuledLine {
  readonly stage: Stage;
  readonly path: Path;
  /** mm */
  readonly length: number;
}

/** What of a line is slot and what is bridge, in mm along it; on a closed line the last may pass its start. */
export interface LaidLine {
  readonly line: RuledLine;
  readonly slots: readonly Range[];
  /** Also what is left to cut by hand at an end that runs into another line. */
  readonly bridges: readonly Range[];
}

export interface Slot {
  /** Its line's place in the list of all lines. */
  readonly line: number;
  readonly stage: Stage;
  /** The stretch of the scribe line that the knife cuts. */
  readonly spans: readonly Span[];
  /** Its edge; one loop, unless the slot closes on itself. */
  readonly outline: readonly Loop[];
}

/** Where the two edges of a slot run, mm to the left of the scribe line; the piece that its stage peels lies there. */
export interface SlotBand {
  readonly low: number;
  readonly high: number;
  /** How far a slot reaches from its line. */
  readonly reach: number;
}

export interface TemplateInput {
  readonly name: string;
  readonly plan: Pick<EtchPlan, 'stages' | 'sheet' | 'masking' | 'regions'>;
  readonly choices: TemplateChoices;
  readonly label: LabelWords;
  /** mm that lines run on past the sheet's edge where they end at it. */
  readonly overrun: number;
}

export interface TemplateSet {
  readonly input: TemplateInput;
  readonly sheet: TemplateSheet;
  readonly band: SlotBand;
  readonly lines: readonly LaidLine[];
  /** Slots by template. */
  readonly templates: readonly (readonly Slot[])[];
  /** Of the slots, by template. */
  readonly marks: readonly (readonly SlotMark[])[];
  /** Names of regions, by template. */
  readonly names: readonly (readonly InkText[])[];
  /** Templates that no choice could do without. */
  readonly least: number;
}

/** Before its regions are named. */
export type UnnamedSet = Omit<TemplateSet, 'names'>;

export function slotBand({ width, side }: TemplateChoices['knife']): SlotBand {
  if (side === 'peeled') return { low: 0, high: width, reach: width };
  if (side === 'kept') return { low: -width, high: 0, reach: width };
  return { low: -width / 2, high: width / 2, reach: width / 2 };
}
