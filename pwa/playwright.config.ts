import { defineConfig } from "@playwright/test";

export default defineConfig({
  testDir: "e2e",
  testMatch: "*.e2e.ts",
  timeout: 180_000,
  // One walks over every screen, which takes longest and so begins first, while the other does the rest.
  workers: 2,
  projects: [
    { name: "screens", testMatch: "screens.e2e.ts" },
    { name: "the rest", testIgnore: "screens.e2e.ts" },
  ],
  fullyParallel: false,
  forbidOnly: true,
  // A shared, loaded machine may stall a browser; what needed a second try is listed as flaky.
  retries: process.env.CI ? 1 : 0,
  reporter: [["list"]],
  use: {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    deviceScaleFactor: 2,
    actionTimeout: 20_000,
    trace: "off",
    launchOptions: {
      executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
});
