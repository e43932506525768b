import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { isIP } from "node:net";
import { fail, type Outcome, ok } from "../../shared/outcome.ts";

/** What a page says. */
export interface Page {
  readonly status: 200 | 503;
  readonly type: string;
  readonly body: string;
}

export interface OpsServer {
  readonly address: { readonly host: string; readonly port: number };
  close(): Promise<void>;
}

export interface OpsServerParts {
  readonly host: string;
  /** 0 takes any that is free. */
  readonly port: number;
  readonly pages: Readonly<Record<string, () => Promise<Page>>>;
}

const CONNECTIONS_MAX = 32;
const REQUEST_WITHIN_MS = 5_000;
const HEADERS_BYTES_MAX = 4_096;

/** A few pages over plain HTTP for whoever watches the bot. The problem is a sentence for who started it. */
export async function startOpsServer(parts: OpsServerParts): Promise<Outcome<OpsServer, string>> {
  const server = createServer(
    {
      maxHeaderSize: HEADERS_BYTES_MAX,
      requestTimeout: REQUEST_WITHIN_MS,
      headersTimeout: REQUEST_WITHIN_MS,
      keepAliveTimeout: REQUEST_WITHIN_MS,
      connectionsCheckingInterval: 1_000,
    },
    (request, response) => void serve(parts, request, response),
  );
  server.maxConnections = CONNECTIONS_MAX;
  server.on("clientError", (_error, socket) => {
    if (socket.writable) socket.end("HTTP/1.1 400 Bad Request\r\nConnection: close\r\n\r\n");
    else socket.destroy();
  });
  const failed = await listening(server, parts);
  if (failed !== null) return fail(failed);
  const bound = server.address();
  const port = bound === null || typeof bound === "string" ? parts.port : bound.port;
  return ok({ address: { host: parts.host, port }, close: () => closed(server) });
}

/** Null when it listens. */
function listening(server: Server, { host, port }: OpsServerParts): Promise<string | null> {
  return new Promise((resolve) => {
    server.once("error", (error) => {
      const code = "code" in error ? String(error.code) : error.name;
      resolve(
        `The page for health and metrics cannot open at ${host}, port ${port} (${code}). Name another in OPS_PORT and OPS_HOST, or switch it off with OPS_PORT=off.`,
      );
    });
    server.listen(port, host, () => resolve(null));
  });
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

async function serve(
  { host, pages }: OpsServerParts,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (request.method !== "GET" && request.method !== "HEAD") {
    return refuse(response, 405, "Only GET and HEAD.", { allow: "GET, HEAD" });
  }
  if (isLoopback(host) && !isAskedHere(request.headers.host ?? "")) {
    return refuse(response, 421, "Ask for this page by the address of this machine.");
  }
  const [path = ""] = (request.url ?? "").split("?", 1);
  const page = Object.hasOwn(pages, path) ? pages[path] : undefined;
  if (page === undefined) {
    return refuse(response, 404, `Nothing here. There is ${Object.keys(pages).join(", ")}.`);
  }
  try {
    const { status, type, body } = await page();
    say(response, status, body, { "content-type": type });
  } catch {
    // What went wrong is nobody's business who can reach the page.
    refuse(response, 500, "This page cannot be shown now.");
  }
}

function isLoopback(host: string): boolean {
  return host === "localhost" || host === "::1" || host.startsWith("127.");
}

/**
 * A page in somebody's browser can reach this machine under a name of its own and read the answer; it
 * cannot make the browser ask for a bare address or for localhost.
 */
function isAskedHere(hostHeader: string): boolean {
  const name = hostHeader.replace(/:\d*$/u, "").replace(/^\[(.*)\]$/u, "$1");
  return name.toLowerCase() === "localhost" || isIP(name) !== 0;
}

function refuse(
  response: ServerResponse,
  status: number,
  sentence: string,
  headers: Readonly<Record<string, string>> = {},
): void {
  const type = "text/plain; charset=utf-8";
  say(response, status, `${sentence}\n`, { "content-type": type, ...headers });
}

function say(
  response: ServerResponse,
  status: number,
  body: string,
  headers: Readonly<Record<string, string>>,
): void {
  response.writeHead(status, {
    "cache-control": "no-store",
    "x-content-type-options": "nosniff",
    "content-length": String(Buffer.byteLength(body)),
    ...headers,
  });
  response.end(response.req.method === "HEAD" ? undefined : body);
}
