/** What the run does to the bath: metal dissolved against the bath's limit (M5.8), and what is not calculated, said plainly. */
import { bathLoad } from '#bath/bath-load.ts';
import { warming } from '#bath/bath-sheet.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Job } from '#job/job.ts';

/** `removedVolume` in mm³. Findings: `bath-overloaded`, `bath-sheet-missing`. */
export function checkBath(
  { process, stock }: Pick<Job, 'process' | 'stock'>,
  removedVolume: number,
): Finding[] {
  const { density } = stock;
  const findings: Finding[] = [];
  if (process.bath !== undefined && (process.reaction === undefined || density === undefined)) {
    const lacks = process.reaction === undefined ? 'reaction' : 'density';
    findings.push(finding('bath-sheet-missing', { bath: process.bath, lacks }, { path: 'process.bath' }));
  }
  if (process.tank === undefined || density === undefined) return findings;
  const parts = process.load ?? 1;
  const metal = (parts * removedVolume * density) / 1000;
  if (process.reaction !== undefined) {
    const { warmer = 0, faster = 0 } = warming(metal, process.tank);
    if (faster > process.rateSpread) {
      const facts = { parts, warmer, faster, spread: process.rateSpread };
      findings.push(finding('bath-warms', facts, { path: 'process.tank' }));
    }
  }
  const load = bathLoad(process.tank, metal);
  if (load.after > load.limit) {
    const room = Math.max(0, load.limit - load.before) * process.tank.litres;
    const grams = (load.after - load.before) * process.tank.litres;
    findings.push(finding('bath-overloaded', { ...load, room, grams }, { path: 'process.tank' }));
  }
  return findings;
}
