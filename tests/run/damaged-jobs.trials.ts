/**
 * Sample jobs with all files of the hand-off, damaged at random, each run to its end: none takes more than five seconds of
 * processor time or a gigabyte, none throws, and none ends without a plan and without a finding.
 * `npm run trials -- damaged-jobs --cases 3000`.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, test } from 'vitest';
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { damagedJob } from '#support/jobs/damaged-job.ts';
import { expectTrials, type TrialFailure, trialPlan } from '#support/seeds/trials.ts';

const MOST_SECONDS = 5;
const MOST_MEGABYTES = 1000;
/** What has not answered by then hangs, however busy the machine. */
const LONGEST_WAIT_MS = 240_000;

const SAMPLES = ['gauge-pod-cover', 'hatch-from-supplier', 'glider-wing-skin-tapered', 'shutter-bay-grid'];

/** A job that takes rate and etch factor from coupons: what is damaged of it is mostly these. */
const COUPONS = [
  { before: 3.21, after: 2.93, minutes: 5, faces: 2, opening: { before: 10, after: 10.28, depth: 0.14 } },
  { before: 3.2, after: 2.915, minutes: 5, faces: 2, gauge: 0.004 },
];

const RUNNER = `
process.on('message', async ({ module, jobText, drawing }) => {
  const { runJob } = await import(module);
  const before = process.cpuUsage();
  let end;
  try {
    const { findings, planFile } = await runJob({
      jobText, drawingName: 'drawing.dxf', drawingBytes: Uint8Array.from(Buffer.from(drawing, 'base64')),
    });
    end = { findings: findings.length, hasPlan: planFile !== undefined };
  } catch (fault) {
    end = { thrown: String(fault?.stack ?? fault).slice(0, 600) };
  }
  const { user, system } = process.cpuUsage(before);
  process.send({ ...end, seconds: (user + system) / 1e6, megabytes: process.memoryUsage().rss / 1e6 });
});
`;

interface RunEnd {
  readonly findings?: number;
  readonly hasPlan?: boolean;
  readonly thrown?: string;
  readonly seconds: number;
  readonly megabytes: number;
}

let home = '';
let runner: ChildProcess | undefined;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'isobath-damaged-'));
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    build: {
      ssr: 'src/run/run-job.ts',
      outDir: home,
      rolldownOptions: { output: { entryFileNames: 'run-job.mjs' } },
    },
    ssr: { noExternal: true },
  });
  writeFileSync(join(home, 'runner.mjs'), RUNNER);
});
afterAll(() => {
  runner?.kill('SIGKILL');
  rmSync(home, { recursive: true });
});

/** Undefined: it did not answer, or its process ended. */
function runIn(message: object): Promise<RunEnd | undefined> {
  const process_ = runner ?? fork(join(home, 'runner.mjs'), { stdio: 'ignore' });
  runner = process_;
  return new Promise((resolve) => {
    const settle = (end: RunEnd | undefined) => {
      clearTimeout(late);
      process_.removeAllListeners();
      if (end === undefined || end.megabytes > MOST_MEGABYTES) {
        process_.kill('SIGKILL');
        runner = undefined;
      }
      resolve(end);
    };
    const late = setTimeout(() => settle(undefined), LONGEST_WAIT_MS);
    process_.once('message', (end: RunEnd) => settle(end));
    process_.once('exit', () => settle(undefined));
    process_.send(message);
  });
}

function faultsOf(end: RunEnd | undefined): string[] {
  if (end === undefined) return ['no end: it hangs, or its process ran out of memory'];
  return [
    ...(end.thrown === undefined ? [] : [`throws ${end.thrown}`]),
    ...(end.seconds > MOST_SECONDS ? [`takes ${end.seconds.toFixed(1)} s of processor time`] : []),
    ...(end.megabytes > MOST_MEGABYTES ? [`takes ${end.megabytes.toFixed(0)} MB`] : []),
    ...(end.hasPlan === false && end.findings === 0 ? ['has neither plan nor finding'] : []),
  ];
}

test('damaged jobs end within bounds, with a plan or a finding', async () => {
  const samples = SAMPLES.map((name): { readonly drawing: string; readonly job: object } => {
    const job = JSON.parse(readFileSync(`samples/${name}.job.json`, 'utf8')) as { drawing: string };
    const drawing = readFileSync(`samples/${job.drawing}`).toString('base64');
    return { drawing, job: { ...job, handoff: { files: HANDOFF_FILES, paper: 'a3' } } };
  });
  const plain = samples[0];
  if (plain !== undefined) samples.push({ ...plain, job: { ...plain.job, process: { coupon: COUPONS } } });
  let longest = 0;
  await expectTrials('damaged-jobs', trialPlan({ cases: 100 }), async (seed, index) => {
    const sample = samples[index % samples.length];
    if (sample === undefined) return [];
    const jobText = damagedJob(sample.job, seed, index);
    const end = await runIn({ module: join(home, 'run-job.mjs'), jobText, drawing: sample.drawing });
    longest = Math.max(longest, end?.seconds ?? 0);
    return faultsOf(end).map((what): TrialFailure => ({ what: `${what}\n${jobText.slice(0, 3000)}` }));
  });
  console.log(`the longest took ${longest.toFixed(2)} s of processor time`);
});
