/** The reason of a finding begins with what happened; the review sheets set it apart. */
import { expect, test } from 'vitest';
import { finding } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';

test('a scale or a range in brackets does not end what happened', () => {
  const small = sayFinding(
    finding('picture-too-small', { paper: 'a4', width: 0.7, limit: 1.5, scale: 4.2, stage: 2, larger: 'a3' }),
  );
  expect(small.what).toBe(
    'On A4 the part is drawn 1 : 4.2, and a piece of stage 2 comes out 0.7 mm wide: under 1.5 mm it is not clear what to peel.',
  );
  expect(small.reason).toBe(`${small.what} Neither traveller nor review sheets are written.`);
});

test('what happened is the whole reason where nothing follows it', () => {
  const { what, reason } = sayFinding(finding('survey-unclear', { column: 'thickness', found: '' }));
  expect(what).toBe('`thickness` of the survey is empty.');
  expect(reason).toBe(what);
});

test('what follows is left out where there is none to say', () => {
  const plain = { layer: 'DIMS', why: 'its name', troubles: 0 };
  const { what, reason } = sayFinding(finding('layer-beside-the-part', plain));
  expect(reason).toBe(what);
  const troubled = sayFinding(finding('layer-beside-the-part', { ...plain, troubles: 3 }));
  expect(troubled.reason).toBe(`${what} 3 of its lines close no outline.`);
});
