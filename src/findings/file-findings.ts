/** Findings about the command given, the files on disk that it names, and the folder that it writes to. */
import { note, stop } from './words.ts';

export const fileWords = {
  'command-unclear': stop<{ detail: string }>({
    title: 'Command not understood',
    say: ({ detail }) => ({
      reason: `The command was not understood: ${detail}.`,
      remedy: 'Ask for its options with --help.',
    }),
  }),
  'file-missing': stop<{ file: string }>({
    title: 'File not found',
    say: ({ file }) => ({
      reason: `There is no file ${file}.`,
      remedy:
        'Check the path; what a job names is looked for from the folder of its job file. On the workbench, drop it beside the job.',
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
      reason: `${file} can't be read: ${detail}.`,
      remedy: 'Check its permissions, and that no other program holds it.',
    }),
  }),
  'file-empty': stop<{ file: string }>({
    title: 'File is empty',
    say: ({ file }) => ({
      reason: `${file} is empty (0 bytes).`,
      remedy: 'Ask for the file again: it was probably cut off on its way.',
    }),
  }),
  'file-too-large': stop<{ file: string; bytes: number; most: number }>({
    title: 'File too large',
    say: ({ file, bytes, most }) => ({
      reason: `${file} has ${megabytes(bytes)} MB; files up to ${megabytes(most)} MB are read.`,
      remedy: 'Save only the part to be milled, as outlines, without hatches, pictures and other sheets.',
      value: bytes,
      limit: most,
    }),
  }),
  'file-not-utf-8': stop<{ file: string; byte: number }>({
    title: 'File is not UTF-8 text',
    say: ({ file, byte }) => ({
      reason: `${file} is not UTF-8 text: byte ${byte} fits no character.`,
      remedy: 'Save it as UTF-8.',
    }),
  }),
  'out-not-a-folder': stop<{ path: string }>({
    title: 'Output is not a folder',
    say: ({ path }) => ({
      reason: `${path} is there already and is not a folder.`,
      remedy: 'Name a folder, new or old, with --out.',
    }),
  }),
  'out-not-writable': stop<{ path: string; detail: string }>({
    title: 'Output cannot be written',
    say: ({ path, detail }) => ({
      reason: `Nothing could be written to ${path}: ${detail}.`,
      remedy:
        'The files there are as they were. Check the permissions, the space left and which program holds them, or name another folder with --out.',
    }),
  }),
  'out-in-use': stop<{ path: string }>({
    title: 'Another run writes to this folder',
    say: ({ path }) => ({
      reason: `Another run is writing to ${path} at this moment; nothing was written by this one.`,
      remedy: 'Run again when it has ended, or name another folder with --out.',
    }),
  }),
  'out-put-back': note<{ path: string }>({
    title: 'An earlier run had stopped half-way',
    say: ({ path }) => ({
      reason: `A run was ended while it replaced the files in ${path}; those before it were put back, then replaced by this run.`,
      remedy: 'Nothing to do; files taken from the folder between the two runs may have been incomplete.',
    }),
  }),
  'out-left-aside': stop<{ path: string; aside: string; detail: string }>({
    title: 'Earlier files are left aside',
    say: ({ path, aside, detail }) => ({
      reason: `The files in ${path} could be neither replaced nor put back: ${detail}. Some of the earlier ones lie in ${aside}.`,
      remedy: 'Close the programs that hold them and run again: the earlier files are put back first.',
    }),
  }),
  'out-already-there': stop<{ file: string }>({
    title: 'File already there',
    say: ({ file }) => ({
      reason: `${file} is there already, and a job is never written over.`,
      remedy: 'Give another name with --out, or move it away first.',
    }),
  }),
  'out-over-input': stop<{ file: string }>({
    title: 'Output would overwrite an input',
    say: ({ file }) => ({
      reason: `${file} was read for this job and would be written over.`,
      remedy: 'Name another folder with --out: what goes in is never changed.',
    }),
  }),
};

function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(bytes < 1e7 ? 2 : 0);
}
