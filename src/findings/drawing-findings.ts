/** Findings about a drawing as a whole: its file, its unit, its blocks and layers. Those about one entity: entity-findings.ts. */
import { type LengthUnit, millimetresIn, unitName } from '#units/length-unit.ts';
import { containerWords } from './container-findings.ts';
import { counted } from './counted.ts';
import { entityWords } from './entity-findings.ts';
import type { Shown } from './shown-figures.ts';
import { note, stop, warn } from './words.ts';

/** What a file may turn out to be instead of a drawing. */
export type WrongKind = 'DWG' | 'PDF' | 'ZIP' | 'gzip' | 'picture' | 'web page' | 'XML' | 'UTF-16 text';

/** What of a drawing may be too many to be worked on. */
export type TooMany =
  | 'bytes'
  | 'entities'
  | 'curves'
  | 'block insertions'
  | 'levels of blocks in blocks'
  | 'inserted entities'
  | 'lines and arcs'
  | 'lines and arcs in one curve'
  | 'tries of fitting arcs';

/** Findings that can leave a drawing without a curve. */
export type NoCurvesCause = keyof typeof NO_CURVES;

/** How large the drawing is, in its own units, and in which units it would be as large as parts are. */
interface SizeInUnits {
  readonly sides?: { readonly width: number; readonly height: number } | undefined;
  readonly likely?: readonly LengthUnit[];
}

const NO_CURVES = {
  'entity-out-of-range': {
    one: 'it is larger than 1 km or lies too far out',
    why: 'they are larger than 1 km or lie farther apart',
    remedy: 'Check the unit of the drawing first; then delete what does not belong to the part.',
  },
  'layer-not-shown': {
    one: 'its layer is off or frozen',
    why: 'their layers are off or frozen',
    remedy: 'Switch the layers of the outlines on in the drawing.',
  },
  'paper-space-passed-over': {
    one: 'it lies in paper space',
    why: 'they lie in paper space',
    remedy: 'Move the outlines to model space.',
  },
  'entity-cannot-be-read': {
    one: 'it is of a kind that cannot be read',
    why: 'they are of kinds that cannot be read',
    remedy: 'Explode them, or export them as polylines.',
  },
  'entity-passed-over': {
    one: 'it is of a kind that is not an outline',
    why: 'they are of kinds that are not outlines',
    remedy: 'Draw the outlines as lines, arcs and polylines.',
  },
  'entity-number-bad': {
    one: 'its numbers cannot be read',
    why: 'their numbers cannot be read',
    remedy: 'Export the drawing again.',
  },
  'entity-tilted': {
    one: 'it does not lie in the plane of the sheet',
    why: 'they do not lie in the plane of the sheet',
    remedy: 'Draw the part flat, in the plane of the sheet.',
  },
  'block-missing': {
    one: 'the block that is inserted is missing',
    why: 'the blocks that are inserted are missing',
    remedy: 'Export the drawing again with its blocks.',
  },
  'block-external': {
    one: 'the block that is inserted lies in another file',
    why: 'the blocks that are inserted lie in other files',
    remedy: 'Bind the external references into the drawing and export it again.',
  },
} as const;

const WRONG_KIND_REMEDY: Readonly<Record<WrongKind, string>> = {
  DWG: 'Open it in the program it was drawn with and save it as DXF.',
  PDF: 'Request the DXF that the PDF was plotted from.',
  ZIP: 'Unpack it and open the DXF inside.',
  gzip: 'Unpack it and open the DXF inside.',
  picture: 'Request the DXF; a picture contains no outlines.',
  'web page': 'The download went wrong: fetch the drawing itself again.',
  XML: 'Export the drawing as DXF.',
  'UTF-16 text': 'Save it again as a plain (ASCII or UTF-8) DXF.',
};

const BIG_REMEDY =
  'Use the flat pattern alone, without hatches, details, other sheets or scanned points, and with repeated blocks removed.';

