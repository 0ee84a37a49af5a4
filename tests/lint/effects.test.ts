/** The lint rule of `effects.grit`: no effect hands React the value of a call whose return no standard fixes. */
import { beforeAll, expect, test } from 'vitest';
import { refusedFiles } from '#support/lint/refused-files.ts';

const RETURNS_A_VALUE = [
  'useEffect(() => list.current?.scrollTo({ top: 0 }), [shown]);',
  "useEffect(() => form.current?.scrollIntoView({ block: 'nearest' }), []);",
  'useLayoutEffect(() => actions.show(picture), [picture]);',
  'useEffect(() => invalidate());',
];
const UNDOES = [
  'useEffect(() => void list.current?.scrollTo({ top: 0 }), [shown]);',
  'useEffect(() => () => material.dispose(), [material]);',
  'useEffect(() => pose.subscribe(show), [pose]);',
  'useEffect(() => { return listenToPage(workbench); }, [workbench]);',
];

let refused: ReadonlySet<string>;
beforeAll(() => {
  const files = [...RETURNS_A_VALUE, ...UNDOES].map((code, index) => [
    `src/app/views/effect-${index}.tsx`,
    code,
  ]);
  refused = refusedFiles(Object.fromEntries(files));
});

test.each(RETURNS_A_VALUE.map((code, index) => [code, index] as const))('refused: %s', (_, index) => {
  expect(refused).toContain(`src/app/views/effect-${index}.tsx`);
});

test.each(UNDOES.map((code, index) => [code, index] as const))('let through: %s', (_, index) => {
  expect(refused).not.toContain(`src/app/views/effect-${RETURNS_A_VALUE.length + index}.tsx`);
});
