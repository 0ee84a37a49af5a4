/** Findings about a drawing as a whole: its file, its unit, its blocks and layers. Those about one entity: entity-findings.ts. */
import { type LengthUnit, millimetresIn, unitName } from '#units/length-unit.ts';
import { type ContainerFacts, containerWords } from './container-findings.ts';
import { counted } from './counted.ts';
import { type EntityFacts, entityWords } from './entity-findings.ts';
import type { Shown } from './shown-figures.ts';
import type { WordsFor } from './words.ts';

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
  | 'tries of fitting arcs';

interface DrawingFileFacts {
  readonly 'drawing-empty': { readonly bytes: number };
  readonly 'drawing-wrong-kind': { readonly is: WrongKind };
  readonly 'drawing-not-dxf': { readonly begins: string };
  readonly 'drawing-too-big': {
    readonly what: TooMany;
    readonly found: number;
    readonly limit: number;
  };
  readonly 'drawing-cut-short': { readonly part: string; readonly line: number };
  readonly 'drawing-end-missing': { readonly line: number };
  readonly 'drawing-decimal-commas': { readonly commas: number };
  readonly 'drawing-decimals-mixed': { readonly commas: number; readonly points: number };
  readonly 'drawing-without-curves': {
    /** In model and paper space, those of blocks apart. */
    readonly entities: number;
    readonly inBlocks: number;
    /** What kept most of them from being outlines. */
    readonly cause: NoCurvesCause | undefined;
  };
  readonly 'drawing-unit-missing': SizeInUnits;
  readonly 'drawing-unit-unknown': SizeInUnits & { readonly value: string };
  readonly 'drawing-size-unlikely': SizeInUnits & { readonly stated: LengthUnit };
  readonly 'drawing-unit-overridden': { readonly stated: LengthUnit; readonly used: LengthUnit };
  readonly 'drawing-unit-doubtful': {
    readonly stated: LengthUnit;
    /** Longer side of the drawing's box in drawing units. */
    readonly size: number;
  };
  /** mm, of the local origin. */
  readonly 'drawing-far-out': { readonly at: readonly [number, number] };
  readonly 'layer-not-shown': {
    readonly layer: string;
    readonly state: 'off' | 'frozen';
    readonly entities: number;
  };
  readonly 'paper-space-passed-over': { readonly entities: number };
  readonly 'block-missing': { readonly block: string; readonly insertions: number };
  readonly 'block-external': { readonly block: string; readonly path: string; readonly insertions: number };
  readonly 'block-inside-itself': { readonly block: string };
  readonly 'block-unit-differs': {
    readonly block: string;
    readonly blockUnit: LengthUnit;
    readonly drawingUnit: LengthUnit;
  };
  readonly 'more-of-the-same': { readonly of: string; readonly more: number };
}

/** Findings that can leave a drawing without a curve. */
export type NoCurvesCause = keyof typeof NO_CURVES;

/** How large the drawing is, in its own units, and in which units it would be as large as parts are. */
interface SizeInUnits {
  readonly sides?: { readonly width: number; readonly height: number } | undefined;
  readonly likely?: readonly LengthUnit[];
}

export type DrawingFacts = DrawingFileFacts & ContainerFacts & EntityFacts;

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
    one: 'it is of a kind that is no outline',
    why: 'they are of kinds that are no outlines',
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
  PDF: 'Ask for the DXF that the PDF was plotted from.',
  ZIP: 'Unpack it and open the DXF inside.',
  gzip: 'Unpack it and open the DXF inside.',
  picture: 'Ask for the DXF; a picture holds no outlines.',
  'web page': 'The download went wrong: fetch the drawing itself again.',
  XML: 'Export the drawing as DXF.',
  'UTF-16 text': 'Save it again as a plain (ASCII or UTF-8) DXF.',
};

const BIG_REMEDY =
  'Send the flat pattern alone: without hatches, details, other sheets or scanned points, and with repeated blocks removed.';

