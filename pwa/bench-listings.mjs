// Measures the list with 500 listings and 20,000 photos named in them, and prints JSON.
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "@playwright/test";

const listings = Number(process.env.LISTINGS ?? 500);
const photosEach = 40;
const throttle = 4;
const port = 8478;
const base = `http://localhost:${port}`;
const program = process.env.PROGRAM ?? "../.cache/asfound-test";
const data = mkdtempSync(join(tmpdir(), "asfound-bench-"));
const profile = mkdtempSync(join(tmpdir(), "asfound-profile-"));
const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

const demo = ["1-lift-walked", "3-lift-listed", "4-press", "2-lift-half"].map((name) =>
  JSON.parse(readFileSync(`../testdata/demo/${name}.json`, "utf8")),
);
const places = ["Quarry Hill", "Mill Lane", "Harbour Yard", "North Sidings", "Old Dairy", "Depot Four"];

/** About forty rows of one listing, and its photos. */
function fieldsOf(i) {
  const a = demo[i % demo.length];
  const doc = `listing:${"0".repeat(21)}${"b"}${String(i).padStart(4, "0")}`;
  const fields = [
    [doc, "rubric", a.rubric],
    [doc, "date", a.date],
    [doc, "title", `Number ${i}, ${places[(i * 7) % places.length]} (invented)`],
    [doc, "note", "Invented demonstration."],
    [doc, "place", places[i % places.length]],
    [doc, "asking", 50_000 + ((i * 7919) % 900_000)],
    [doc, "distance", { n: (i * 37) % 400, unit: "mi" }],
    [doc, "made", 1970 + ((i * 13) % 50)],
    [doc, "maker", "Invented Works"],
    [doc, "model", `M-${i % 90}`],
    [doc, "serial", `SN${String(i * 7717).padStart(8, "0")}`],
    ...Object.entries(a.facts ?? {}).map(([k, v]) => [doc, `fact/${k}`, v]),
  ];
  const findings = Object.entries(a.findings ?? {}).filter(([, f]) => f.grade !== undefined);
  for (const [check, f] of findings.slice(0, 40 - fields.length))
    fields.push([doc, `finding/${check}/answer`, { grade: f.grade }]);
  for (let p = 0; p < photosEach; p++) {
    const hash = createHash("sha256").update(`${i}/${p}`).digest("hex");
    fields.push([doc, `photo/${hash}`, { at: "2026-01-05T10:00:00.000Z", width: 1600, height: 1200 }]);
  }
  return fields;
}

async function seed() {
  const device = "e0000000000000e7";
  const all = Array.from({ length: listings }, (_, i) => fieldsOf(i)).flat();
  const start = Date.now() - all.length - 1000;
  const rows = all.map(([doc, path, value], i) => ({
    doc,
    path,
    entries: [{ value, stamp: `${(start + i).toString(16).padStart(12, "0")}0000${device}`, base: "" }],
    seen: [],
  }));
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
      throw new Error(JSON.stringify(answer).slice(0, 400));
    mark = page.at(-1).entries[0].stamp;
  }
  return rows;
}

const server = spawn(program, ["serve", "--data", data, "--listen", `127.0.0.1:${port}`]);
for (let i = 0; ; i++) {
  if (i > 100) throw new Error("the server does not answer");
  if (
    await fetch(`${base}/api/health`).then(
      (r) => r.ok,
      () => false,
    )
  )
    break;
  await sleep(50);
}

const counted = (page) =>
  page.evaluate(
    () =>
      new Promise((done, fail) => {
        const opening = indexedDB.open("asfound");
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const ask = opening.result.transaction("rows").objectStore("rows").count();
          ask.onsuccess = () => {
            opening.result.close();
            done(ask.result);
          };
        };
      }),
  );

/** Rows of the photos themselves, without pictures, so that none is fetched. */
const putPhotos = (page, hashes) =>
  page.evaluate(
    (list) =>
      new Promise((done, fail) => {
        const opening = indexedDB.open("asfound");
        opening.onsuccess = () => {
          const tx = opening.result.transaction("photos", "readwrite");
          for (const hash of list)
            tx.objectStore("photos").put({
              hash,
              type: "image/jpeg",
              width: 1600,
              height: 1200,
              bytes: 1,
              at: "2026-01-05T10:00:00.000Z",
              uploaded: 1,
            });
          tx.oncomplete = () => {
            opening.result.close();
            done();
          };
          tx.onerror = () => fail(tx.error);
        };
      }),
    hashes,
  );

