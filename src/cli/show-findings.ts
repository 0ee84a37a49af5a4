/** Findings on the error stream, one a line: severity, code, reason, remedy, place. */
import { type Finding, sortFindings } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import type { Severity } from '#findings/severity.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { type Paint, paint } from './paint.ts';
import { printable } from './printable.ts';
import type { Terminal } from './terminal.ts';

const PAINT: Record<Severity, Paint> = { stop: 'red', warn: 'yellow', note: 'cyan' };

export function showFindings(findings: readonly Finding[], terminal: Terminal, unit: ShownUnit = 'mm'): void {
  for (const finding of sortFindings(findings))
    terminal.error(`${findingLine(finding, { color: terminal.errorColor, unit })}\n`);
}

export function findingLine(
  finding: Finding,
  { color = false, unit = 'mm' }: { readonly color?: boolean; readonly unit?: ShownUnit } = {},
): string {
  const { reason, remedy } = sayFinding(finding, unit);
  const where = placeText(finding, unit);
  const head = paint(`${finding.severity} ${finding.code}:`, PAINT[finding.severity], color);
  return `${head} ${printable(`${reason} ${remedy}${where === '' ? '' : ` [${where}]`}`)}`;
}

function placeText(
  { code, place: { at, path, file, line, regions, layer } }: Finding,
  unit: ShownUnit,
): string {
  const parts: string[] = [];
  if (path !== undefined && path !== '') parts.push(path);
  if (line !== undefined) parts.push(`${file ?? fileOf(code, path)} line ${line}`);
  if (layer !== undefined) parts.push(`layer ${layer}`);
  if (at !== undefined)
    parts.push(`at ${lengthFigure(at.x, unit, 1)}, ${lengthFigure(at.y, unit, 1)} ${unit}`);
  if (regions !== undefined && regions.length > 0) parts.push(regionsText(regions));
  return parts.join('; ');
}

/** Regions named on a line; plan.json has them all. */
const MOST_REGIONS = 8;

function regionsText(regions: readonly string[]): string {
  const more = regions.length - MOST_REGIONS;
  const named = regions.slice(0, MOST_REGIONS).join(' ');
  return more > 0 ? `${named} and ${more} more` : named;
}

/** Lines are the drawing's, unless the finding is about another file. */
function fileOf(code: Finding['code'], path: string | undefined): string {
  if (code.startsWith('points-')) return 'points';
  if (code.startsWith('reading') || code === 'sheet-not-gauged') return 'readings';
  return path !== undefined || code.startsWith('job-') ? 'job' : 'drawing';
}
