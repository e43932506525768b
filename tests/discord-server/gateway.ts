import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { type JsonObject, num, obj, parseJson, str } from "./json.ts";
import type { Platform } from "./platform.ts";
import { guildJson, userJson } from "./world.ts";

// Gateway operations: the platform's developer documentation, topics/opcodes-and-status-codes.
const OP = {
  dispatch: 0,
  heartbeat: 1,
  identify: 2,
  resume: 6,
  reconnect: 7,
  invalid: 9,
  hello: 10,
  ack: 11,
};
const EVENTS_MAX = 10_000;

interface Session {
  readonly id: string;
  readonly events: { readonly s: number; readonly t: string; readonly d: JsonObject }[];
  sequence: number;
  socket: WebSocket | null;
}

/** The gateway of the loopback platform: sessions, heartbeats, resuming with replay, and ways to break. */
export class Gateway {
  readonly #server = new WebSocketServer({ noServer: true });
  readonly #platform: Platform;
  readonly #sockets = new Set<WebSocket>();
  readonly #sessions = new Map<string, Session>();
  heartbeatMs = 41_250;
  /** While false, heartbeats stay unanswered, as on a half-dead connection. */
  answersHeartbeats = true;
  /** While set, every IDENTIFY and RESUME is answered by closing with this code. */
  closeOnIdentify: number | null = null;
  /** While true, new connections are held open without a word until `openDoors`. */
  #doorsClosed: (() => void)[] | null = null;
  identifies = 0;
  resumes = 0;
  heartbeats = 0;

  constructor(platform: Platform) {
    this.#platform = platform;
  }

  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    this.#server.handleUpgrade(request, socket, head, (ws) => {
      this.#sockets.add(ws);
      ws.on("close", () => {
        this.#sockets.delete(ws);
        for (const session of this.#sessions.values()) {
          if (session.socket === ws) session.socket = null;
        }
        this.#platform.changed();
      });
      ws.on("error", () => undefined);
      ws.on("message", (data) => {
        this.#receive(ws, obj(parseJson(data.toString())));
      });
      const greet = () =>
        this.#send(ws, { op: OP.hello, d: { heartbeat_interval: this.heartbeatMs } });
      if (this.#doorsClosed === null) greet();
      else this.#doorsClosed.push(greet);
    });
  }

  /** How many sessions have a live connection. */
  get connected(): number {
    return [...this.#sessions.values()].filter((session) => session.socket !== null).length;
  }

  /** Sends an event to every session; kept for replay where the connection is gone. */
  dispatch(type: string, d: JsonObject): void {
    for (const session of this.#sessions.values()) {
      session.sequence += 1;
      session.events.push({ s: session.sequence, t: type, d });
      if (session.events.length > EVENTS_MAX) session.events.shift();
      this.#send(session.socket, { op: OP.dispatch, s: session.sequence, t: type, d });
    }
  }

  /** Ends every connection with a close code; 4004 and 4010 to 4014 are final. */
  closeAll(code: number): void {
    for (const ws of this.#sockets) ws.close(code);
  }

  /** Cuts every connection without a closing handshake. */
  cutAll(): void {
    for (const ws of this.#sockets) ws.terminate();
  }

  askToReconnect(): void {
    for (const ws of this.#sockets) this.#send(ws, { op: OP.reconnect, d: null });
  }

  /** Tells every connection that its session is invalid; forgets the sessions unless resumable. */
  invalidate(isResumable: boolean): void {
    if (!isResumable) this.#sessions.clear();
    for (const ws of this.#sockets) this.#send(ws, { op: OP.invalid, d: isResumable });
  }

  /** From now on a new connection is not greeted: the client stays away until `openDoors`. */
  closeDoors(): void {
    this.#doorsClosed = [];
  }

  openDoors(): void {
    const waiting = this.#doorsClosed ?? [];
    this.#doorsClosed = null;
    for (const greet of waiting) greet();
  }

  stop(): void {
    this.cutAll();
    this.#server.close();
  }

  #receive(ws: WebSocket, payload: JsonObject): void {
    const d = obj(payload["d"]);
    switch (payload["op"]) {
      case OP.heartbeat:
        this.heartbeats += 1;
        if (this.answersHeartbeats) this.#send(ws, { op: OP.ack });
        break;
      case OP.identify:
        this.identifies += 1;
        if (this.#mayEnter(ws, d)) this.#identify(ws);
        break;
      case OP.resume:
        this.resumes += 1;
        if (this.#mayEnter(ws, d)) this.#resume(ws, d);
        break;
      default:
        break;
    }
    this.#platform.changed();
  }

  #mayEnter(ws: WebSocket, d: JsonObject): boolean {
    const code = str(d["token"]) === this.#platform.token ? this.closeOnIdentify : 4004;
    if (code !== null) ws.close(code);
    return code === null;
  }

  #identify(ws: WebSocket): void {
    const world = this.#platform.world;
    const session: Session = {
      id: `session-${this.identifies}`,
      events: [],
      sequence: 0,
      socket: ws,
    };
    this.#sessions.clear();
    this.#sessions.set(session.id, session);
    this.dispatch("READY", {
      v: 10,
      user: userJson(world.bot, true),
      application: { id: this.#platform.applicationId, flags: 0 },
      guilds: [...world.guilds.keys()].map((id) => ({ id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: this.#platform.baseUrl.replace("http:", "ws:"),
      shard: [0, 1],
    });
    for (const guild of world.guilds.values())
      this.dispatch("GUILD_CREATE", guildJson(guild, world));
  }

  #resume(ws: WebSocket, d: JsonObject): void {
    const session = this.#sessions.get(str(d["session_id"]));
    if (session === undefined) {
      this.#send(ws, { op: OP.invalid, d: false });
      return;
    }
    session.socket = ws;
    for (const event of session.events) {
      if (event.s > num(d["seq"])) this.#send(ws, { op: OP.dispatch, ...event });
    }
    this.dispatch("RESUMED", {});
  }

  #send(ws: WebSocket | null, payload: JsonObject): void {
    if (ws?.readyState === ws?.OPEN) ws?.send(JSON.stringify(payload));
  }
}
