/** Every finding there is: the subjects' catalogues side by side. */
import { type BathFacts, bathWords } from './bath-findings.ts';
import { type BudgetFacts, budgetWords } from './budget-findings.ts';
import { type DrawingFacts, drawingWords } from './drawing-findings.ts';
import { type FileFacts, fileWords } from './file-findings.ts';
import { type HandoffFacts, handoffWords } from './handoff-findings.ts';
import { type JobFacts, jobWords } from './job-findings.ts';
import { type MakingFacts, makingWords } from './making-findings.ts';
import { type PartFacts, partWords } from './part-findings.ts';
import { type PlanFacts, planWords } from './plan-findings.ts';
import { type RequestFacts, requestWords } from './request-findings.ts';
import { type RunFacts, runWords } from './run-findings.ts';
import { type TemplateFacts, templateWords } from './template-findings.ts';
import type { WordsFor } from './words.ts';

export type FactsByCode = DrawingFacts &
  FileFacts &
  JobFacts &
  BathFacts &
  PartFacts &
  PlanFacts &
  RunFacts &
  MakingFacts &
  BudgetFacts &
  RequestFacts &
  HandoffFacts &
  TemplateFacts;

export const CATALOGUE: WordsFor<FactsByCode> = {
  ...fileWords,
  ...drawingWords,
  ...jobWords,
  ...bathWords,
  ...partWords,
  ...planWords,
  ...runWords,
  ...makingWords,
  ...budgetWords,
  ...requestWords,
  ...handoffWords,
  ...templateWords,
};
