/**
 * A line between the browser and the program that a test can spoil: answers of its
 * own instead of the program's, or the program's answers changed on the way.
 * Unlike a route set in the browser it stands in the way of the service worker too.
 */
import {
  createServer,
  type Server as HttpServer,
  type IncomingMessage,
  request,
  type ServerResponse,
} from "node:http";
import type { AddressInfo } from "node:net";

export type Spoil = (path: string, response: ServerResponse) => boolean;
export type Change = (path: string, body: Buffer) => Buffer;

export class Gate {
  /** Answers in the program's stead where it returns true. */
  spoil: Spoil = () => false;
  /** Changes what the program answered. */
  change: Change = (_, body) => body;
  /** Requests that reached this gate, by path. */
  readonly asked = new Map<string, number>();
  private constructor(
    private readonly server: HttpServer,
    private readonly behind: () => number,
  ) {}

  static async open(behind: () => number): Promise<Gate> {
    const server = createServer((req, res) => gate.pass(req, res));
    const gate = new Gate(server, behind);
    await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
    return gate;
  }

  get url(): string {
    return `http://localhost:${(this.server.address() as AddressInfo).port}`;
  }

  private pass(req: IncomingMessage, res: ServerResponse): void {
    const path = req.url ?? "/";
    this.asked.set(path, (this.asked.get(path) ?? 0) + 1);
    if (this.spoil(path, res)) return;
    // Packed bodies cannot be changed on the way.
    const { "accept-encoding": _, ...headers } = req.headers;
    const onward = request(
      { host: "127.0.0.1", port: this.behind(), path, method: req.method, headers },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on("data", (part: Buffer) => parts.push(part));
        answer.on("end", () => {
          const body = this.change(path, Buffer.concat(parts));
          const { "content-length": __, etag: ___, "transfer-encoding": ____, ...kept } = answer.headers;
          res.writeHead(answer.statusCode ?? 502, { ...kept, "content-length": body.length });
          res.end(req.method === "HEAD" ? undefined : body);
        });
      },
    );
    onward.on("error", () => res.destroy());
    req.pipe(onward);
  }

  async close(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((done) => this.server.close(done));
  }
}
