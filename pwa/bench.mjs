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

/** Eight listings out of the demo, put on the server as another device would send them. */
async function seedEight() {
  const fields = [];
  for (let n = 0; n < 8; n++) {
    const name = ["1-lift-walked", "2-lift-half", "3-lift-listed", "4-press"][n % 4];
    const a = JSON.parse(readFileSync(`../testdata/demo/${name}.json`, "utf8"));
    const doc = `listing:0000000000000000000000ee${String(n).padStart(2, "0")}`;
    const put = (path, value) => fields.push([doc, path, value]);
    put("rubric", a.rubric);
    put("date", a.date);
    for (const [k, v] of Object.entries({ ...a.listing, asking: 90_000 + 10_000 * n })) put(k, v);
    for (const [k, v] of Object.entries(a.facts ?? {})) put(`fact/${k}`, v);
    for (const [k, v] of Object.entries(a.findings ?? {})) {
      put(`finding/${k}/answer`, v.grade === undefined ? { skipped: v.skipped } : { grade: v.grade });
      if (v.measured)
        put(`finding/${k}/measured`, { quantities: v.measured, ...(v.words ? { words: v.words } : {}) });
    }
    (n % 4 === 0 ? (a.comparables ?? []) : []).forEach((c, i) => {
      const id = `0000000000000000000000c${n}${String(i).padStart(2, "0")}`;
      fields.push(["comparables", `item/${id}`, { ...c, id, kind: a.rubric.id }]);
    });
  }
  const device = "e000000000000001";
  const time = Date.now().toString(16).padStart(12, "0");
  const rows = fields.map(([doc, path, value], i) => {
    const stamp = `${time}${i.toString(16).padStart(4, "0")}${device}`;
    return { doc, path, entries: [{ value, stamp, base: "" }], seen: [] };
  });
  let mark = "";
  for (let from = 0; from < rows.length; from += 400) {
    const page = rows.slice(from, from + 400);
    const response = await fetch(`${base}/api/sync`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ device, cursor: { epoch: "", seq: 0 }, mark, rows: page, want: 1 }),
    });
    const answer = await response.json();
    if (!response.ok || (answer.refused ?? []).length > 0)
      throw new Error(JSON.stringify(answer).slice(0, 500));
    mark = page.at(-1).entries[0].stamp;
  }
  return Array.from({ length: 8 }, (_, n) => `0000000000000000000000ee${String(n).padStart(2, "0")}`);
}

/**
 * Taps a weight and types a price with eight listings side by side, the page throttled:
 * from each touch or key to the next frame (Event Timing), and until the new figures stand.
 */
async function interactions(browser, ids, rate) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(base);
  await page.waitForSelector("html[data-engine='ready']", { timeout: 60000 });
  await page.waitForFunction(() => document.querySelectorAll(".tag-title").length === 8, null, {
    timeout: 60000,
  });
  await page.goto(`${base}/compare?of=${ids.join(",")}`);
  await page.waitForSelector(".compare[aria-busy='false']", { timeout: 60000 });
  await (await context.newCDPSession(page)).send("Emulation.setCPUThrottlingRate", { rate });
  await page.evaluate(() => {
    window.felt = new Map();
    new PerformanceObserver((list) => {
      for (const e of list.getEntries())
        if (e.interactionId)
          window.felt.set(e.interactionId, Math.max(e.duration, window.felt.get(e.interactionId) ?? 0));
    }).observe({ type: "event", durationThreshold: 16, buffered: true });
  });
  // Those quicker than a frame are counted without being listed.
  const count = () => page.evaluate(() => performance.interactionCount ?? window.felt.size);
  const until = async (act) => {
    const from = Date.now();
    await act();
    await page.waitForSelector(".compare[aria-busy='true']", { timeout: 10000 });
    await page.waitForSelector(".compare[aria-busy='false']", { timeout: 60000 });
    return Date.now() - from;
  };
  const stand = [];
  const more = page.getByRole("button", { name: "More: Distance" });
  const less = page.getByRole("button", { name: "Less: Distance" });
  for (let i = 0; i < 6; i++) stand.push(await until(() => (i % 2 === 0 ? more : less).click()));
  // Quick taps while the last figures are still being reckoned.
  for (let i = 0; i < 6; i++) {
    await (i % 2 === 0 ? more : less).click();
    await sleep(60);
  }
  await page.waitForSelector(".compare[aria-busy='false']", { timeout: 60000 });
  await page.getByLabel("Price of A", { exact: true }).fill("");
  stand.push(
    await until(() =>
      page.getByLabel("Price of A", { exact: true }).pressSequentially("1750", { delay: 90 }),
    ),
  );
  await sleep(500);
  const touched = await count();
  if (touched < 15) throw new Error(`only ${touched} interactions were seen`);
  const felt = await page.evaluate(() => [...window.felt.values()]);
  await context.close();
  felt.sort((a, b) => a - b);
  stand.sort((a, b) => a - b);
  return {
    worst: felt.at(-1),
    median: felt[felt.length >> 1],
    count: touched,
    stand: stand[stand.length >> 1],
    slowest: stand.at(-1),
  };
}

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
  const ids = await seedEight();
  result.eight_plain = await interactions(browser, ids, 1);
  result.eight_4x = await interactions(browser, ids, 4);
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
