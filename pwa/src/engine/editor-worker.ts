/** The rubric editor's own thread, started when a rubric is edited. */
import wasmUrl from "../generated/editor.wasm?url";
import { answerCalls, bytes, runModule } from "./go-module.ts";

const scope = globalThis as unknown as {
  asfoundEdit(name: string, argument: Uint8Array): Uint8Array;
};

answerCalls(
  async () => runModule(await bytes(wasmUrl)),
  (name, argument) => scope.asfoundEdit(name, argument),
);
