// Asks the modules that the browser loads, under Node, and leaves their answers in
// a folder for the native engine to be compared with.
import { readFileSync, writeFileSync } from "node:fs";
import "./src/generated/wasm_exec.js";

const folder = process.argv[2];
async function run(module) {
  const go = new globalThis.Go();
  const wasm = readFileSync(new URL(`./src/generated/${module}.wasm`, import.meta.url));
  const { instance } = await WebAssembly.instantiate(wasm, go.importObject);
  go.run(instance);
}
await run("engine");
await run("paper");
const problem = globalThis.asfoundOpen(
  readFileSync(new URL("./src/generated/catalogue.json", import.meta.url)),
);
if (problem) throw new Error(problem);
const spanish = readFileSync(new URL("./src/generated/catalogue.es.json", import.meta.url), "utf8");
globalThis.asfoundCall("learn", new TextEncoder().encode(`{"catalogue":${spanish}}`));
const questions = JSON.parse(readFileSync(`${folder}/questions.json`, "utf8"));
if (questions.length === 0) throw new Error("no questions");
questions.forEach((q, i) => {
  const argument = new TextEncoder().encode(JSON.stringify(q.argument));
  writeFileSync(`${folder}/${i}.json`, globalThis.asfoundCall(q.call, argument));
});
const papers = JSON.parse(readFileSync(`${folder}/papers.json`, "utf8"));
if (papers.length === 0) throw new Error("no papers");
papers.forEach((request, i) => {
  const file = globalThis.asfoundPaper("pdf", new TextEncoder().encode(JSON.stringify(request)));
  if (typeof file === "string") throw new Error(file);
  writeFileSync(`${folder}/${i}.pdf`, file);
});
process.exit(0);
