/** Questions to a worker that answers them in order, each by a value or by an error in words for the screen. */
export class EngineError extends Error {
  constructor(
    message: string,
    readonly field?: string,
  ) {
    super(message);
  }
}

interface Answer {
  id: number;
  value?: unknown;
  error?: string;
  /** Set where the module could not be loaded: the worker knows no words, and says only what happened. */
  notLoaded?: string;
  field?: string;
}

/** What is said of the worker; read when it is said. */
interface DoorWords {
  stopped: string;
  notLoaded: (cause: string) => string;
  notStarted: (cause: string) => string;
}

export class WorkerDoor {
  private worker: Worker | undefined;
  private next = 1;
  private readonly waiting = new Map<number, { resolve: (v: unknown) => void; reject: (e: Error) => void }>();

  /** `words.stopped` is said to whoever waits when the worker dies; the next question starts another. */
  constructor(
    private readonly make: () => Worker,
    private readonly words: DoorWords,
  ) {}

  /** What is in `transfer` is handed over: here it is empty afterwards. */
  ask<T>(call: string, argument: unknown, transfer: Transferable[] = []): Promise<T> {
    const id = this.next++;
    return new Promise<T>((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as (v: unknown) => void, reject });
      try {
        this.start().postMessage({ id, call, argument }, transfer);
      } catch (cause) {
        this.waiting.delete(id);
        reject(new EngineError(this.words.notStarted(String(cause))));
      }
    });
  }

  private start(): Worker {
    if (this.worker) return this.worker;
    const started = this.make();
    started.onmessage = (event: MessageEvent<Answer>) => {
      const { id, value, error, notLoaded, field } = event.data;
      const call = this.waiting.get(id);
      if (!call) return;
      this.waiting.delete(id);
      if (notLoaded !== undefined) call.reject(new EngineError(this.words.notLoaded(notLoaded)));
      else if (error !== undefined) call.reject(new EngineError(error, field));
      else call.resolve(value);
    };
    started.onerror = () => this.fail();
    this.worker = started;
    return started;
  }

  private fail(): void {
    this.worker?.terminate();
    this.worker = undefined;
    for (const { reject } of this.waiting.values()) reject(new EngineError(this.words.stopped));
    this.waiting.clear();
  }
}
