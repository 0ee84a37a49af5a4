import { defineConfig } from '@playwright/test';
import { findBrowser } from '#support/browser/browser.ts';

/** Browser tests: the app as built, served as `npm start` serves it, in a real Chromium with WebGL. */
const PORT = Number(process.env['PORT'] ?? 4187);
const browser = findBrowser();

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: 2,
  forbidOnly: Boolean(process.env['CI']),
  // Only what hangs takes so long, however busy the machine.
  timeout: 180_000,
  expect: { timeout: Number(process.env['EXPECT_MS'] ?? 60_000) },
  reporter: [['list'], ['json', { outputFile: '.reports/browser.json' }]],
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    browserName: 'chromium',
    viewport: { width: 1280, height: 720 },
    headless: true,
    // Only the test of use without the network needs the page kept.
    serviceWorkers: 'block',
    launchOptions: {
      executablePath: browser.executablePath,
      env: { ...(process.env as Record<string, string>), ...browser.env },
    },
  },
  webServer: {
    command: `npx vite preview --host 127.0.0.1 --port ${PORT} --strictPort`,
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
    stdout: 'ignore',
  },
});
