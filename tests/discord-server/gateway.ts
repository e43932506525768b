import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { type JsonObject, list, num, obj, parseJson, str } from "./json.ts";
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
  /** Which part of the guilds it is told of, of how many. */
  readonly shard: readonly [id: number, total: number];
  readonly events: { readonly s: number; readonly t: string; readonly d: JsonObject }[];
  sequence: number;
  socket: WebSocket | null;
}

/** What an IDENTIFY says it wants to be; alone when it says nothing (topics/gateway, "Sharding"). */
function shardIn(d: JsonObject): Session["shard"] {
  const [id, total] = list(d["shard"]);
  return total === undefined ? [0, 1] : [num(id), num(total)];
}

/** The platform's rule: by the time in a guild's id; what is of no guild goes to the first shard. */
function isOf({ shard: [id, total] }: Session, guildId: string): boolean {
  return (guildId === "" ? 0 : Number((BigInt(guildId) >> 22n) % BigInt(total))) === id;
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

  /** Shards that have a live connection, as "0/2", in order. */
  get shards(): readonly string[] {
    const live = [...this.#sessions.values()].filter((session) => session.socket !== null);
    return live.map(({ shard }) => shard.join("/")).toSorted();
  }

  /** Sends an event to the session whose guild it is; kept for replay where the connection is gone. */
  dispatch(type: string, d: JsonObject): void {
    for (const session of this.#sessions.values()) {
      if (isOf(session, str(d["guild_id"]))) this.#tell(session, type, d);
    }
  }

  #tell(session: Session, type: string, d: JsonObject): void {
    session.sequence += 1;
    session.events.push({ s: session.sequence, t: type, d });
    if (session.events.length > EVENTS_MAX) session.events.shift();
    this.#send(session.socket, { op: OP.dispatch, s: session.sequence, t: type, d });
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
        if (this.#mayEnter(ws, d)) this.#identify(ws, shardIn(d));
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

  #identify(ws: WebSocket, shard: Session["shard"]): void {
    const world = this.#platform.world;
    const session: Session = {
      id: `session-${this.identifies}`,
      shard,
      events: [],
      sequence: 0,
      socket: ws,
    };
    for (const old of this.#sessions.values()) {
      if (old.shard.join() === shard.join()) this.#sessions.delete(old.id);
    }
    this.#sessions.set(session.id, session);
    const guilds = [...world.guilds.values()].filter(({ id }) => isOf(session, id));
    this.#tell(session, "READY", {
      v: 10,
      user: userJson(world.bot, true),
      application: { id: this.#platform.applicationId, flags: 0 },
      guilds: guilds.map(({ id }) => ({ id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: this.#platform.baseUrl.replace("http:", "ws:"),
      shard: [...shard],
    });
    for (const guild of guilds) this.#tell(session, "GUILD_CREATE", guildJson(guild, world));
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
    this.#tell(session, "RESUMED", {});
  }

  #send(ws: WebSocket | null, payload: JsonObject): void {
    if (ws?.readyState === ws?.OPEN) ws?.send(JSON.stringify(payload));
  }
}
