/** Every file can be looked at before it is saved, from its own bytes. */
import AxeBuilder from '@axe-core/playwright';
import { expect, openPanel, openSample, statusOf, test } from '#support/browser/workbench-page.ts';

test('the scribe drawing reads back in the stages’ colours; chosen files come, show, and can be saved', async ({
  workbench,
  page,
}) => {
  await workbench.setViewportSize({ width: 1920, height: 1080 });
  await openPanel(workbench, 'Hand-off');
  const handoff = workbench.getByRole('region', { name: 'Files to hand off' });
  await handoff.getByRole('button', { name: /^scribe\.dxf/ }).click();
  const drawing = handoff.getByRole('img', { name: /scribe\.dxf as it reads back/ });
  await expect(drawing).toHaveAttribute('aria-label', /SCRIBE-01.*SCRIBE-03/);
  await workbench.screenshot({ path: 'test-results/preview-dxf.png' });
  await handoff.getByLabel('solid with colours (GLB)').check();
  await handoff.getByLabel('machine program').check();
  await expect(statusOf(workbench)).toContainText('planned in');
  await handoff.getByRole('button', { name: /^scribe\.nc/ }).click();
  await expect(handoff.getByLabel('First lines of scribe.nc')).toContainText('G21');
  await handoff.getByRole('button', { name: /^etched-part\.glb/ }).click();
  await expect(handoff.getByRole('img', { name: /etched-part\.glb/ })).toBeVisible();
  await workbench.waitForTimeout(1500);
  await workbench.screenshot({ path: 'test-results/preview-glb.png' });
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  const saved = workbench.waitForEvent('download');
  await handoff.getByRole('button', { name: 'save etched-part.glb' }).click();
  expect((await saved).suggestedFilename()).toBe('etched-part.glb');
});

test('section pictures, templates and the solid of another sample show from their own bytes', async ({
  workbench,
}) => {
  await workbench.setViewportSize({ width: 1920, height: 1080 });
  await openSample(workbench, 'Survey glider, tapered lower skin');
  await expect(statusOf(workbench)).toContainText('12 stages');
  await openPanel(workbench, 'Hand-off');
  const handoff = workbench.getByRole('region', { name: 'Files to hand off' });
  for (const choice of ['pictures of sections (SVG)', 'scribe template', 'solid with colours (GLB)'])
    await handoff.getByLabel(choice).check();
  await expect(statusOf(workbench)).toContainText('planned in');
  const look = (name: string) => handoff.getByRole('button', { name: new RegExp(`^${name}`) });
  await look('section-01.svg').click();
  const picture = handoff.getByRole('img', { name: /section-01\.svg: section/ });
  await expect(picture).toBeVisible();
  // A picture that could not be drawn would have no size of its own.
  await expect
    .poll(() => picture.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(100);
  await workbench.screenshot({ path: 'test-results/preview-section.png' });
  await look('template-01.dxf').click();
  const template = handoff.getByRole('img', { name: /template-01\.dxf as it reads back/ });
  await expect(template).toHaveAttribute('aria-label', /SHEET/);
  await expect(template).toHaveAttribute('aria-label', /SLOT-01/);
  await workbench.screenshot({ path: 'test-results/preview-template.png' });
  await look('etched-part.glb').click();
  await expect(handoff.getByRole('img', { name: /etched-part\.glb/ })).toBeVisible();
  await workbench.waitForTimeout(1500);
  await workbench.screenshot({ path: 'test-results/preview-glb-tapered.png' });
});
