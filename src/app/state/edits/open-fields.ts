/** What the engineer has not set yet of sheet and bath: a new job inherits none of it from the last one. */
import type { JobFile } from '#job/job-file.ts';

export function openFields({ stock, process }: JobFile): string[] {
  return [
    ...(stock.alloy === undefined ? ['alloy'] : []),
    ...(process.bath === undefined && process.rate === undefined && process.coupon === undefined
      ? ['bath']
      : []),
  ];
}