const fileWords = {
  'drawing-empty': stop<{ bytes: number }>({
    title: 'Empty drawing file',
    say: ({ bytes }) => ({
      reason:
        bytes === 0
          ? 'The drawing file is empty.'
          : `The drawing file contains only ${counted(bytes, 'blank byte')}.`,
      remedy: 'Export the drawing again, or copy it again from its source.',
    }),
  }),
  'drawing-wrong-kind': stop<{ is: WrongKind }>({
    title: 'Not a DXF drawing',
    say: ({ is }) => ({
      reason: `The file is ${is === 'XML' || is === 'UTF-16 text' ? is : `a ${is}`}, not a DXF drawing.`,
      remedy: WRONG_KIND_REMEDY[is],
    }),
  }),
  'drawing-not-dxf': stop<{ begins: string }>({
    title: 'Not a DXF drawing',
    say: ({ begins }) => ({
      reason: `The file has no DXF section; it begins with "${begins}".`,
      remedy: 'Choose the DXF file, or export the drawing as DXF.',
    }),
  }),
  'drawing-too-big': stop<{ what: TooMany; found: number; limit: number }>({
    title: 'Drawing too big',
    say: ({ what, found, limit }) => ({
      reason: `The drawing amounts to ${found} ${what} or more; the limit is ${limit}.`,
      remedy: BIG_REMEDY,
      value: found,
      limit,
    }),
  }),
  'drawing-cut-short': stop<{ part: string; line: number }>({
    title: 'Drawing file cut short',
    say: ({ part, line }) => ({
      reason: [`The file ends on line ${line}, inside ${part}:`, `outlines may be missing.`],
      remedy:
        'Copy or export the drawing again. What was read is shown, but no files to cut from are written.',
    }),
  }),
  'drawing-end-missing': warn<{ line: number }>({
    title: 'End mark missing',
    say: ({ line }) => ({
      reason: `The file ends on line ${line} without its EOF mark; the outlines before it are complete.`,
      remedy: 'Compare the drawing with its print, or export it again.',
    }),
  }),
  'drawing-decimal-commas': warn<{ commas: number }>({
    title: 'Decimal commas',
    say: ({ commas }) => ({
      reason: `${commas === 1 ? 'One number has' : `All ${commas} numbers with decimals have`} a comma where the format requires a point; ${commas === 1 ? 'it was' : 'they were'} read as if with a point.`,
      remedy: 'Check one known length, or export the drawing again with decimal points.',
      value: commas,
    }),
  }),
  'drawing-decimals-mixed': stop<{ commas: number; points: number }>({
    title: 'Commas and points mixed',
    say: ({ commas, points }) => ({
      reason: [
        `${counted(commas, 'number has', 'numbers have')} a comma and ${counted(points, 'has', 'have')} a decimal point, so it is not clear whether commas mark decimals or thousands.`,
        `Anything with a comma was left out.`,
      ],
      remedy: 'Export the drawing again with decimal points throughout.',
      value: commas,
    }),
  }),
  'drawing-without-curves': stop<{
    /** In model and paper space, those of blocks apart. */
    entities: number;
    inBlocks: number;
    /** What kept most of them from being outlines. */
    cause: NoCurvesCause | undefined;
  }>({
    title: 'No outlines',
    say: ({ entities, inBlocks, cause }) => {
      const usual = 'Draw the outlines as lines, arcs and polylines in model space, on layers that are on.';
      if (entities === 0) {
        return inBlocks === 0
          ? { reason: 'The drawing contains no entities.', remedy: usual }
          : {
              reason: `The drawing contains ${counted(inBlocks, 'entity', 'entities')} in blocks, but no block is inserted.`,
              remedy: 'Insert the block with the outlines, or explode it, and export the drawing again.',
            };
      }
      const isOne = entities === 1;
      const none = isOne ? 'it is not a usable outline' : 'none of them is a usable outline';
      const why =
        cause === undefined ? '' : `: ${isOne ? NO_CURVES[cause].one : `mainly, ${NO_CURVES[cause].why}`}`;
      return {
        reason: `The drawing contains ${counted(entities, 'entity', 'entities')}, but ${none}${why}.`,
        remedy: cause === undefined ? usual : NO_CURVES[cause].remedy,
      };
    },
  }),
  'drawing-unit-missing': stop<SizeInUnits>({
    title: 'No unit',
    say: (facts, show) => ({
      reason: [
        'The drawing does not state its unit, and a guess could be wrong by a factor of 25.4.',
        ...sizesInWords(facts, show),
      ],
      remedy: SET_UNIT,
    }),
  }),
  'drawing-unit-unknown': stop<SizeInUnits & { value: string }>({
    title: 'Unknown unit',
    say: ({ value, ...facts }, show) => ({
      reason: [
        `The drawing gives its unit ($INSUNITS) as "${value}", which is not a unit; 1 to 24 are.`,
        ...sizesInWords(facts, show),
      ],
      remedy: SET_UNIT,
    }),
  }),
  'drawing-size-unlikely': warn<SizeInUnits & { stated: LengthUnit }>({
    title: 'Size unlikely for a part',
    say: ({ stated, sides, likely }, show) => ({
      reason: [
        `The drawing states ${unitName(stated)}, which makes it too large or too small for a part${sides === undefined ? '.' : ':'}`,
        ...(sides === undefined ? [] : [`${sizeIn(sides, stated, show)}.`]),
        ...(likely === undefined || sides === undefined ? [] : [asLikely(sides, likely, show)]),
      ],
      remedy: SET_UNIT,
    }),
  }),
  'drawing-unit-overridden': note<{ stated: LengthUnit; used: LengthUnit }>({
    title: 'Unit set for the drawing',
    say: ({ stated, used }) => ({
      reason: [
        `The drawing states ${unitName(stated)} but was read in ${unitName(used)}, as set:`,
        `lengths come out ${round(millimetresIn(used) / millimetresIn(stated))} times as long.`,
      ],
      remedy: 'Check one known length.',
      value: millimetresIn(used) / millimetresIn(stated),
    }),
  }),
  'drawing-unit-doubtful': warn<{
    stated: LengthUnit;
    /** Longer side of the drawing's box in drawing units. */
    size: number;
  }>({
    title: 'Unit in doubt',
    say: ({ stated, size }, show) => ({
      reason: [
        `The drawing states ${unitName(stated)} ($INSUNITS) but was set up as metric ($MEASUREMENT), often because the unit was never set.`,
        `Read as ${unitName(stated)} it is ${show.length(size * millimetresIn(stated), round)} long; as millimetre it would be ${show.length(size, round)}.`,
      ],
      remedy: 'Check which is right, and set drawingUnits in the job to settle it.',
      value: size * millimetresIn(stated),
    }),
  }),
  /** mm, of the local origin. */
  'drawing-far-out': note<{ at: readonly [number, number] }>({
    title: 'Far from the origin',
    say: ({ at: [x, y] }, show) => ({
      reason: `The linework lies more than 1 km from the drawing's origin, so it is calculated relative to a local origin at ${show.length(x, String)}, ${show.length(y, String)}.`,
      remedy:
        'No action is needed: output has the drawing’s own coordinates; solids state the point that theirs are relative to.',
    }),
  }),
  'layer-not-shown': note<{ layer: string; state: 'off' | 'frozen'; entities: number }>({
    title: 'Layer not shown',
    say: ({ layer, state, entities }) => ({
      reason: `Layer ${layer} is ${state}; its ${count(entities)} skipped.`,
      remedy: `If outlines are on it, switch the layer on in the drawing.`,
      value: entities,
    }),
  }),
  'paper-space-passed-over': note<{ entities: number }>({
    title: 'Paper space skipped',
    say: ({ entities }) => ({
      reason: [
        `${count(entities)} skipped because ${entities === 1 ? 'it lies' : 'they lie'} in paper space:`,
        `borders, title blocks, plotted views.`,
      ],
      remedy:
        entities === 1
          ? 'If it is an outline, move it to model space.'
          : 'If outlines are among them, move them to model space.',
      value: entities,
    }),
  }),
  'block-missing': warn<{ block: string; insertions: number }>({
    title: 'Block missing',
    say: ({ block, insertions }) => ({
      reason: `Block ${block} is inserted ${times(insertions)} but not defined in the file.`,
      remedy: 'Export the drawing again with its blocks, or explode the block first.',
      value: insertions,
    }),
  }),
  'block-external': warn<{ block: string; path: string; insertions: number }>({
    title: 'Block in another file',
    say: ({ block, path, insertions }) => ({
      reason: `Block ${block}, inserted ${times(insertions)}, lies in another file (${path || 'not named'}).`,
      remedy: 'Bind the external reference into the drawing and export it again.',
      value: insertions,
    }),
  }),
  'block-inside-itself': warn<{ block: string }>({
    title: 'Block inside itself',
    say: ({ block }) => ({
      reason: `Block ${block} is inserted inside itself; the inner insertion was left out.`,
      remedy: 'Correct the block in the drawing.',
    }),
  }),
  'block-unit-differs': note<{ block: string; blockUnit: LengthUnit; drawingUnit: LengthUnit }>({
    title: 'Block in another unit',
    say: ({ block, blockUnit, drawingUnit }) => ({
      reason: [
        `Block ${block} was made in ${unitName(blockUnit)}, the drawing in ${unitName(drawingUnit)}.`,
        `It is read at the scale of its insertion.`,
      ],
      remedy: 'Check one length of the block.',
    }),
  }),
  'more-of-the-same': note<{ of: string; more: number }>({
    title: 'More of the same',
    say: ({ of, more }) => ({
      reason: `${counted(more, 'more finding', 'more findings')} "${of}" ${more === 1 ? 'is' : 'are'} not listed one by one.`,
      remedy: 'Look at the ones listed first; they usually share their cause.',
      value: more,
    }),
  }),
};

