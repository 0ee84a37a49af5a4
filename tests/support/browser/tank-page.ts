/** The tank page in a browser, as tests work at it: from planning to the tank, to the gauge, and readings by keypad. */
import type { Locator, Page } from '@playwright/test';
import { expect } from '#support/browser/workbench-page.ts';

const TABLET = { width: 834, height: 1112 };

export async function goToTank(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'at the tank' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'At the tank' })).toBeVisible();
  await page.setViewportSize(TABLET);
}

export function readingOf(page: Page): Locator {
  return page.getByRole('region', { name: 'A reading' });
}

/** Goes to the gauge of the stage on show, without the clock: so many minutes were had. */
export async function goToGauge(
  page: Page,
  minutes: string,
  kind: 'depth' | 'thickness' = 'depth',
): Promise<void> {
  await page.getByRole('button', { name: 'Out and gauge' }).click();
  await page.getByRole('combobox', { name: 'Gauged' }).selectOption(kind);
  await page.getByLabel('Minutes in the bath').fill(minutes);
}

export async function pressKeys(page: Page, figure: string): Promise<void> {
  const keypad = page.getByRole('group', { name: 'Keypad' });
  for (const key of figure) {
    await keypad.getByRole('button', { name: key === '.' ? 'Decimal point' : key, exact: true }).click();
  }
}

export async function record(page: Page, figure: string): Promise<void> {
  await pressKeys(page, figure);
  await page.getByRole('button', { name: 'Record the reading' }).click();
}
