/** Every finding there is: the subjects' catalogues side by side. */
import { bathWords } from './bath-findings.ts';
import { budgetWords } from './budget-findings.ts';
import { compareWords } from './compare-findings.ts';
import { drawingWords } from './drawing-findings.ts';
import { faceWords } from './face-findings.ts';
import { fileWords } from './file-findings.ts';
import { handoffWords } from './handoff-findings.ts';
import { jobWords } from './job-findings.ts';
import { lineWords } from './line-findings.ts';
import { makingWords } from './making-findings.ts';
import { partWords } from './part-findings.ts';
import { planWords } from './plan-findings.ts';
import { requestWords } from './request-findings.ts';
import { reworkWords } from './rework-findings.ts';
import { runWords } from './run-findings.ts';
import { sizingWords } from './sizing-findings.ts';
import { surveyWords } from './survey-findings.ts';
import { templateWords } from './template-findings.ts';

export const CATALOGUE = {
  ...fileWords,
  ...drawingWords,
  ...jobWords,
  ...bathWords,
  ...partWords,
  ...planWords,
  ...faceWords,
  ...runWords,
  ...reworkWords,
  ...makingWords,
  ...budgetWords,
  ...compareWords,
  ...lineWords,
  ...requestWords,
  ...handoffWords,
  ...sizingWords,
  ...surveyWords,
  ...templateWords,
};

export type FindingCode = keyof typeof CATALOGUE;

export type FactsByCode = {
  readonly [Code in FindingCode]: Parameters<(typeof CATALOGUE)[Code]['say']>[0];
};
