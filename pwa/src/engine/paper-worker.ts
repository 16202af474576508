/** The thread that draws papers, started when something is handed over. */
import wasmUrl from "../generated/paper.wasm?url";
import { answerValues, bytes, runModule } from "./go-module.ts";

const scope = globalThis as unknown as {
  asfoundPaper(name: string, argument: Uint8Array, ...photos: Uint8Array[]): Uint8Array | string;
};

const encoder = new TextEncoder();
const decoder = new TextDecoder();

answerValues(
  async () => runModule(await bytes(wasmUrl)),
  (name, argument) => {
    const { request, photos } = argument as { request: unknown; photos: ArrayBuffer[] };
    const given = scope.asfoundPaper(
      name,
      encoder.encode(JSON.stringify(request)),
      ...photos.map((p) => new Uint8Array(p)),
    );
    if (typeof given === "string") return { error: given };
    return name === "pdf"
      ? { value: given.buffer, transfer: [given.buffer] }
      : { value: JSON.parse(decoder.decode(given)) };
  },
);
