/**
 * The command line from its arguments to an exit code. Everything that can go wrong ends in one line a finding on the error
 * stream, never in a stack trace. A command's code is loaded when that command is given.
 */
import { Command, CommanderError, InvalidArgumentError } from 'commander';
import { type Finding, finding } from '#findings/finding.ts';
import { findingRecord } from '#findings/finding-record.ts';
import type { CommandEnd, ExitCode } from './command-end.ts';
import type { CompareArguments } from './commands/compare-command.ts';
import type { CorrectArguments } from './commands/correct-command.ts';
import type { DepthArguments } from './commands/depth-command.ts';
import type { InspectArguments } from './commands/inspect-command.ts';
import type { NewArguments } from './commands/new-command.ts';
import type { OpenArguments } from './commands/open-command.ts';
import type { PlanArguments } from './commands/plan-command.ts';
import type { ReworkArguments } from './commands/rework-command.ts';
import type { SectionArguments } from './commands/section-command.ts';
import { printable } from './printable.ts';
import { showFindings } from './show-findings.ts';
import type { Terminal } from './terminal.ts';

export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let ended: CommandEnd = { exitCode: 0, findings: [] };
  const program = commandLine(terminal, (end) => {
    ended = end;
  });
  if (args.length === 0) {
    terminal.out(program.helpInformation());
    return 0;
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
  } catch (fault) {
    if (!(fault instanceof CommanderError)) return broken(fault, terminal);
    if (fault.exitCode === 0) return 0;
    ended = { exitCode: 2, findings: [commandUnclear(fault)] };
  }
  if (args.includes('--json')) terminal.out(jsonOf(ended));
  showFindings(ended.findings, terminal, ended.unit);
  return ended.exitCode;
}

function commandLine(terminal: Terminal, done: (end: CommandEnd) => void): Command {
  const program = new Command('isobath')
    .description('Plans step chemical milling: from a drawing of pockets to stages, scribe lines and times.')
    .exitOverride()
    // Faults are reported as findings; only help goes out as commander writes it.
    .configureOutput({ writeOut: terminal.out, writeErr: () => {}, outputError: () => {} })
    .showHelpAfterError(false)
    .helpCommand(false);
  program
    .command('inspect')
    .description('report what a drawing contains and its faults')
    .argument('<drawing>', 'DXF file')
    .option('--unit <unit>', 'unit of the drawing, overriding the file: mm, in, cm …')
    .option('--json', 'print everything as JSON', false)
    .option('--note-prefix <text>', 'prefix of depths written in regions', '')
    .action(async (drawing: string, options: Omit<InspectArguments, 'drawing'>) => {
      const { inspectCommand } = await import('./commands/inspect-command.ts');
      done(await inspectCommand({ drawing, ...options }, terminal));
    });
  program
    .command('new')
    .description('start a job from a drawing: unit, sheet, layers, depth notes')
    .argument('<drawing>', 'DXF file')
    .option('--out <file>', 'job file to write (default: beside the drawing, with its name)')
    .option('--unit <unit>', 'unit of the drawing, overriding the file: mm, in, cm …')
    .option('--notes <what>', 'meaning of figures written in regions: depth or thickness')
    .option('--note-prefix <text>', 'prefix of depths written in regions', '')
    .option('--thickness <thickness>', 'sheet thickness, in the unit of the job')
    .option('--alloy <id>', 'alloy by id')
    .option('--bath <id>', 'bath by id')
    .option('--json', 'print everything as JSON', false)
    .action(async (drawing: string, options: Omit<NewArguments, 'drawing'>) => {
      const { newCommand } = await import('./commands/new-command.ts');
      done(newCommand({ drawing, ...options }, terminal));
    });
  program
    .command('open')
    .description('open the workbench in the browser, with a job or a drawing')
    .argument('[file]', 'job file or DXF drawing')
    .option('--port <port>', 'the port to serve it on; any free one when left out', '0')
    .option('--no-browser', 'only print the address')
    .action(async (file: string | undefined, options: Omit<OpenArguments, 'file'>) => {
      const { openCommand } = await import('./commands/open-command.ts');
      done(await openCommand({ file, ...options }, terminal));
    });
  program
    .command('plan')
    .description('plan a job: stages, scribe lines, times')
    .argument('<job>', 'job file; file names in it are relative to its folder')
    .requiredOption('--out <folder>', 'folder for the plan and the hand-off files')
    .option('--since <plan>', 'plan.json of an earlier issue: report what changed since')
    .option(
      '--threads <count>',
      'threads to share the work among, 1 to 16 (default: a core each, 4 at most); the files are the same with any',
      threadCount,
    )
    .option('--json', 'print the findings as JSON', false)
    .action(async (job: string, options: Omit<PlanArguments, 'job'>) => {
      const { planCommand } = await import('./commands/plan-command.ts');
      done(await planCommand({ job, ...options }, terminal));
    });
  addAfterwards(program, terminal, done);
  addQuestions(program, terminal, done);
  return program;
}

