/** What `npm start` serves: pages under a policy that runs no code but their own, and nothing at addresses that are no pages. */
import { expect, test } from '#support/browser/workbench-page.ts';

test('an unknown address is not found', async ({ request }) => {
  for (const address of ['./nowhere', './assets/nowhere.js', './helper', './src/app/index.html']) {
    expect((await request.get(address)).status(), address).toBe(404);
  }
  for (const address of ['./', './index.html', './help.html', './gauge-pod-cover.dxf']) {
    expect((await request.get(address)).status(), address).toBe(200);
  }
});

for (const page of ['./', './help.html']) {
  test(`${page} has no inline script, and a policy that would run none`, async ({ request }) => {
    const text = await (await request.get(page)).text();
    for (const script of text.match(/<script[\s\S]*?<\/script>/g) ?? []) {
      expect(script).toMatch(/^<script type="module" [^>]*src="\.\/assets\/[^"]+"><\/script>$/);
    }
    expect(text).not.toMatch(/ on[a-z]+=|<style|javascript:/);
    const policy =
      /Content-Security-Policy" content="([^"]*)"/.exec(text)?.[1]?.replaceAll('&#39;', "'") ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self';");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });
}

test('a script that somebody puts into the page does not run', async ({ page }) => {
  await page.goto('./help.html');
  const ran = await page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
          resolve(`refused by ${effectiveDirective}`),
        );
        const script = document.createElement('script');
        script.textContent = 'document.title = "taken over"';
        document.body.append(script);
        if (document.title === 'taken over') resolve('ran');
      }),
  );
  expect(ran).toBe('refused by script-src-elem');
});
