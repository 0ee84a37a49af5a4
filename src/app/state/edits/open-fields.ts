/** What the engineer has not said yet of sheet and bath: a new job takes none of it over from the last one. */
import type { JobFile } from '#job/job-file.ts';

export function openFields({ stock, process }: JobFile): string[] {
  return [
    ...(stock.alloy === undefined ? ['alloy'] : []),
    ...(process.bath === undefined && process.rate === undefined && process.coupon === undefined
      ? ['bath']
      : []),
  ];
}