function threadCount(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= 16) return count;
  throw new InvalidArgumentError('A whole number from 1 to 16 is needed.');
}

/** Commands about a run that goes on or is over. */
function addAfterwards(program: Command, terminal: Terminal, done: (end: CommandEnd) => void): void {
  program
    .command('correct')
    .description('during a run: actual rate, minutes left and expected depths, from readings')
    .argument('<plan>', 'plan.json; the record of the run is kept beside it')
    .requiredOption('--readings <file>', 'CSV file with the readings so far')
    .option('--json', 'print everything as JSON', false)
    .action(async (plan: string, options: Omit<CorrectArguments, 'plan'>) => {
      const { correctCommand } = await import('./commands/correct-command.ts');
      done(correctCommand({ plan, ...options }, terminal));
    });
  program
    .command('rework')
    .description(
      'after the run: extra dips for floors that came out thick, edges at another factor, leaks, scratches',
    )
    .argument('<plan>', 'plan.json')
    .option('--readings <file>', 'CSV file with the thickness of each floor as read')
    .option('--factor <factor>', 'undercut / depth as a coupon shows it now, lines being cut')
    .option('--leak <radius>', 'radius of a crater on land, mm')
    .option('--scratch <depth>', 'depth of a scratch before etching, mm')
    .option('--json', 'print everything as JSON', false)
    .action(async (plan: string, options: Omit<ReworkArguments, 'plan'>) => {
      const { reworkCommand } = await import('./commands/rework-command.ts');
      done(reworkCommand({ plan, ...options }, terminal));
    });
}

/** Commands that plan the job and ask its etched part something. */
function addQuestions(program: Command, terminal: Terminal, done: (end: CommandEnd) => void): void {
  program
    .command('compare')
    .description('the part that lines which came back would etch, against the plan')
    .argument('<job>', 'job file; its drawing is looked for from its folder')
    .option('--scribe <file>', 'DXF with scribe lines: what became of ours, or an older template’s')
    .option('--program <file>', 'machine program that cuts them')
    .option('--face <face>', 'near or far (default: as the file says, else near)')
    .option('--json', 'print findings and comparison as JSON', false)
    .action(async (job: string, options: Omit<CompareArguments, 'job'>) => {
      const { compareCommand } = await import('./commands/compare-command.ts');
      done(await compareCommand({ job, ...options }, terminal));
    });
  program
    .command('section')
    .description('the etched surface along a line, as CSV in millimetres')
    .argument('<job>', 'job file; file names in it are relative to its folder')
    .requiredOption('--from <x,y>', 'start of the line, in drawing coordinates')
    .requiredOption('--to <x,y>', 'end of the line')
    .option('--minutes <minutes>', 'immersed minutes (default: end of the run)')
    .option(
      '--samples <count>',
      'number of evenly spaced points (default: the points that the surface needs)',
    )
    .option('--out <file>', 'CSV file to write instead of standard output')
    .option('--json', 'print findings and rows as JSON', false)
    .action(async (job: string, options: Omit<SectionArguments, 'job'>) => {
      const { sectionCommand } = await import('./commands/section-command.ts');
      done(await sectionCommand({ job, ...options }, terminal));
    });
  program
    .command('depth')
    .description('depth, target, thickness and stage at points, as CSV in millimetres')
    .argument('<job>', 'job file; file names in it are relative to its folder')
    .requiredOption('--points <file>', 'CSV file with columns x and y, in drawing coordinates')
    .option('--minutes <minutes>', 'immersed minutes (default: end of the run)')
    .option('--out <file>', 'CSV file to write instead of standard output')
    .option('--json', 'print findings and rows as JSON', false)
    .action(async (job: string, options: Omit<DepthArguments, 'job'>) => {
      const { depthCommand } = await import('./commands/depth-command.ts');
      done(await depthCommand({ job, ...options }, terminal));
    });
}

/** Commander's words, made one line: "error: unknown option '--ouf'", then "(Did you mean --out?)". */
function commandUnclear(fault: CommanderError): Finding {
  const detail =
    fault.code === 'commander.help' ? 'no command was given' : fault.message.replace(/^error: /, '');
  return finding('command-unclear', { detail: detail.replace(/\s*\n\s*/g, ' ').replace(/\.$/, '') });
}

function jsonOf({ findings, record }: CommandEnd): string {
  return `${JSON.stringify({ findings: findings.map(findingRecord), ...record }, undefined, 2)}\n`;
}

/** A fault of Isobath's own: one line, so that it can be reported; there is nothing that the engineer could correct. */
function broken(fault: unknown, terminal: Terminal): ExitCode {
  const what = fault instanceof Error ? fault.message : String(fault);
  terminal.error(`isobath: internal error, nothing was written: ${printable(what)}\n`);
  return 2;
}
