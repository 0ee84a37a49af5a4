/** The program `isobath`: nothing but the process around the command line. */
import { runCommandLine } from './run-command-line.ts';
import { processTerminal } from './terminal.ts';

process.exitCode = await runCommandLine(process.argv.slice(2), processTerminal());
