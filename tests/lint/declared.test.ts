/** The lint rule of `declared.grit`: where the job is edited, no control types a name or a limit that its field declares. */

import { beforeAll, expect, test } from 'vitest';
import { refusedFiles } from '#support/lint/refused-files.ts';

const TYPED = [
  "import { QuantityField } from '#app/views/QuantityField.tsx'; <QuantityField />;",
  '<LengthField of={thickness} label="Thickness" />;',
  "<LengthField of={thickness} label={isFirst ? 'Start' : 'End'} />;",
  '<LengthField of={thickness} within={{ most: 20 }} />;',
  '<LengthField of={thickness} within={{ most: MOST_WIDE }} />;',
  "<NumberField of={{ label: 'Stretch', control }} />;",
  '<LengthList of={reading} within={{ least: 0.1 }} />;',
  '<RowsField label="Tooling holes at" />;',
  '<ChoiceField label="Alloy">{options}</ChoiceField>;',
  '<input maxLength={40} />;',
];
const DECLARED = [
  '<LengthField of={members.thickness} within={{ most: sheetThickness(job) }} onTake={take} />;',
  '<LengthField of={level} label={numbered(level, index + 1)} placeholder="none" />;',
  '<NumberField of={FIELDS[key]} usual={1} />;',
  '<RowsField label={members.holes.label} columns={["x", "y"]} count={2} />;',
  '<ChoiceField label={members.alloy.label}>{options}</ChoiceField>;',
  '<input maxLength={control.most} aria-label="Name" />;',
];
const FOLDERS = ['drawing', 'handoff', 'job', 'opening', 'requirements'];

let refused: ReadonlySet<string>;
beforeAll(() => {
  const typed = TYPED.flatMap((code, index) =>
    [...FOLDERS, 'tank'].map((folder) => [`src/app/views/${folder}/typed-${index}.tsx`, code] as const),
  );
  const declared = DECLARED.map((code, index) => [`src/app/views/job/declared-${index}.tsx`, code] as const);
  refused = refusedFiles(Object.fromEntries([...typed, ...declared]));
});

test.each(TYPED.map((code, index) => [code, index] as const))('refused: %s', (_, index) => {
  expect(FOLDERS.filter((folder) => !refused.has(`src/app/views/${folder}/typed-${index}.tsx`))).toEqual([]);
  expect(refused).not.toContain(`src/app/views/tank/typed-${index}.tsx`);
});

test.each(DECLARED.map((code, index) => [code, index] as const))('let through: %s', (_, index) => {
  expect(refused).not.toContain(`src/app/views/job/declared-${index}.tsx`);
});
