/**
 * A number from the world carries its source beside it. Constants that hold a bare number are listed here by the reason why
 * they need none; any other fails.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { bareFigures } from '#support/bare-figures.ts';

const FOLDERS = ['bath', 'part', 'checks', 'plan', 'run', 'handoff'];

/** Pictures and pages for paper: whatever stands bare there is layout. */
const LAYOUT = 'handoff/pdf/';

/** By reason and file, names of its constants. */
const NEED_NO_SOURCE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'a definition or an exact conversion': {
    'bath/aluminium-chemistry.ts': 'HYDROGEN_PER_ALUMINIUM',
    'bath/arrhenius.ts': 'KELVIN_AT_0C',
    'bath/bath-sheet.ts': 'ROOM',
    'bath/known-figures.ts': 'DENSITIES RATES FACTORS ENERGIES',
    'part/job-figures.ts': 'STEPS_A_MILLIMETRE',
    'plan/allowance.ts': 'DATUM_SHARE',
  },
  'a limit of size or of what can be written': {
    'bath/figures-file.ts': 'LARGEST SMALLEST_POSITIVE',
    'part/check-post.ts': 'LEAST_INCH_DECIMALS',
    'part/handoff-schema.ts': 'MOST_SECTIONS',
    'part/job-file.ts': 'LARGEST SMALLEST_POSITIVE FARTHEST MOST_LETTERS MOST_ROWS MOST_LEVELS MOST_HOLES',
    'part/part-limits.ts': 'MOST_LINEWORK MOST_TANGLE',
    'part/post-file.ts': 'LARGEST DECIMALS',
    'part/read-json.ts': 'DEEPEST_NESTING',
    'part/noise-layers.ts': 'LINE_TYPES',
    'part/resolve-factor.ts': 'MOST_TIMES_ONE',
    'part/resolve-rate.ts': 'LARGEST_SPREAD',
    'part/review-file.ts': 'MOST_TEXT',
    'part/template-choices.ts': 'MOST_HOLES',
    'plan/fewest-levels.ts': 'MOST_LEVELS',
    'run/correct-readings.ts': 'LARGEST MOST_ROWS',
    'run/run-limits.ts': 'MOST_JOB_BYTES MOST_PLAN_BYTES MOST_POINTS_BYTES',
    'handoff/etched-solid.ts': 'MANY_BORDERS',
    'handoff/inspection-points.ts': 'MOST_POINTS MOST_CANDIDATES',
    'handoff/stage-suffix.ts': 'MOST_STAGES STAGE_SUFFIXES',
    'handoff/template/template-files.ts': 'MOST_TEMPLATES MOST_PAGES',
  },
  'a published table: its source goes along with the value that it gives': {
    'bath/sheet-tolerance.ts': 'STARTS_AT ROWS',
  },
  'statistics: a table of the GUM, or a gate on what it is asked': {
    'bath/student-factor.ts': 'ROWS',
    'part/measured-sheet.ts': 'READING_LIMIT',
    'checks/tolerance-budget.ts': 'READING READING_AT_WORST',
    'run/correct-fit.ts': 'ENOUGH_FREEDOM SAME_MOMENT',
    'run/correct-run.ts': 'APART LEAST_RATE_SHARE',
  },
  'geometry: nearer than this is the same': {
    'part/check-choices.ts': 'LEAST_SECTION',
    'part/find-layers.ts': 'SAME_AREA',
    'part/name-regions.ts': 'ALIGNED SAME_AREA',
    'plan/near-levels.ts': 'NEAREST_LEVELS',
    'part/region-at.ts': 'LEAST_CLEARANCE',
    'checks/check-budget.ts': 'ROUNDING',
    'checks/check-corners.ts': 'ALIKE SAME_CIRCLE TIP',
    'checks/check-floor.ts': 'LEAST_OPENING SAME_SHARE',
    'checks/check-land.ts': 'BESIDE',
    'checks/check-over-etch.ts': 'UNSEEN',
    'checks/check-piece-parts.ts': 'INSIDE',
    'checks/check-piece-width.ts': 'SAME_BORDER',
    'checks/check-step.ts': 'ROUNDING',
    'checks/making-limits.ts': 'SCRIBE_ACCURACY',
    'checks/narrow-places.ts': 'ROOM_WITHIN HAIR WEDGE HALVINGS ONE_LINE TOUCHING ACROSS TOGETHER PARALLEL',
    'checks/standing-maskant.ts': 'SAME_BORDER',
    'checks/surroundings.ts': 'NEXT_TO',
    'checks/tolerance-budget.ts': 'SAME WORTH_IT',
    'checks/way-across.ts': 'BEYOND BESIDE',
    'plan/fewest-levels.ts': 'TOUCHING SAME_LEVEL',
    'plan/open-cluster.ts': 'APART',
    'plan/settle-ends.ts': 'SAME_DEPTH',
    'plan/strip-cuts.ts': 'SAME_DEPTH',
    'plan/taper-profile.ts': 'PARALLEL',
    'plan/taper-strips.ts': 'SLIVER MOST_STRIPS',
    'plan/withdrawal.ts': 'WORTH',
    'run/correct-fit.ts': 'SURE_SHEET SURE_RATE',
    'run/correct-minutes.ts': 'TOUCHING',
    'run/cut-sections.ts': 'CHORD',
    'run/section-job.ts': 'INSET',
    'handoff/contour.ts': 'STRAIGHT',
    'handoff/cut-lines.ts': 'CORNER_COSINE',
    'handoff/etched-solid.ts': 'SLACK',
    'handoff/inspection-points.ts': 'FLAT',
    'handoff/line-changes.ts': 'SAME',
    'handoff/followable-line.ts': 'LEAST_SEGMENT ROUNDING',
    'handoff/machine-program.ts': 'SHORTEST',
    'handoff/plan-changes.ts': 'SAME SAME_PLACE',
    'handoff/stretch-along.ts': 'SPECK',
    'handoff/template/line-meets.ts': 'ON_LINE',
    'handoff/template/near-slots.ts': 'SLACK',
    'handoff/template/place-bridges.ts': 'SLACK',
  },
  'a shape to fill in, for no machine in particular': {
    'part/post-file.ts': 'PLAIN_POST',
  },
  'the shape of a file, checked as it is read': {
    'part/review-file.ts': 'schema',
    'run/earlier-plan.ts': 'NEEDED',
  },
  'a message: how much of it is told': {
    'checks/check-corners.ts': 'MOST_OUTLINES',
    'checks/check-making.ts': 'MOST_A_CODE',
    'checks/check-sheet-edge.ts': 'MOST_OUTLINES',
    'checks/gather-narrow.ts': 'SAME_FIGURE MOST_OUTLINES',
    'handoff/review-sheets.ts': 'MOST_POINTS',
    'handoff/review-tables.ts': 'MOST_IDS MOST_PLACES',
  },
  'a search: how finely and how often it looks': {
    'checks/check-maskant-strips.ts': 'TRIED',
    'checks/check-over-etch.ts': 'TRIED',
    'plan/fewest-levels.ts': 'HALVINGS WIDEST_SHARE',
    'plan/oklch-color.ts': 'HALVINGS',
    'handoff/inspection-points.ts': 'LEAST_POINTS ACROSS LEAST_ACROSS AROUND',
    'handoff/line-changes.ts': 'LOOKS',
    'handoff/template/check-templates.ts': 'NARROWER',
    'handoff/template/is-near-itself.ts': 'FAR',
    'handoff/template/line-meets.ts': 'FARTHEST STEPS',
    'handoff/template/make-templates.ts': 'MOST_HALVINGS',
    'handoff/template/place-bridges.ts': 'MORE',
    'handoff/template/slot-marks.ts': 'TRIES',
  },
  'layout of a table, a sheet or a picture': {
    'plan/stage-colors.ts': 'SHALLOW DEEP CHROMA FULL_AT',
    'plan/stage-mark.ts': 'GROUP GROUP_GAP REPEAT_GAP',
    'plan/withdrawal.ts': 'ROW_MINUTES',
    'run/handoff-files.ts': 'LEAST_PIECE',
    'handoff/review-sheets.ts': 'BESIDE_PICTURE',
    'handoff/section-svg.ts': 'WIDTH HEIGHT MARGIN ROW',
    'handoff/svg-pen.ts': 'LETTER BOLD_LETTER',
    'handoff/template/slot-marks.ts':
      'SIZES APART OFF WEB_SHARE LONGEST BETWEEN LEAST_PITCH HEIGHTS FIGURE_WIDTH',
    'handoff/template/template-label.ts':
      'SQUARE INSET ROW TEXT HEAD_ROWS LEAST_WIDTH MOST_WIDTH COLUMN SAMPLE WORDS_LEFT',
    'handoff/template/template-pages.ts': 'GAP EDGE_STROKE SLOT_STROKE MARK_STROKE BODY BAR',
    'handoff/template/tile-pages.ts': 'EDGE STRIP FOOT OVERLAP SIZES',
  },
  'a file format, by its standard': {
    'handoff/color-number.ts': 'BRIGHTNESS PALE FIRST_HUE LAST_HUE',
    'handoff/glb-file.ts': 'FLOAT UNSIGNED_INT VERTICES INDICES',
    'handoff/scribe-drawing.ts': 'AS_PLANNED',
    'handoff/stl-file.ts': 'HEADING TRIANGLE',
  },
  'the template: a share of the widths that the job gives': {
    'handoff/template/lay-line.ts': 'TIGHT TOO_TIGHT',
    'handoff/template/near-slots.ts': 'LEAST_SHARE',
  },
};

