import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { Duplex } from "node:stream";
import type { HttpAnswer } from "./answer.ts";
import { refusal } from "./answer.ts";
import { type Answered, Driver } from "./driver.ts";
import type { Fault, FaultKind } from "./faults.ts";
import { Gateway } from "./gateway.ts";
import type { GivenOptions } from "./payload.ts";
import { Platform } from "./platform.ts";
import { type Received, type Recorded, readRequest } from "./request.ts";
import { answer } from "./routes.ts";
import type { Guild, Message, User } from "./world.ts";

const REQUESTS_MAX = 100_000;
/** Permission bit of "manage server" (topics/permissions). */
export const MANAGE_GUILD = 1n << 5n;

/**
 * A loopback platform: the part of the REST v10 and gateway v10 interface that an unmodified client
 * library needs, on 127.0.0.1 and a port of its own, with people to play and faults to inject.
 */
export class DiscordServer {
  readonly platform: Platform;
  readonly gateway: Gateway;
  readonly driver: Driver;
  readonly #http: Server;

  constructor(platform: Platform) {
    this.platform = platform;
    this.gateway = new Gateway(platform);
    this.driver = new Driver(platform, this.gateway);
    this.#http = createServer((request, response) => {
      void this.#serve(request, response);
    });
    this.#http.on("upgrade", (request: IncomingMessage, socket: Duplex, head: Buffer) => {
      this.gateway.upgrade(request, socket, head);
    });
  }

  /** What a client is configured with. */
  get apiBase(): string {
    return `${this.platform.baseUrl}/api`;
  }

  get fileOrigin(): string {
    return this.platform.baseUrl;
  }

  async listen(): Promise<void> {
    await new Promise<void>((resolve) => this.#http.listen(0, "127.0.0.1", resolve));
    const { port } = this.#http.address() as AddressInfo;
    this.platform.baseUrl = `http://127.0.0.1:${port}`;
  }

  async close(): Promise<void> {
    this.gateway.stop();
    this.#http.closeAllConnections();
    await new Promise((resolve) => this.#http.close(resolve));
  }

  /** A guild with text channels and roles; make guilds before the client logs in. */
  guild(
    name: string,
    channels: readonly string[] = ["kitchen"],
    roles: readonly string[] = [],
  ): Guild {
    return this.platform.world.addGuild(name, channels, roles);
  }

  /** A person who is in the guild; roles by name. */
  join(
    guild: Guild,
    username: string,
    more: { roles?: readonly string[]; manages?: boolean; nick?: string; as?: User } = {},
  ): User {
    const user = more.as ?? this.platform.world.addUser(username, username);
    const named = guild.roles.filter((role) => more.roles?.includes(role.name));
    guild.members.set(user.id, {
      nick: more.nick ?? null,
      roleIds: named.map((role) => role.id),
      permissions: more.manages === true ? MANAGE_GUILD : 0n,
    });
    return user;
  }

  slash(
    user: User,
    guild: Guild,
    path: readonly string[],
    options: GivenOptions = {},
  ): Promise<Answered> {
    return this.driver.beginSlash(user, guild, path, options).done;
  }

  autocomplete(...args: Parameters<Driver["complete"]>): ReturnType<Driver["complete"]> {
    return this.driver.complete(...args);
  }

  press(user: User, message: Message, button: string): Promise<Answered> {
    return this.driver.beginPress(user, message, button).done;
  }

  select(
    user: User,
    message: Message,
    customId: string,
    values: readonly string[],
  ): Promise<Answered> {
    return this.driver.beginSelect(user, message, customId, values).done;
  }

  fault(fault: Fault): void {
    this.platform.faults.add(fault);
  }

  /** Messages in the direct channel with a user, oldest first. */
  directMessages(user: User): readonly Message[] {
    return this.platform.world.messagesIn(this.platform.world.directChannel(user.id).id);
  }

  messagesIn(channelId: string): readonly Message[] {
    return this.platform.world.messagesIn(channelId);
  }

  /** Requests so far that match. */
  requests(method: string, path: RegExp): readonly Recorded[] {
    return this.platform.requests.filter((r) => r.method === method && path.test(r.path));
  }

  until<T>(what: string, check: () => T | null | undefined | false): Promise<T> {
    return this.platform.until(what, check);
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const received = await readRequest(request);
      const fault = this.platform.faults.take(received);
      if (fault?.kind === "hold") await fault.gate;
      if (fault?.kind === "act") await fault.before?.();
      const real = isUndone(fault) ? null : answer(this.platform, received);
      if (fault?.kind === "act") await fault.after?.();
      const said = sayInstead(fault, real ?? { status: 500 });
      this.#record(received, said === "reset" ? 0 : said.status);
      if (said === "reset") request.socket.destroy();
      else if (fault?.kind === "act" && fault.says === "cut") cut(response, said);
      else write(response, said);
    } catch (error) {
      write(response, refusal(500, 0, String(error)));
    }
    this.platform.changed();
  }

  #record(received: Received, status: number): void {
    this.platform.requests.push({ ...received, status });
    if (this.platform.requests.length > REQUESTS_MAX) this.platform.requests.shift();
  }
}

/** Whether the platform does nothing of what was asked. */
function isUndone(fault: FaultKind | null): boolean {
  if (fault?.kind === "act") {
    return !(typeof fault.isDone === "function" ? fault.isDone() : fault.isDone);
  }
  return fault?.kind === "429" || fault?.kind === "500" || fault?.kind === "refuse";
}

function sayInstead(fault: FaultKind | null, real: HttpAnswer): HttpAnswer | "reset" {
  switch (fault?.kind) {
    case "act":
      return fault.says === "the truth" || fault.says === "cut" ? real : fault.says;
    case "429":
      return {
        status: 429,
        body: {
          message: "You are being rate limited.",
          retry_after: fault.retryAfterS,
          global: false,
        },
        headers: { "retry-after": String(fault.retryAfterS), "x-ratelimit-scope": "user" },
      };
    case "500":
    case "500 after storing":
      return refusal(500, 0, "500: Internal Server Error");
    case "reset after storing":
      return "reset";
    case "refuse":
      return refusal(fault.status, fault.code, "refused by the test");
    default:
      return real;
  }
}

function write(response: ServerResponse, said: HttpAnswer): void {
  const body = said.bytes ?? (said.body === undefined ? "" : JSON.stringify(said.body));
  const type = said.bytes === undefined ? "application/json" : "application/octet-stream";
  // An answer without content has no type of it either (RFC 9110, 15.3.5 and 8.3).
  const typed = said.status === 204 ? {} : { "content-type": type };
  response.writeHead(said.status, { ...typed, ...said.headers });
  response.end(body);
}

/** Breaks the connection off in the middle of the answer. */
function cut(response: ServerResponse, said: HttpAnswer): void {
  const whole = JSON.stringify(said.body ?? {});
  response.writeHead(said.status, {
    "content-type": "application/json",
    "content-length": whole.length,
  });
  response.write(whole.slice(0, Math.floor(whole.length / 2)), () => response.destroy());
}

/** Starts the loopback platform. Close it at the end of the test. */
export async function startDiscordServer(
  options: { token?: string; applicationId?: string } = {},
): Promise<DiscordServer> {
  const token = options.token ?? "loopback.token.of-nobody";
  const server = new DiscordServer(
    new Platform(token, options.applicationId ?? "1000000000000000001"),
  );
  await server.listen();
  return server;
}
