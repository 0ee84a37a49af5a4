/** Names in readers that know ASCII alone. */
import { expect, test } from 'vitest';
import { asciiOnly, asciiText } from '#drawing/write/ascii-text.ts';

test('letters lose their accents, signs of print become plain ones, and only the rest question marks', () => {
  expect(asciiOnly('the site’s très long – “Tür” 4 × 2 − 1')).toBe('the site\'s tres long - "Tur" 4 x 2 - 1');
  expect(asciiOnly('翼 Ж ß')).toBe('? ? ?');
  expect(asciiOnly('a\nb')).toBe('a b');
});

test('from release 2000 on every letter is kept, in the escape of the format', () => {
  expect(asciiText('Tür')).toBe('T\\U+00FCr');
});