function found(): string[] {
  return FOLDERS.flatMap((folder) =>
    readdirSync(`src/${folder}`, { recursive: true, encoding: 'utf8' }).flatMap((path) => {
      const file = `${folder}/${path.replaceAll('\\', '/')}`;
      if (!file.endsWith('.ts') || file.startsWith(LAYOUT)) return [];
      return bareFigures(readFileSync(`src/${file}`, 'utf8')).map((name) => `${file} ${name}`);
    }),
  );
}

const listed = Object.values(NEED_NO_SOURCE).flatMap((files) =>
  Object.entries(files).flatMap(([file, names]) => names.split(' ').map((name) => `${file} ${name}`)),
);

test('every number that stands bare in a module has a reason to', () => {
  expect(found().filter((each) => !listed.includes(each))).toEqual([]);
});

test('and no reason is left behind by a number that is gone', () => {
  const all = found();
  expect(listed.filter((each) => !all.includes(each))).toEqual([]);
  expect(new Set(listed).size).toBe(listed.length);
});

test('a rate, a table of figures and a number among words are seen; a sourced one, a function and a schema are not', () => {
  const text = [
    'const RATE = 0.03;',
    'export const WIDEST: number = 2 * RATE;',
    'const ROWS = [\n  [1, 2.5],\n] as const;',
    "const SAID = { value: 4, name: 'four' };",
    "const DEEP: Sourced = { value: 12.7, source: 'from memory', kind: 'memory' };",
    'const half = (value: number) => value / 2;',
    'const length = z.number().check(z.gte(1e-3), z.lte(1e5));',
    "const NAME = 'al-2024';",
  ].join('\n');
  expect(bareFigures(text)).toEqual(['RATE', 'WIDEST', 'ROWS', 'SAID']);
});
