/** `isobath depth JOB.json --points FILE.csv`: depth, target, thickness and stage at the points of a list, as CSV in millimetres. */
import { resolve } from 'node:path';
import { type CommandEnd, refused } from '#cli/command-end.ts';
import { etchJob } from '#cli/etch-job.ts';
import { columnsOf, farColumns } from '#cli/far-columns.ts';
import { giveRows } from '#cli/give-rows.ts';
import { decodeText, readInput } from '#cli/read-input.ts';
import { readMinutes } from '#cli/read-number.ts';
import { readPoints } from '#cli/read-points.ts';
import type { Terminal } from '#cli/terminal.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { depthsOf, type PlaceDepth } from '#run/depth-job.ts';
import { MOST_POINTS_BYTES } from '#run/run-limits.ts';

export interface DepthArguments {
  readonly job: string;
  /** Path of the list. */
  readonly points: string;
  readonly minutes?: string | undefined;
  readonly out?: string | undefined;
  readonly json: boolean;
}

const COLUMNS = ['x', 'y', 'depth', 'target', 'thickness', 'stage'];

export async function depthCommand(asked: DepthArguments, terminal: Terminal): Promise<CommandEnd> {
  const minutes = readMinutes(asked.minutes);
  const list = readList(asked.points);
  if ('refused' in minutes) return refused(minutes.refused, ...('refused' in list ? list.refused : []));
  if ('refused' in list) return refused(...list.refused);
  const etched = await etchJob(asked.job, terminal);
  if ('refused' in etched) return refused(...etched.refused);
  const { part, findings, unit, paths, origin } = etched;
  const local = depthsOf(part, {
    points: list.points.map((figure, n) => figure * unit - (n % 2 === 0 ? origin.x : origin.y)),
    minute: minutes.value,
  });
  const places = local.map((place) => ({ ...place, x: place.x + origin.x, y: place.y + origin.y }));
  const rows = places.map(({ far, ...place }) => ({ ...place, ...farColumns(far) }));
  const { out, json } = asked;
  const inputs = [...paths, resolve(asked.points)];
  return giveRows(
    {
      columns: columnsOf(COLUMNS, part),
      rows,
      findings: [...findings, ...besideSheet(places)],
      inputs,
      out,
      json,
    },
    terminal,
  );
}

function readList(
  file: string,
): { readonly points: Float64Array } | { readonly refused: readonly Finding[] } {
  const read = readInput(file, { path: resolve(file), most: MOST_POINTS_BYTES });
  if ('refused' in read) return { refused: [read.refused] };
  const decoded = decodeText(file, read.bytes);
  if ('refused' in decoded) return { refused: [decoded.refused] };
  return readPoints(file, decoded.text);
}

function besideSheet(places: readonly PlaceDepth[]): Finding[] {
  const beside = places.filter(({ target }) => target === undefined);
  const [first] = beside;
  if (first === undefined) return [];
  const facts = { outside: beside.length, points: places.length };
  return [finding('points-outside-sheet', facts, { at: { x: first.x, y: first.y } })];
}
