import { type HttpAnswer, REFUSALS } from "./answer.ts";
import { answerInteraction, editOriginal, followUp } from "./interaction-routes.ts";
import { list, obj } from "./json.ts";
import { createMessage, openDirect, readMessages, refuseForm } from "./message-routes.ts";
import type { Platform } from "./platform.ts";
import type { Received } from "./request.ts";
import { checkCommands } from "./rules/command-rules.ts";

type Handler = (platform: Platform, received: Received, parts: readonly string[]) => HttpAnswer;

interface Route {
  readonly method: string;
  readonly path: RegExp;
  /** Interaction routes carry their own token and take no bot token. */
  readonly isOpen: boolean;
  readonly handle: Handler;
}

const ROUTES: readonly Route[] = [
  route("GET", /^\/gateway\/bot$/u, (platform) => ({
    status: 200,
    body: {
      url: platform.baseUrl.replace("http:", "ws:"),
      shards: platform.shards,
      session_start_limit: {
        total: 1_000,
        remaining: 999,
        reset_after: 0,
        // All at once: a test has no five seconds for each.
        max_concurrency: platform.shards,
      },
    },
  })),
  route("PUT", /^\/applications\/(\d+)\/commands$/u, (platform, received, [app]) =>
    register(platform, received, app ?? "", "global"),
  ),
  route("PUT", /^\/applications\/(\d+)\/guilds\/(\d+)\/commands$/u, (platform, received, parts) =>
    register(platform, received, parts[0] ?? "", parts[1] ?? ""),
  ),
  route("POST", /^\/users\/@me\/channels$/u, openDirect),
  route("POST", /^\/channels\/(\d+)\/messages$/u, (platform, received, [id]) =>
    createMessage(platform, received, id ?? ""),
  ),
  route("GET", /^\/channels\/(\d+)\/messages$/u, (platform, received, [id]) =>
    readMessages(platform, received, id ?? ""),
  ),
  open("POST", /^\/interactions\/(\d+)\/([^/]+)\/callback$/u, (platform, received, parts) =>
    answerInteraction(platform, received, parts[0] ?? "", parts[1] ?? ""),
  ),
  open(
    "PATCH",
    /^\/webhooks\/\d+\/([^/]+)\/messages\/(?:@|%40)original$/u,
    (platform, received, [token]) => editOriginal(platform, received, token ?? ""),
  ),
  open("POST", /^\/webhooks\/\d+\/([^/]+)$/u, (platform, received, [token]) =>
    followUp(platform, received, token ?? ""),
  ),
  open("GET", /^\/files\/(\d+)\/[^/]+$/u, (platform, _received, [id]) => {
    const file = platform.world.files.get(id ?? "");
    return file === undefined ? REFUSALS.unknownRoute : { status: 200, bytes: file.bytes };
  }),
];

function route(method: string, path: RegExp, handle: Handler): Route {
  return { method, path, handle, isOpen: false };
}

function open(method: string, path: RegExp, handle: Handler): Route {
  return { method, path, handle, isOpen: true };
}

/** Answers a request as the platform would. */
export function answer(platform: Platform, received: Received): HttpAnswer {
  for (const { method, path, isOpen, handle } of ROUTES) {
    const match = method === received.method ? path.exec(received.path) : null;
    if (match === null) continue;
    if (!isOpen && received.authorization !== `Bot ${platform.token}`) return REFUSALS.unauthorized;
    return handle(platform, received, match.slice(1));
  }
  return REFUSALS.unknownRoute;
}

function register(
  platform: Platform,
  received: Received,
  applicationId: string,
  scope: string,
): HttpAnswer {
  if (applicationId !== platform.applicationId) return REFUSALS.missingAccess;
  if (scope !== "global" && !platform.world.guilds.has(scope)) return REFUSALS.missingAccess;
  const violations = checkCommands(received.body, scope === "global" ? "global" : "guild");
  if (violations.length > 0) return refuseForm(platform, received, violations);
  platform.commands.set(
    scope,
    list(received.body).map((command) => obj(command)),
  );
  const stored = list(received.body).map((command, index) => ({
    ...obj(command),
    id: String(index + 1),
    application_id: applicationId,
    version: "1",
  }));
  return { status: 200, body: stored };
}
