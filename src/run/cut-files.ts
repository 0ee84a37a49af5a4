/** Names of the files that metal or maskant could be cut, or a run be made, from: kept back while the plan has a `stop`. */
import { programNames } from '#handoff/program-files.ts';
import { scribeNames } from '#handoff/scribe-files.ts';
import { templateNames } from '#handoff/template/template-files.ts';
import { sectionNames } from './section-files.ts';

export const CUT_FILES: readonly string[] = [
  ...scribeNames(),
  ...programNames(),
  ...templateNames(),
  'traveller.pdf',
  'review.pdf',
  'inspection-points.csv',
  ...sectionNames(),
  'etched-part.glb',
  'etched-part.stl',
];
