/** Findings about the command given, the files on disk that it names, and the folder that it writes to. */
import { note, stop } from './words.ts';

export const fileWords = {
  'command-unclear': stop<{ detail: string }>({
    title: 'Command not understood',
    say: ({ detail }) => ({
      reason: [`The command was not understood:`, `${detail}.`],
      remedy: 'Show the options with --help.',
    }),
  }),
  'file-missing': stop<{ file: string }>({
    title: 'File not found',
    say: ({ file }) => ({
      reason: `There is no file ${file}.`,
      remedy:
        'Check the path; files named in a job are relative to the folder of the job file. In the workbench, drop the file on the page.',
    }),
  }),
  'file-not-regular': stop<{ file: string }>({
    title: 'Not a file',
    say: ({ file }) => ({
      reason: `${file} is a folder or a device, not a file.`,
      remedy: 'Name the file itself.',
    }),
  }),
  'file-unreadable': stop<{ file: string; detail: string }>({
    title: 'File cannot be read',
    say: ({ file, detail }) => ({
      reason: [`${file} can't be read:`, `${detail}.`],
      remedy: 'Check its permissions, and that no other program has it open.',
    }),
  }),
  'file-empty': stop<{ file: string }>({
    title: 'File is empty',
    say: ({ file }) => ({
      reason: `${file} is empty (0 bytes).`,
      remedy: 'Copy or request the file again: the transfer was probably interrupted.',
    }),
  }),
  'file-too-large': stop<{ file: string; bytes: number; most: number }>({
    title: 'File too large',
    say: ({ file, bytes, most }) => ({
      reason: `${file} is ${megabytes(bytes)} MB; the limit is ${megabytes(most)} MB.`,
      remedy: 'Save only the part to be milled, as outlines, without hatches, pictures and other sheets.',
      value: bytes,
      limit: most,
    }),
  }),
  'file-not-utf-8': stop<{ file: string; byte: number }>({
    title: 'File is not UTF-8 text',
    say: ({ file, byte }) => ({
      reason: [`${file} is not UTF-8 text:`, `byte ${byte} is not part of a valid character.`],
      remedy: 'Save it as UTF-8.',
    }),
  }),
  'out-not-a-folder': stop<{ path: string }>({
    title: 'Output is not a folder',
    say: ({ path }) => ({
      reason: `${path} already exists and is not a folder.`,
      remedy: 'Name a new or existing folder with --out.',
    }),
  }),
  'out-not-writable': stop<{ path: string; detail: string }>({
    title: 'Output cannot be written',
    say: ({ path, detail }) => ({
      reason: [`Nothing could be written to ${path}:`, `${detail}.`],
      remedy:
        'The files there are unchanged. Check permissions, free space and whether another program has them open, or name another folder with --out.',
    }),
  }),
  'out-in-use': stop<{ path: string }>({
    title: 'Another run writes to this folder',
    say: ({ path }) => ({
      reason: `Another run is writing to ${path}; this run wrote nothing.`,
      remedy: 'Run again when it has ended, or name another folder with --out.',
    }),
  }),
  'out-put-back': note<{ path: string }>({
    title: 'An earlier run was interrupted',
    say: ({ path }) => ({
      reason: `A run was interrupted while it replaced the files in ${path}; the files from before it were restored, then replaced by this run.`,
      remedy:
        'No action is needed; a set of files copied from the folder between the two runs may be incomplete.',
    }),
  }),
  'out-left-aside': stop<{ path: string; aside: string; detail: string }>({
    title: 'Earlier files not restored',
    say: ({ path, aside, detail }) => ({
      reason: [
        `The files in ${path} could be neither replaced nor restored:`,
        `${detail}. Some of the earlier ones are in ${aside}.`,
      ],
      remedy: 'Close the programs that have them open and run again: the earlier files are restored first.',
    }),
  }),
  'out-already-there': stop<{ file: string }>({
    title: 'File already exists',
    say: ({ file }) => ({
      reason: `${file} already exists, and a job is never overwritten.`,
      remedy: 'Give another name with --out, or move it away first.',
    }),
  }),
  'out-over-input': stop<{ file: string }>({
    title: 'Output would overwrite an input',
    say: ({ file }) => ({
      reason: `${file} was read for this job and would be overwritten.`,
      remedy: 'Name another folder with --out: input files are never changed.',
    }),
  }),
};

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(bytes < 1e7 ? 2 : 0);
}
