import type { IncomingMessage } from "node:http";
import { type Json, type JsonObject, list, obj, parseJson, str } from "./json.ts";

const BODY_MAX = 30 * 1_024 * 1_024;

export interface SentFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** One request as it arrived. */
export interface Received {
  readonly method: string;
  /** Without the leading `/api/v10`. */
  readonly path: string;
  readonly query: URLSearchParams;
  readonly authorization: string;
  readonly body: Json;
  readonly files: readonly SentFile[];
  readonly atMs: number;
}

/** A received request with what became of it. */
export interface Recorded extends Received {
  /** 0 when the connection was reset instead of answered. */
  readonly status: number;
}

/** Reads a whole request: JSON, or multipart with `payload_json` and `files[n]`. */
export async function readRequest(request: IncomingMessage): Promise<Received> {
  const url = new URL(request.url ?? "/", "http://loopback");
  const bytes = await readBody(request);
  const type = request.headers["content-type"] ?? "";
  const parsed = type.startsWith("multipart/form-data")
    ? await readMultipart(bytes, type)
    : { body: bytes.length === 0 ? null : parseJson(bytes.toString("utf8")), files: [] };
  return {
    method: request.method ?? "GET",
    path: url.pathname.replace(/^\/api(\/v10)?/u, ""),
    query: url.searchParams,
    authorization: request.headers.authorization ?? "",
    atMs: performance.now(),
    ...parsed,
  };
}

async function readBody(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request) {
    const piece = Buffer.from(chunk as Uint8Array);
    length += piece.length;
    if (length > BODY_MAX) throw new Error("request too large for the loopback server");
    chunks.push(piece);
  }
  return Buffer.concat(chunks);
}

async function readMultipart(
  bytes: Buffer,
  type: string,
): Promise<{ body: JsonObject; files: SentFile[] }> {
  const form = await new Response(new Uint8Array(bytes), {
    headers: { "content-type": type },
  }).formData();
  const body = obj(parseJson(String(form.get("payload_json") ?? "{}")));
  const files: SentFile[] = [];
  for (const [field, value] of form) {
    if (!/^files\[\d+\]$/u.test(field) || typeof value === "string") continue;
    files.push({ name: value.name, bytes: new Uint8Array(await value.arrayBuffer()) });
  }
  return { body, files };
}

/** Names of a message's attachments as the platform will call them. */
export function fileNames(received: Received, messageBody: JsonObject): readonly string[] {
  const declared = list(messageBody["attachments"]).map((a) => str(obj(a)["filename"]));
  return received.files.map((file, index) => declared[index] || file.name);
}
