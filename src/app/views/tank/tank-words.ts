/** Minutes and times as the tank page writes them. */
import { twoDigits } from '#units/two-digits.ts';

/** 8:42; a minute of sixty seconds. */
export function clockText(minutes: number): string {
  const seconds = Math.max(0, Math.round(minutes * 60));
  return `${Math.floor(seconds / 60)}:${twoDigits(seconds % 60)}`;
}

/** 14:06, of the clock on the wall. */
export function timeText(time: number): string {
  const at = new Date(time);
  return `${twoDigits(at.getHours())}:${twoDigits(at.getMinutes())}`;
}

/** 2026-03-09 14:06, as records have it. */
export function stampText(time: number): string {
  const at = new Date(time);
  return `${at.getFullYear()}-${twoDigits(at.getMonth() + 1)}-${twoDigits(at.getDate())} ${timeText(time)}`;
}

/** R08, R09 and R15; the first and the last of many. */
export function listWords(ids: readonly string[], most = 12): string {
  if (ids.length > most) return `${ids[0]} to ${ids.at(-1)} (${ids.length})`;
  if (ids.length < 2) return ids.join('');
  return `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
}

/** A figure as it is typed, with a point or a comma; undefined where it is none. */
export function figureOf(text: string): number | undefined {
  const words = text.trim().replace(',', '.');
  const value = Number(words);
  return words !== '' && /^\d*\.?\d*$/.test(words) && Number.isFinite(value) ? value : undefined;
}
