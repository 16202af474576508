/** The real program as a child process, so that a test can stop it for real. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const program = resolve(import.meta.dirname, "../../.cache/asfound-test");

async function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const probe = createServer();
    probe.once("error", fail);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === "object" ? done(address.port) : fail(new Error("no port")),
      );
    });
  });
}

/** Programs still running when the tests end, by a fault, are ended with them. */
const running = new Set<ChildProcess>();
process.once("exit", () => {
  for (const child of running) child.kill("SIGKILL");
});

export class Server {
  private child: ChildProcess | undefined;
  private constructor(
    readonly folder: string,
    readonly port: number,
  ) {}

  static async start(): Promise<Server> {
    const server = new Server(mkdtempSync(join(tmpdir(), "asfound-e2e-")), await freePort());
    await server.run();
    return server;
  }

  get url(): string {
    return `http://localhost:${this.port}`;
  }

  async run(): Promise<void> {
    let said = "";
    this.child = spawn(program, ["serve", "--data", this.folder, "--listen", `127.0.0.1:${this.port}`]);
    running.add(this.child);
    this.child.stderr?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
    });
    for (let i = 0; i < 100; i++) {
      if (this.child.exitCode !== null) throw new Error(`the server stopped: ${said}`);
      try {
        if ((await fetch(`${this.url}/api/health`)).ok) return;
      } catch {
        // not listening yet
      }
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`the server does not answer: ${said}`);
  }

  /** Stops the process and makes sure that nothing answers any more. */
  async stop(): Promise<void> {
    const child = this.child;
    if (!child || child.exitCode !== null) return;
    const gone = new Promise((done) => child.once("exit", done));
    child.kill("SIGTERM");
    await gone;
    running.delete(child);
    this.child = undefined;
    const answered = await fetch(`${this.url}/api/health`).then(
      () => true,
      () => false,
    );
    if (answered) throw new Error("something still answers after the server was stopped");
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