const fileWords: WordsFor<DrawingFileFacts> = {
  'drawing-empty': {
    severity: 'stop',
    title: 'Empty drawing file',
    say: ({ bytes }) => ({
      reason:
        bytes === 0
          ? 'The drawing file holds nothing.'
          : `The drawing file holds ${counted(bytes, 'blank byte')}.`,
      remedy: 'Export the drawing again, or copy it again from where it came.',
    }),
  },
  'drawing-wrong-kind': {
    severity: 'stop',
    title: 'Not a DXF drawing',
    say: ({ is }) => ({
      reason: `The file is ${is === 'XML' || is === 'UTF-16 text' ? is : `a ${is}`}, not a DXF drawing.`,
      remedy: WRONG_KIND_REMEDY[is],
    }),
  },
  'drawing-not-dxf': {
    severity: 'stop',
    title: 'Not a DXF drawing',
    say: ({ begins }) => ({
      reason: `The file has no DXF section; it begins with "${begins}".`,
      remedy: 'Choose the DXF file, or export the drawing as DXF.',
    }),
  },
  'drawing-too-big': {
    severity: 'stop',
    title: 'Drawing too big',
    say: ({ what, found, limit }) => ({
      reason: `The drawing comes to ${found} ${what} or more; ${limit} are taken.`,
      remedy: BIG_REMEDY,
      value: found,
      limit,
    }),
  },
  'drawing-cut-short': {
    severity: 'stop',
    title: 'Drawing file cut short',
    say: ({ part, line }) => ({
      reason: `The file ends on line ${line}, inside ${part}: outlines may be missing.`,
      remedy: 'Copy or export the drawing again. What was read is shown, but nothing is cut from it.',
    }),
  },
  'drawing-end-missing': {
    severity: 'warn',
    title: 'End mark missing',
    say: ({ line }) => ({
      reason: `The file ends on line ${line} without its EOF mark; the outlines before it are complete.`,
      remedy: 'Compare the drawing with its print, or export it again.',
    }),
  },
  'drawing-decimal-commas': {
    severity: 'warn',
    title: 'Decimal commas',
    say: ({ commas }) => ({
      reason: `${commas === 1 ? 'One number has' : `All ${commas} numbers with decimals have`} a comma where the format has a point; ${commas === 1 ? 'it was' : 'they were'} read as if with a point.`,
      remedy: 'Check one known length, or export the drawing again with decimal points.',
      value: commas,
    }),
  },
  'drawing-decimals-mixed': {
    severity: 'stop',
    title: 'Commas and points mixed',
    say: ({ commas, points }) => ({
      reason: `${counted(commas, 'number has', 'numbers have')} a comma and ${counted(points, 'has', 'have')} a decimal point, so it is not known whether commas stand before decimals or thousands. What has a comma was left out.`,
      remedy: 'Export the drawing again with decimal points throughout.',
      value: commas,
    }),
  },
  'drawing-without-curves': {
    severity: 'stop',
    title: 'No outlines',
    say: ({ entities, inBlocks, cause }) => {
      const usual = 'Draw the outlines as lines, arcs and polylines in model space, on layers that are on.';
      if (entities === 0) {
        return inBlocks === 0
          ? { reason: 'The drawing holds no entities at all.', remedy: usual }
          : {
              reason: `The drawing holds ${counted(inBlocks, 'entity', 'entities')} in blocks, and no block is inserted.`,
              remedy: 'Insert the block with the outlines, or explode it, and export the drawing again.',
            };
      }
      const isOne = entities === 1;
      const none = isOne ? 'it is no outline' : 'none of them is an outline';
      const why =
        cause === undefined
          ? ''
          : `: ${isOne ? NO_CURVES[cause].one : `most of all, ${NO_CURVES[cause].why}`}`;
      return {
        reason: `The drawing holds ${counted(entities, 'entity', 'entities')}, and ${none} that can be used${why}.`,
        remedy: cause === undefined ? usual : NO_CURVES[cause].remedy,
      };
    },
  },
  'drawing-unit-missing': {
    severity: 'stop',
    title: 'No unit',
    say: (facts, show) => ({
      reason: `The drawing does not say in which unit it is drawn, and a guess could be 25.4 times wrong.${sizesInWords(facts, show)}`,
      remedy: SET_UNIT,
    }),
  },
  'drawing-unit-unknown': {
    severity: 'stop',
    title: 'Unknown unit',
    say: ({ value, ...facts }, show) => ({
      reason: `The drawing gives its unit ($INSUNITS) as "${value}", which names none; 1 to 24 do.${sizesInWords(facts, show)}`,
      remedy: SET_UNIT,
    }),
  },
  'drawing-size-unlikely': {
    severity: 'warn',
    title: 'Size unlikely for a part',
    say: ({ stated, sides, likely }, show) => ({
      reason: `The drawing says ${unitName(stated)}, and no part is as large or as small as it then is${sides === undefined ? '' : `: ${sizeIn(sides, stated, show)}`}.${likely === undefined || sides === undefined ? '' : ` ${asLikely(sides, likely, show)}`}`,
      remedy: SET_UNIT,
    }),
  },
  'drawing-unit-overridden': {
    severity: 'note',
    title: 'Unit set for the drawing',
    say: ({ stated, used }) => ({
      reason: `The drawing says ${unitName(stated)} and was read in ${unitName(used)} as asked: lengths come out ${round(millimetresIn(used) / millimetresIn(stated))} times as long.`,
      remedy: 'Check one known length.',
      value: millimetresIn(used) / millimetresIn(stated),
    }),
  },
  'drawing-unit-doubtful': {
    severity: 'warn',
    title: 'Unit in doubt',
    say: ({ stated, size }, show) => ({
      reason: `The drawing says ${unitName(stated)} ($INSUNITS) but was set up metric ($MEASUREMENT): often a setting that nobody looked at. Read as ${unitName(stated)} it is ${show.length(size * millimetresIn(stated), round)} long; as millimetre it would be ${show.length(size, round)}.`,
      remedy: 'Check which is right, and set drawingUnits in the job to settle it.',
      value: size * millimetresIn(stated),
    }),
  },
  'drawing-far-out': {
    severity: 'note',
    title: 'Far from the origin',
    say: ({ at: [x, y] }, show) => ({
      reason: `The linework lies more than 1 km from the drawing's origin, so it is calculated about a local origin at ${show.length(x, String)}, ${show.length(y, String)}.`,
      remedy:
        'Nothing need be done: all that has coordinates has the drawing’s own; solids say where they are counted from.',
    }),
  },
  'layer-not-shown': {
    severity: 'note',
    title: 'Layer not shown',
    say: ({ layer, state, entities }) => ({
      reason: `Layer ${layer} is ${state}; its ${count(entities)} passed over.`,
      remedy: `If the outlines are there, switch the layer on in the drawing.`,
      value: entities,
    }),
  },
  'paper-space-passed-over': {
    severity: 'note',
    title: 'Paper space passed over',
    say: ({ entities }) => ({
      reason: `${count(entities)} passed over because ${entities === 1 ? 'it lies' : 'they lie'} in paper space: borders, title blocks, plotted views.`,
      remedy:
        entities === 1
          ? 'If it is an outline, move it to model space.'
          : 'If outlines are among them, move them to model space.',
      value: entities,
    }),
  },
  'block-missing': {
    severity: 'warn',
    title: 'Block missing',
    say: ({ block, insertions }) => ({
      reason: `Block ${block} is inserted ${times(insertions)} but not defined in the file.`,
      remedy: 'Export the drawing again with its blocks, or explode the block first.',
      value: insertions,
    }),
  },
  'block-external': {
    severity: 'warn',
    title: 'Block in another file',
    say: ({ block, path, insertions }) => ({
      reason: `Block ${block}, inserted ${times(insertions)}, lies in another file (${path || 'not named'}).`,
      remedy: 'Bind the external reference into the drawing and export it again.',
      value: insertions,
    }),
  },
  'block-inside-itself': {
    severity: 'warn',
    title: 'Block inside itself',
    say: ({ block }) => ({
      reason: `Block ${block} is inserted inside itself; the inner insertion was left out.`,
      remedy: 'Correct the block in the drawing.',
    }),
  },
  'block-unit-differs': {
    severity: 'note',
    title: 'Block in another unit',
    say: ({ block, blockUnit, drawingUnit }) => ({
      reason: `Block ${block} was made in ${unitName(blockUnit)}, the drawing in ${unitName(drawingUnit)}. It is taken at the scale it was inserted with.`,
      remedy: 'Check one length of the block.',
    }),
  },
  'more-of-the-same': {
    severity: 'note',
    title: 'More of the same',
    say: ({ of, more }) => ({
      reason: `${counted(more, 'more finding', 'more findings')} "${of}" ${more === 1 ? 'is' : 'are'} not listed one by one.`,
      remedy: 'Look at the ones listed first; they usually share their cause.',
      value: more,
    }),
  },
};

export const drawingWords: WordsFor<DrawingFacts> = { ...fileWords, ...containerWords, ...entityWords };

const SET_UNIT =
  'Measure one known length on the drawing and set drawingUnits in the job, for example to "mm" or "in"; isobath inspect takes it as --unit.';

type Sides = NonNullable<SizeInUnits['sides']>;

function sizesInWords({ sides, likely }: SizeInUnits, show: Shown): string {
  if (sides === undefined || likely === undefined || !(sides.width + sides.height > 0)) return '';
  return ` ${asLikely(sides, likely, show)}`;
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
