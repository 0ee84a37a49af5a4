/**
 * Files of the hand-off to choose from, by the word that the job says: metal or maskant could be cut, or a run be made, from
 * each, so that all are kept back while the plan has a `stop`. What writes one is `src/run/deliverables/WORD.ts`.
 */
import type { FindingCode } from '#findings/finding.ts';
import { twoDigits } from '#units/two-digits.ts';
import { POST_ENDINGS } from './formats/post-file.ts';

/** What is made of the plan before files are written, and only for those that need it. */
export type HandoffNeed = 'lines' | 'pictures' | 'points' | 'sections' | 'templates' | 'solid';

export type FileGroup = 'cut' | 'print' | 'inspect' | 'show';

interface ListedFile {
  /** What the workbench calls it. */
  readonly label: string;
  /** What it is for. */
  readonly group: FileGroup;
  /** For docs/files.md. */
  readonly holds: string;
  /** Every name that it can have; `#` is a number of two digits from 01. */
  readonly names: readonly string[];
  readonly needs: readonly HandoffNeed[];
  /** Findings that keep it back. */
  readonly keptBackBy?: readonly FindingCode[];
}

export const HANDOFF_LIST = {
  traveller: {
    label: 'traveller for the tank',
    group: 'print',
    holds: 'steps, pictures, minutes and boxes for the tank',
    names: ['traveller.pdf'],
    needs: ['pictures'],
    keptBackBy: ['picture-too-small'],
  },
  review: {
    label: 'review sheets',
    group: 'print',
    holds:
      'part, levels, tolerance, stages, sections, findings, sources and changes, for the person who signs',
    names: ['review.pdf'],
    needs: ['pictures', 'points', 'sections'],
    keptBackBy: ['picture-too-small', 'section-misses-sheet'],
  },
  inspection: {
    label: 'points to inspect',
    group: 'inspect',
    holds:
      'where to gauge and measure, with least and most; filled in, a file of readings; and the same with balloons on paper',
    names: ['inspection-points.csv', 'inspection-sheet.pdf'],
    needs: ['points'],
  },
  program: {
    label: 'machine program',
    group: 'cut',
    holds: 'the machine program, see [below](#machine-program)',
    names: POST_ENDINGS.flatMap((ending) => [`scribe.${ending}`, `scribe-#.${ending}`]),
    needs: ['lines'],
  },
  'scribe-r12': {
    label: 'scribe drawing for old readers (R12)',
    group: 'cut',
    holds: 'the lines of `scribe.dxf` for programs that read only old releases',
    names: ['scribe-r12.dxf', 'scribe-r12-#.dxf'],
    needs: [],
  },
  template: {
    label: 'scribe template',
    group: 'cut',
    holds: 'scribe templates to cut, one per file, and all of them at 1 : 1, see [below](#scribe-template)',
    names: ['template-#.dxf', 'template.pdf'],
    needs: ['lines', 'templates'],
  },
  bands: {
    label: 'bands of drawn edges (DXF)',
    group: 'inspect',
    holds: 'where drawn edges may come out: a band along each, see [below](#bands-of-drawn-edges)',
    names: ['bands.dxf'],
    needs: [],
  },
  'section-dxf': {
    label: 'sections to scale (DXF)',
    group: 'inspect',
    holds: 'each section of `handoff.sections` at its true size',
    names: ['section-#.dxf'],
    needs: ['sections'],
  },
  'section-svg': {
    label: 'pictures of sections (SVG)',
    group: 'inspect',
    holds: 'each of these sections as a picture',
    names: ['section-#.svg'],
    needs: ['sections'],
  },
  glb: {
    label: 'solid with colours (GLB)',
    group: 'show',
    holds: 'the etched part in 3D, one colour per stage',
    names: ['etched-part.glb'],
    needs: ['solid'],
  },
  stl: {
    label: 'solid (STL)',
    group: 'show',
    holds: 'the etched part as a plain solid',
    names: ['etched-part.stl'],
    needs: ['solid'],
  },
} as const satisfies Readonly<Record<string, ListedFile>>;

export type HandoffFile = keyof typeof HANDOFF_LIST;

export const HANDOFF_FILES = Object.keys(HANDOFF_LIST) as readonly HandoffFile[];

/** What is said of one, in the form of all. */
export function listedFile(file: HandoffFile): ListedFile {
  return HANDOFF_LIST[file];
}

/** Of every plan. */
const SCRIBE_NAMES = ['scribe.dxf', 'scribe-#.dxf'];

/** As many as two digits count: sections; stages and templates of an earlier plan that a folder is searched for. */
export const MOST_NUMBERED = 99;

/** Files that each face of a part has of its own. */
export const FACE_FILES: readonly HandoffFile[] = ['traveller', 'program', 'scribe-r12', 'template'];

/** Files of the far face: `scribe.dxf` is `scribe-far.dxf`. */
export function farName(name: string): string {
  return withSuffix(name, 'far');
}

/** Files of the opposite hand: `scribe.dxf` is `scribe-opposite.dxf`. */
export function oppositeName(name: string): string {
  return withSuffix(name, 'opposite');
}

/** Of the same file for the near face and the hand as drawn. */
export function plainName(name: string): string {
  return name.replace(/(?:-far)?(?:-opposite)?(\.[^.]*)$/, '$1');
}

function withSuffix(name: string, suffix: string): string {
  const dot = name.lastIndexOf('.');
  return `${name.slice(0, dot)}-${suffix}${name.slice(dot)}`;
}

/** Every name there can be: what an earlier plan left in a folder is taken away by these. */
export function cutFiles(): string[] {
  return [
    ...SCRIBE_NAMES,
    ...HANDOFF_FILES.flatMap((file) => HANDOFF_LIST[file].names),
    ...[...SCRIBE_NAMES, ...FACE_FILES.flatMap((file) => HANDOFF_LIST[file].names)].map(farName),
  ]
    .flatMap((name) => [name, oppositeName(name)])
    .flatMap((name) =>
      name.includes('#')
        ? Array.from({ length: MOST_NUMBERED }, (_, index) => name.replace('#', twoDigits(index + 1)))
        : [name],
    );
}