/** Gaps between frames while the list is scrolled through. */
async function scroll(page, cdp, distance) {
  const before = worked();
  await page.evaluate(() => {
    window.gaps = [];
    let last = performance.now();
    const tick = (now) => {
      window.gaps.push(now - last);
      last = now;
      window.ticking = requestAnimationFrame(tick);
    };
    window.ticking = requestAnimationFrame((now) => {
      last = now;
      window.ticking = requestAnimationFrame(tick);
    });
  });
  // A wheel turned as evenly as a person can; the next step does not wait for the page.
  const step = 160;
  for (let y = 0; y < distance; y += step) {
    const next = sleep(32);
    const turn = { type: "mouseWheel", x: 195, y: 400, deltaX: 0, deltaY: step };
    await Promise.race([cdp.send("Input.dispatchMouseEvent", turn), next]);
    await next;
  }
  await sleep(300);
  const [gaps, top] = await page.evaluate(() => {
    cancelAnimationFrame(window.ticking);
    return [window.gaps, window.scrollY];
  });
  const after = worked();
  const sorted = [...gaps].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return {
    frames: gaps.length,
    median: at(0.5),
    p95: at(0.95),
    worst: sorted.at(-1),
    over50: gaps.filter((g) => g > 50).length,
    top,
    work_ms: before === undefined || after === undefined ? undefined : after - before,
  };
}

/**
 * Processor time that the page's own thread has used, ms, which other work on the machine does not change; undefined
 * where the system does not tell.
 */
function worked() {
  try {
    let ticks = 0;
    for (const pid of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
      let [line, stat] = ["", ""];
      try {
        line = readFileSync(`/proc/${pid}/cmdline`, "utf8");
        stat = readFileSync(`/proc/${pid}/task/${pid}/stat`, "utf8");
      } catch {
        continue; // it has ended meanwhile
      }
      if (!line.includes("--type=renderer") || !line.includes(profile)) continue;
      const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
      ticks += Number(fields[11]) + Number(fields[12]);
    }
    return ticks * 10;
  } catch {
    return undefined;
  }
}

const result = { listings, photos: listings * photosEach };
try {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"],
  });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(`${base}/comparables`);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await page.waitForSelector("html[data-engine='ready']", { timeout: 30000 });
  const hashes = Array.from({ length: listings * photosEach }, (_, n) =>
    createHash("sha256")
      .update(`${Math.floor(n / photosEach)}/${n % photosEach}`)
      .digest("hex"),
  );
  await putPhotos(page, hashes);
  const rows = await seed();
  result.rows = rows.length;
  const began = Date.now();
  await page.reload();
  while ((await counted(page)) < rows.length) {
    if (Date.now() - began > 600_000) throw new Error("the rows do not arrive");
    await sleep(250);
  }
  result.sync_s = (Date.now() - began) / 1000;
  await sleep(3000);
  server.kill("SIGTERM");
  await page.addInitScript(() => {
    window.busy = 0;
    new PerformanceObserver((list) => {
      for (const e of list.getEntries()) window.busy += e.duration - 50;
    }).observe({ type: "longtask", buffered: true });
    const watch = new MutationObserver(() => {
      if (!window.firstList && document.querySelector("ul.tags > li")) {
        window.firstList = -1;
        requestAnimationFrame(() =>
          requestAnimationFrame((t) => {
            window.firstList = t;
          }),
        );
      }
    });
    watch.observe(document, { childList: true, subtree: true });
  });
  const cdp = await context.newCDPSession(page);
  await cdp.send("Performance.enable");
  for (const rate of [1, throttle]) {
    const name = rate === 1 ? "plain" : "slow";
    await cdp.send("Emulation.setCPUThrottlingRate", { rate });
    const first = [];
    for (let i = 0; i < 3; i++) {
      await page.goto("about:blank");
      await page.goto(base);
      await page.waitForFunction(() => window.firstList > 0, undefined, { timeout: 120_000 });
      first.push(await page.evaluate(() => window.firstList));
      await sleep(6000);
    }
    const one = { first, busy: await page.evaluate(() => window.busy) };
    one.scroll = await scroll(page, cdp, 12_000);
    one.again = await scroll(page, cdp, 12_000);
    await cdp.send("HeapProfiler.collectGarbage");
    const { metrics } = await cdp.send("Performance.getMetrics");
    const metric = (n) => metrics.find((m) => m.name === n)?.value ?? 0;
    one.heap_mb = metric("JSHeapUsedSize") / 1e6;
    one.nodes = metric("Nodes");
    result[name] = one;
    const find = page.getByRole("button", { name: "Find" });
    if (await find.isVisible().catch(() => false)) {
      await find.click();
      const field = page.locator(".finder input").first();
      await field.focus();
      const times = [];
      for (const key of ["q", "u", "a", "r", "Backspace", "Backspace", "Backspace", "Backspace"]) {
        await page.evaluate(() => {
          addEventListener(
            "keydown",
            () => {
              const at = performance.now();
              window.answered = undefined;
              requestAnimationFrame(() =>
                requestAnimationFrame(() => {
                  window.answered = performance.now() - at;
                }),
              );
            },
            { once: true, capture: true },
          );
        });
        await page.keyboard.press(key);
        await page.waitForFunction(() => window.answered !== undefined);
        times.push(await page.evaluate(() => window.answered));
        await sleep(400);
      }
      one.keys = times;
      await page.screenshot({ path: process.env.SHOT ?? join(tmpdir(), "bench-listings.png") });
    }
  }
  await context.close();
  console.log(JSON.stringify(result));
} finally {
  server.kill("SIGKILL");
  rmSync(data, { recursive: true, force: true });
  rmSync(profile, { recursive: true, force: true });
}
process.exit(0);
