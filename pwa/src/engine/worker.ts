/** The engine's own thread: loads the WebAssembly once and answers calls in order. */
import wasmUrl from "../generated/engine.wasm?url";
import { answerCalls, bytes, runModule } from "./go-module.ts";
import { catalogueUrlOf } from "./locale.ts";

const scope = globalThis as unknown as {
  asfoundOpen(catalogue: Uint8Array): string | null;
  asfoundCall(name: string, argument: Uint8Array): Uint8Array;
};

/** The first question tells the language it opens in. */
async function load(question: unknown): Promise<void> {
  const { locale } = question as { locale: string };
  const [wasm, catalogue] = await Promise.all([bytes(wasmUrl), bytes(catalogueUrlOf(locale))]);
  await runModule(wasm);
  const problem = scope.asfoundOpen(new Uint8Array(catalogue));
  if (problem) throw new Error(problem);
}

answerCalls(load, (name, argument) => scope.asfoundCall(name, argument));
