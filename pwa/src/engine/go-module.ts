/** Starting one of the Go modules in a worker. */
import "../generated/wasm_exec.js";

declare class Go {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

export async function bytes(url: string): Promise<ArrayBuffer> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: HTTP ${response.status}`);
  return response.arrayBuffer();
}

/** Runs the module until it ends; the worker ends with it. */
export async function runModule(wasm: ArrayBuffer): Promise<void> {
  const go = new Go();
  const { instance } = await WebAssembly.instantiate(wasm, go.importObject);
  go.run(instance).then(
    () => self.close(),
    () => self.close(),
  );
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** What a call gives: a value for whoever asked, and what of it is handed over rather than copied. */
interface Given {
  value?: unknown;
  error?: string;
  transfer?: Transferable[];
}

/** Answers the questions of a WorkerDoor: `call` takes and gives JSON as bytes, `load` gets the first argument. */
export function answerCalls(
  load: (argument: unknown) => Promise<void>,
  call: (name: string, argument: Uint8Array) => Uint8Array,
): void {
  answerValues(
    load,
    (name, argument) =>
      JSON.parse(decoder.decode(call(name, encoder.encode(JSON.stringify(argument))))) as Given,
  );
}

/** The same for a module that takes and gives values of any kind. */
export function answerValues(
  load: (argument: unknown) => Promise<void>,
  call: (name: string, argument: unknown) => Given,
): void {
  let ready: Promise<void> | undefined;
  // Set before anything is awaited, or early messages are lost.
  self.onmessage = async (event: MessageEvent<{ id: number; call: string; argument: unknown }>) => {
    const { id, call: name, argument } = event.data;
    try {
      ready ??= load(argument);
      await ready;
      const { transfer = [], ...given } = call(name, argument);
      self.postMessage({ id, ...given }, { transfer });
    } catch (cause) {
      self.postMessage({ id, notLoaded: String(cause) });
    }
  };
}
