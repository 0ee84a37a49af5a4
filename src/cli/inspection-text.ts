/** What a drawing holds, as text for the terminal. */
import type { DepthNoteSeen, Inspection, RegionSeen } from '#run/inspect-drawing.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import { paint } from './paint.ts';
import { printable } from './printable.ts';

type Seen = Omit<Inspection, 'findings'>;

/** Longer lists are cut: the whole one comes with --json. */
const MOST_ROWS = 40;

export function inspectionText(seen: Seen, color: boolean): string {
  const heading = (text: string): string => paint(text, 'bold', color);
  const lines = [`${heading('unit')}  ${seen.unit ?? 'not given'}`, '', heading('layers')];
  for (const { name, shown, counts } of seen.layers) {
    const entities = Object.entries(counts).map(([kind, count]) => `${count} ${kind}`);
    const what = entities.length === 0 ? 'empty' : entities.join(', ');
    lines.push(`  ${printable(name)}${shown ? '' : ' (off or frozen)'}: ${what}`);
  }
  if (seen.passedOver.length > 0) lines.push('', heading('skipped'));
  for (const { kind, layer, count, why } of seen.passedOver)
    lines.push(`  ${count} ${kind} on ${printable(layer)}: ${why}`);
  if (seen.suggestedIgnore.length > 0)
    lines.push('', heading('layers that may not draw the part, left out below'));
  for (const { layer, why } of seen.suggestedIgnore) lines.push(`  ${printable(layer)}: ${why}`);
  if (seen.regions === null || seen.depthNotes === null) {
    lines.push('', `${heading('regions')}  not computed`);
    return `${lines.join('\n')}\n`;
  }
  lines.push('', heading(`closed outlines  ${seen.closedOutlines.length}`));
  lines.push(...byLayer(seen.closedOutlines.map(({ layer }) => layer)));
  lines.push('', heading(`regions  ${seen.regions.length}`));
  lines.push(...regionLines(seen.regions, seen.unit));
  const unit = seen.unit === 'in' ? 'in' : 'mm';
  if (seen.depthNotes.length > 0) lines.push('', heading(`depth notes  ${seen.depthNotes.length}`));
  lines.push(...seen.depthNotes.slice(0, MOST_ROWS).map((note) => depthNoteLine(note, unit)));
  if (seen.depthNotes.length > MOST_ROWS) {
    lines.push(`  and ${seen.depthNotes.length - MOST_ROWS} more: --json lists all`);
  }
  const unread = seen.unreadNotes ?? [];
  if (unread.length > 0) lines.push('', heading(`not read as depths  ${unread.length}`));
  for (const { region, text } of unread.slice(0, MOST_ROWS)) lines.push(`  ${region}  "${printable(text)}"`);
  if (unread.length > MOST_ROWS) lines.push(`  and ${unread.length - MOST_ROWS} more: --json lists all`);
  return `${lines.join('\n')}\n`;
}

/** mm² */
const SQUARE_INCH = millimetresIn('in') * millimetresIn('in');

function regionLines(regions: readonly RegionSeen[], unit: string | null): string[] {
  const lines: string[] = [];
  for (const { id, layer, area, at: point, holes } of regions.slice(0, MOST_ROWS)) {
    const at = point.map((each) => each.toFixed(unit === 'mm' ? 2 : 4)).join(', ');
    const islands = holes === 0 ? '' : `, ${holes} inside`;
    const size = unit === 'in' ? `${(area / SQUARE_INCH).toFixed(4)} in²` : `${area.toFixed(2)} mm²`;
    lines.push(`  ${id}  ${size}  at ${at} ${unit ?? ''}  ${printable(layer)}${islands}`.trimEnd());
  }
  if (regions.length > MOST_ROWS) lines.push(`  and ${regions.length - MOST_ROWS} more: --json lists all`);
  return lines;
}

function depthNoteLine(note: DepthNoteSeen, unit: ShownUnit): string {
  const { region, asks, length, plus, minus, text, disputed } = note;
  // Held against the text, so without zeros that it does not have.
  const figure = (each: number): number => Number(gaugedFigure(each, unit));
  const tolerance = plus === null || minus === null ? '' : ` +${figure(plus)} -${figure(minus)}`;
  const doubt = disputed ? ', another note there differs' : '';
  return `  ${region}  ${asks} ${figure(length)}${tolerance} ${unit}  from "${printable(text)}"${doubt}`;
}

function byLayer(layers: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const layer of layers) counts.set(layer, (counts.get(layer) ?? 0) + 1);
  return [...counts].map(([layer, count]) => `  ${count} on ${printable(layer)}`);
}
