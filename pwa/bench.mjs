// Measures in the browser what a person waits for, and prints JSON.
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";

const port = 8479;
const base = `http://localhost:${port}`;
const data = mkdtempSync(join(tmpdir(), "asfound-bench-"));
const start = () =>
  spawn("../.cache/asfound-test", ["serve", "--data", data, "--listen", `127.0.0.1:${port}`]);
const sleep = (ms) => new Promise((done) => setTimeout(done, ms));
async function answers() {
  for (let i = 0; i < 100; i++) {
    try {
      if ((await fetch(`${base}/api/health`)).ok) return;
    } catch {}
    await sleep(50);
  }
  throw new Error("the server does not answer");
}

const options = {
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  viewport: { width: 390, height: 844 },
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};
const asset = (pattern) => {
  const name = readdirSync("dist/app/assets").find((n) => pattern.test(n));
  if (!name) throw new Error(`no asset like ${pattern}`);
  return `/assets/${name.replace(/\.br$/, "")}`;
};
const wasm = asset(/^engine-.*\.wasm\.br$/);
const catalogue = asset(/^catalogue-.*\.json\.br$/);
const glue = readFileSync("src/generated/wasm_exec.js", "utf8");
const file = readFileSync("../testdata/demo/1-lift-walked.json", "utf8");

// The same measuring code runs in a worker and, throttled, in the page: the
// browser's throttle does not reach workers.
const measure = `async (wasmUrl, catalogueUrl, file) => {
  const [module, catalogue] = await Promise.all([wasmUrl, catalogueUrl].map(async (u) => (await fetch(u)).arrayBuffer()));
  const argument = new TextEncoder().encode('{"file":' + file + '}');
  const t0 = performance.now();
  const go = new Go();
  const { instance } = await WebAssembly.instantiate(module, go.importObject);
  go.run(instance);
  const problem = asfoundOpen(new Uint8Array(catalogue));
  if (problem) throw new Error(problem);
  const ready = performance.now() - t0;
  const times = [];
  for (let i = 0; i < 16; i++) {
    const t = performance.now();
    const reply = new TextDecoder().decode(asfoundCall("appraise", argument));
    JSON.parse(reply);
    times.push(performance.now() - t);
    if (i === 0 && JSON.parse(reply).error) throw new Error(reply);
  }
  const warm = times.slice(1).sort((a, b) => a - b);
  return { ready, first: times[0], warm: warm[7] };
}`;

// The same for papers: the module's start, then each paper twice, photos and all.
const paperWasm = asset(/^paper-.*\.wasm\.br$/);
const papers = readdirSync("../.cache/papers")
  .filter((name) => /^\d+\.json$/.test(name))
  .sort()
  .map((name) => JSON.parse(readFileSync(`../.cache/papers/${name}`, "utf8")))
  .map(({ photos, keys, document }) => ({
    request: JSON.stringify({ document, page: "letter", keys: keys ?? [] }),
    photos: (photos ?? []).map((p) => readFileSync(`../.cache/papers/${p}`).toString("base64")),
  }));
const measurePaper = `async (wasmUrl, papers) => {
  const module = await (await fetch(wasmUrl)).arrayBuffer();
  const list = papers.map(({ request, photos }) => [new TextEncoder().encode(request),
    photos.map((p) => Uint8Array.from(atob(p), (c) => c.charCodeAt(0)))]);
  const t0 = performance.now();
  const go = new Go();
  const { instance } = await WebAssembly.instantiate(module, go.importObject);
  go.run(instance);
  const ready = performance.now() - t0;
  const draw = (request, photos) => {
    const t = performance.now();
    const file = asfoundPaper("pdf", request, ...photos);
    if (typeof file === "string") throw new Error(file);
    return { ms: performance.now() - t, bytes: file.length };
  };
  return { ready, papers: list.map(([request, photos]) => {
    const first = draw(request, photos);
    return { first: first.ms, warm: draw(request, photos).ms, bytes: first.bytes };
  }) };
}`;
const inWorker = (page, code, argument) =>
  page.evaluate(
    ({ code, glue, argument }) =>
      new Promise((done, fail) => {
        const text = `${glue};self.onmessage=async(e)=>{try{self.postMessage({ok:await (${code})(...e.data)})}catch(x){self.postMessage({bad:String(x)})}}`;
        const w = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
        w.onmessage = (e) => (e.data.ok ? done(e.data.ok) : fail(new Error(e.data.bad)));
        w.onerror = (e) => fail(new Error(e.message));
        w.postMessage(argument);
      }),
    { code, glue, argument },
  );

const server = start();
await answers();
const profile = mkdtempSync(join(tmpdir(), "asfound-profile-"));
const result = { cold_plain: [], cold_4x: [] };
try {
  const browser = await chromium.launch(options);
  const context = await browser.newContext({ bypassCSP: true });
  const page = await context.newPage();
  await page.goto(`${base}/api/health`);
  result.worker = await inWorker(page, measure, [base + wasm, base + catalogue, file]);
  result.paper = await inWorker(page, measurePaper, [base + paperWasm, papers]);
  await page.addScriptTag({ content: glue });
  const cdp = await context.newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  result.throttled = await page.evaluate(
    `(${measure})(${JSON.stringify(wasm)}, ${JSON.stringify(catalogue)}, ${JSON.stringify(file)})`,
  );
  await browser.close();

  // In a browser of its own: one that ran the module before has it compiled.
  const fresh = await chromium.launch(options);
  const slow = await (await fresh.newContext({ bypassCSP: true })).newPage();
  await slow.goto(`${base}/api/health`);
  await slow.addScriptTag({ content: glue });
  await (await slow.context().newCDPSession(slow)).send("Emulation.setCPUThrottlingRate", { rate: 4 });
  result.paper4x = await slow.evaluate(
    `(${measurePaper})(${JSON.stringify(paperWasm)}, ${JSON.stringify(papers)})`,
  );
  await fresh.close();

  // Visit once, stop the server, then start the browser anew each time.
  let visit = await chromium.launchPersistentContext(profile, options);
  let first = await visit.newPage();
  await first.goto(base);
  await first.evaluate(() => navigator.serviceWorker.ready);
  await first.waitForFunction(async () => (await caches.keys()).length > 0);
  await sleep(2000);
  await visit.close();
  server.kill("SIGTERM");
  await sleep(500);
  for (const rate of [1, 4]) {
    for (let i = 0; i < 5; i++) {
      visit = await chromium.launchPersistentContext(profile, options);
      first = visit.pages()[0] ?? (await visit.newPage());
      const session = await visit.newCDPSession(first);
      await session.send("Emulation.setCPUThrottlingRate", { rate });
      await first.goto(`${base}/comparables`);
      await first.waitForSelector("html[data-engine='ready']", { timeout: 20000 });
      const ms = await first.evaluate(() => performance.getEntriesByName("engine-ready")[0].startTime);
      (rate === 1 ? result.cold_plain : result.cold_4x).push(ms);
      await visit.close();
    }
  }
  console.log(JSON.stringify(result));
} finally {
  server.kill("SIGKILL");
  rmSync(data, { recursive: true, force: true });
  rmSync(profile, { recursive: true, force: true });
}
process.exit(0);