export const drawingWords = { ...fileWords, ...containerWords, ...entityWords };

const SET_UNIT =
  'Measure one known length on the drawing and set drawingUnits in the job, for example to "mm" or "in"; with isobath inspect, use --unit.';

type Sides = NonNullable<SizeInUnits['sides']>;

function sizesInWords({ sides, likely }: SizeInUnits, show: Shown): string[] {
  if (sides === undefined || likely === undefined || !(sides.width + sides.height > 0)) return [];
  return [asLikely(sides, likely, show)];
}

function asLikely(sides: Sides, likely: readonly LengthUnit[], show: Shown): string {
  return `It would be ${likely.map((unit) => `in ${unitName(unit)} ${sizeIn(sides, unit, show)}`).join(', ')}.`;
}

function sizeIn({ width, height }: NonNullable<SizeInUnits['sides']>, unit: LengthUnit, show: Shown): string {
  const each = (length: number) => show.length(length * millimetresIn(unit), round);
  return `${each(width)} by ${each(height)}`;
}

function round(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function count(entities: number): string {
  return entities === 1 ? '1 entity was' : `${entities} entities were`;
}

function times(insertions: number): string {
  return insertions === 1 ? 'once' : `${insertions} times`;
}

/** The code that most entities fell under, each with how many it stands for. */
export function noCurvesCause(counts: ReadonlyMap<string, number>): NoCurvesCause | undefined {
  let cause: NoCurvesCause | undefined;
  let most = 0;
  for (const code of Object.keys(NO_CURVES) as NoCurvesCause[]) {
    const count = counts.get(code) ?? 0;
    if (count > most) [most, cause] = [count, code];
  }
  return cause;
}
