import { expect, test } from "vitest";
import { WorkerDoor } from "./worker-door.ts";

const words = {
  stopped: "stopped",
  notLoaded: (cause: string) => `not loaded: ${cause}`,
  notStarted: (cause: string) => `not started: ${cause}`,
};

/** A worker that answers each question by what `answer` makes of it. */
function workerThat(answer: (worker: Worker, id: number) => void): () => Worker {
  return () => {
    const worker = {
      postMessage: ({ id }: { id: number }) => queueMicrotask(() => answer(worker, id)),
      terminate: () => undefined,
    } as unknown as Worker;
    return worker;
  };
}

const told = (data: object) => ({ data }) as MessageEvent;

test("a module that could not be loaded is told of in the words of the page, as they are then", async () => {
  const own = { ...words };
  const door = new WorkerDoor(
    workerThat((worker, id) => worker.onmessage?.(told({ id, notLoaded: "HTTP 500" }))),
    own,
  );
  own.notLoaded = (cause) => `sin cargar: ${cause}`;
  await expect(door.ask("x", {})).rejects.toThrow("sin cargar: HTTP 500");
});

test("what the module says itself is passed on, with its field", async () => {
  const door = new WorkerDoor(
    workerThat((worker, id) => worker.onmessage?.(told({ id, error: "no such listing", field: "f" }))),
    words,
  );
  await expect(door.ask("x", {})).rejects.toMatchObject({ message: "no such listing", field: "f" });
});

test("a worker that dies or cannot start says so", async () => {
  const dying = new WorkerDoor(
    workerThat((worker) => worker.onerror?.({} as ErrorEvent)),
    words,
  );
  await expect(dying.ask("x", {})).rejects.toThrow("stopped");
  const missing = new WorkerDoor(() => {
    throw new Error("no workers here");
  }, words);
  await expect(missing.ask("x", {})).rejects.toThrow("not started: Error: no workers here");
});
