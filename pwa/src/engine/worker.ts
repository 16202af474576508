/** The engine's own thread: loads the WebAssembly once and answers calls in order. */
import catalogueUrl from "../generated/catalogue.json?url";
import wasmUrl from "../generated/engine.wasm?url";
import type { Reply } from "../generated/types.ts";
import "../generated/wasm_exec.js";

declare class Go {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

const scope = globalThis as unknown as {
  asfoundOpen(catalogue: Uint8Array): string | null;
  asfoundCall(name: string, argument: Uint8Array): Uint8Array;
};

const encoder = new TextEncoder();
const decoder = new TextDecoder();

async function bytes(url: string): Promise<ArrayBuffer> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url} answered ${response.status}`);
  return response.arrayBuffer();
}

async function load(): Promise<void> {
  const go = new Go();
  const [wasm, catalogue] = await Promise.all([bytes(wasmUrl), bytes(catalogueUrl)]);
  const { instance } = await WebAssembly.instantiate(wasm, go.importObject);
  go.run(instance).then(
    () => self.close(),
    () => self.close(),
  );
  const problem = scope.asfoundOpen(new Uint8Array(catalogue));
  if (problem) throw new Error(problem);
}

let ready: Promise<void> | undefined;

// Set before anything is awaited, or early messages are lost.
self.onmessage = async (event: MessageEvent<{ id: number; call: string; argument: unknown }>) => {
  const { id, call, argument } = event.data;
  try {
    ready ??= load();
    await ready;
    const reply = JSON.parse(
      decoder.decode(scope.asfoundCall(call, encoder.encode(JSON.stringify(argument)))),
    ) as Reply;
    self.postMessage({ id, ...reply });
  } catch (cause) {
    self.postMessage({
      id,
      error: `The engine could not be loaded, so scores and prices are not computed until you reload. What you enter is kept. (${String(cause)})`,
    });
  }
};
