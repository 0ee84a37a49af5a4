import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { changesSince, linesBefore, type Review, readReview, reviewText } from '#run/review.ts';
import { runJob } from '#run/run-job.ts';
import { sha256Of } from '#run/sha256-of.ts';

async function planOf(change: (job: Record<string, unknown>) => void = () => undefined): Promise<string> {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  change(job);
  const { files } = await runJob({
    jobText: JSON.stringify(job),
    drawingName: job.drawing,
    drawingBytes: readFileSync(`samples/${job.drawing}`),
  });
  const plan = files.find(({ name }) => name === 'plan.json');
  return new TextDecoder().decode(plan?.bytes);
}

const planText = await planOf();
const review: Review = {
  reviewer: 'R. Vane',
  date: '2031-04-02',
  checked: [2, 1],
  remarks: [{ stage: 1, at: [40, 30], text: 'Land beside the sump looks thin for the knife.' }],
  planText,
};

describe('the record of a review', () => {
  it('is read back as it was written, and names the plan by the SHA-256 that others calculate, too', () => {
    const text = reviewText(review);
    const named = createHash('sha256').update(planText).digest('hex');
    expect(sha256Of(planText)).toBe(named);
    expect(JSON.parse(text).plan.sha256).toBe(named);
    expect(readReview(text, 'cover.review.json')).toEqual({
      review: { ...review, checked: [1, 2] },
      findings: [],
    });
  });

  it('review-plan-altered: a figure of the plan inside changed after it was saved', () => {
    const file = JSON.parse(reviewText(review));
    file.plan.file.stages[0].minutes += 1;
    const { review: read, findings } = readReview(JSON.stringify(file), 'cover.review.json');
    expect(read).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(['review-plan-altered']);
  });

  it('says with its path what is wrong in a file written by hand', () => {
    const file = { ...JSON.parse(reviewText(review)), reviewer: '', signed: true };
    const { findings } = readReview(JSON.stringify(file), 'cover.review.json');
    expect(findings.map(({ code, place }) => [code, place.path]).sort()).toEqual([
      ['job-key-unknown', 'signed'],
      ['job-value-wrong', 'reviewer'],
    ]);
  });

  it('refuses what is no review at all: a job, a text, a list', () => {
    for (const text of ['{"format":"isobath-job","version":1}', 'checked', '[]', '{']) {
      expect(readReview(text, 'x.review.json').findings).toHaveLength(1);
    }
  });
});

describe('a plan that changed after it was reviewed', () => {
  it('is the same plan while nothing changed', async () => {
    expect(changesSince(planText, await planOf())).toEqual({ said: [], findings: [] });
  });

  it('reports that one region is asked another depth, and what follows for stages and lines', async () => {
    const now = await planOf((job) => {
      const [first] = job['requirements'] as { depth: number }[];
      if (first !== undefined) first.depth += 0.1;
    });
    const { said } = changesSince(planText, now);
    expect(said.some((sentence) => /^Regions? .*required/.test(sentence))).toBe(true);
    expect(said.some((sentence) => /^Stages: /.test(sentence))).toBe(true);
    expect(said.some((sentence) => /^Lines of stage/.test(sentence))).toBe(true);
  });

  it('keeps the lines that a stage had and has no more: those of the pocket made deeper, in the stages that it crosses', async () => {
    const now = await planOf((job) => {
      const asked = job['requirements'] as { layer: string; depth: number }[];
      job['requirements'] = asked.map((each) =>
        each.layer === 'SUMPS' ? { layer: 'SUMPS', depth: 2.9 } : each,
      );
    });
    const before = linesBefore(planText, now);
    const lines = (text: string) => (JSON.parse(text) as PlanFile).stages.map((stage) => stage.lines);
    expect([...before.keys()]).toEqual([1, 2, 3]);
    expect(before.get(1)).toEqual(lines(planText)[0]);
    expect(before.get(1)).not.toEqual(lines(now)[0]);
    expect(before.get(3)).toEqual([]);
    expect([...linesBefore(planText, planText).values()].flat()).toEqual([]);
  });

  it('plan-file-unusable: what is no plan is compared with nothing, and the reason is given', () => {
    const file = JSON.parse(planText);
    file.stages[0].minutes = 'long';
    const { said, findings } = changesSince(JSON.stringify(file), planText);
    expect(said).toEqual([]);
    expect(findings.map(({ code, facts }) => [code, facts])).toEqual([
      ['plan-file-unusable', { path: 'stages[0].minutes', expected: 'a number' }],
    ]);
    expect(linesBefore(JSON.stringify(file), planText)).toEqual(new Map());
  });

  it('reports a plan whose bath alone is another', async () => {
    const now = await planOf((job) => {
      job['process'] = { ...(job['process'] as object), rate: 0.031 };
    });
    expect(changesSince(planText, now).said.some((sentence) => sentence.includes('min'))).toBe(true);
  });
});
