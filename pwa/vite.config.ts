import preact from "@preact/preset-vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [
    preact(),
    VitePWA({
      strategies: "generateSW",
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        id: "/",
        name: "Asfound",
        short_name: "Asfound",
        description: "Appraise used shop equipment before buying it, with no signal.",
        start_url: "/",
        scope: "/",
        display: "standalone",
        lang: "en",
        dir: "ltr",
        theme_color: "#1d2a33",
        background_color: "#f6f2e7",
        // A listing shared from another app opens as a new one, also with no signal.
        share_target: {
          action: "/new",
          method: "GET",
          params: { title: "title", text: "text", url: "url" },
        },
        icons: [
          { src: "/icon-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
          { src: "/icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
          { src: "/icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,svg,png,wasm,json}"],
        // The engine is larger than the default limit of 2 MiB and must be there before the first garage.
        maximumFileSizeToCacheInBytes: 16 * 1024 * 1024,
        navigateFallback: "/index.html",
        navigateFallbackDenylist: [/^\/api\//, /^\/s\//],
        cleanupOutdatedCaches: true,
      },
    }),
  ],
  build: {
    outDir: "dist/app",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    target: "es2022",
    modulePreload: { polyfill: false },
  },
  worker: { format: "es" },
  server: { proxy: { "/api": "http://127.0.0.1:8470" } },
  // A test that takes longer hangs; how fast it is decides nothing.
  test: { include: ["src/**/*.test.{ts,tsx}"], environment: "node", testTimeout: 30_000 },
});
