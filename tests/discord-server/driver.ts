import { type OpenForm, openForm, submittedForm } from "./form.ts";
import type { Gateway } from "./gateway.ts";
import { type JsonObject, obj, str } from "./json.ts";
import { commandData, frame, type GivenOptions, type Scene } from "./payload.ts";
import type { FirstAnswer, Interaction, Platform } from "./platform.ts";
import { buttonsOf, filesOf, selectsOf, textOf } from "./view.ts";
import { type Guild, type Message, messageJson, type User } from "./world.ts";

/** What a person got for a command or a press. */
export interface Answered {
  readonly interactionId: string;
  /** Time to the first answer, milliseconds, and its callback type. */
  readonly first: FirstAnswer;
  /** Whether only the asker can see the message. */
  readonly ephemeral: boolean;
  readonly message: Message;
  readonly text: string;
  /** Messages that came besides. */
  readonly followUps: readonly Message[];
  readonly buttons: ReturnType<typeof buttonsOf>;
  readonly selects: ReturnType<typeof selectsOf>;
  readonly files: ReturnType<typeof filesOf>;
}

/** An interaction under way. */
export interface Asking {
  readonly id: string;
  /** The first answer, be it only "thinking". */
  readonly first: Promise<FirstAnswer>;
  /** The whole answer. */
  readonly done: Promise<Answered>;
}

export interface Timing {
  /** Pretend that it was sent so long ago. */
  readonly ageMs?: number;
  /** Deliver the event that often. */
  readonly deliveries?: number;
}

/** Plays people: sends interactions through the gateway and waits for what the bot answers. */
export class Driver {
  readonly #platform: Platform;
  readonly #gateway: Gateway;
  #tokens = 0;

  constructor(platform: Platform, gateway: Gateway) {
    this.#platform = platform;
    this.#gateway = gateway;
  }

  /** Types a slash command in the guild's first channel. */
  beginSlash(
    user: User,
    guild: Guild,
    path: readonly string[],
    options: GivenOptions = {},
    timing: Timing = {},
  ): Asking {
    const data = commandData(this.#platform, guild.id, path, options, null);
    return this.#send(this.#inGuild(user, guild), "command", { type: 2, data }, null, timing);
  }

  /** Completion choices while `option` is typed; the other options as filled in so far. */
  async complete(
    user: User,
    guild: Guild,
    path: readonly string[],
    option: string,
    typed: string,
    others: GivenOptions = {},
  ): Promise<readonly { readonly name: string; readonly value: string }[]> {
    const given = { ...others, [option]: typed };
    const data = commandData(this.#platform, guild.id, path, given, option);
    const scene = this.#inGuild(user, guild);
    const asking = this.#send(scene, "completion", { type: 4, data }, null, {});
    await asking.first;
    const choices = this.#platform.interactions.get(asking.id)?.choices ?? [];
    return choices.map((c) => ({ name: str(obj(c)["name"]), value: str(obj(c)["value"]) }));
  }

  /** Presses a button by its custom id or label. */
  beginPress(user: User, message: Message, button: string, timing: Timing = {}): Asking {
    const now = this.#seen(user, message);
    const found = buttonsOf(now).find((b) => b.id === button || b.label === button);
    if (found === undefined) throw new Error(`no button ${button} on: ${textOf(now)}`);
    return this.pressBlindly(user, now, found.id, timing);
  }

  /** Sends a press with any custom id, as a forged client could. */
  pressBlindly(user: User, message: Message, customId: string, timing: Timing = {}): Asking {
    const data = { component_type: 2, custom_id: customId, id: 1 };
    return this.#component(user, message, data, timing);
  }

  beginSelect(user: User, message: Message, customId: string, values: readonly string[]): Asking {
    const now = this.#seen(user, message);
    const select = selectsOf(now).find((s) => s.id === customId);
    const known = select?.options.map((o) => o.value) ?? [];
    if (!values.every((value) => known.includes(value))) throw new Error(`not offered: ${values}`);
    const data = { component_type: 3, custom_id: customId, id: 1, values: [...values] };
    return this.#component(user, now, data, {});
  }

  /** The form that an interaction opened, as the person sees it. */
  async formOf(asking: Asking): Promise<OpenForm> {
    const interaction = this.#platform.interactions.get(asking.id);
    await asking.first;
    if (interaction?.form == null) throw new Error("no form was opened");
    return openForm(interaction);
  }

  /** Sends a form back with the texts given; the others as they stood in it. */
  submit(
    user: User,
    guild: Guild,
    form: OpenForm,
    texts: Readonly<Record<string, string>>,
  ): Asking {
    const message = this.#platform.world.messages.get(form.sourceId ?? "");
    const scene = this.#inGuild(user, guild);
    const data = submittedForm(form, texts);
    const from = message === undefined ? {} : this.#messageOf(message);
    const kind = message === undefined ? "form" : "form from message";
    return this.#send(scene, kind, { type: 5, data, ...from }, form.sourceId, {});
  }

  #messageOf(message: Message): JsonObject {
    return { message: messageJson(message, this.#platform.world, this.#platform.fileBase) };
  }

  #component(user: User, message: Message, data: JsonObject, timing: Timing): Asking {
    const { world, fileBase } = this.#platform;
    const channel = world.channels.get(message.channelId);
    if (channel === undefined) throw new Error("the message's channel is gone");
    const guild = world.guilds.get(channel.guildId ?? "") ?? null;
    const payload = { type: 3, data, message: messageJson(message, world, fileBase) };
    return this.#send({ user, guild, channel }, "component", payload, message.id, timing);
  }

  /** The message as it is now; throws when the user cannot see it. */
  #seen(user: User, message: Message): Message {
    const now = this.#platform.world.messages.get(message.id) ?? message;
    if (now.onlyFor !== null && now.onlyFor !== user.id) {
      throw new Error(`${user.username} cannot see that message`);
    }
    return now;
  }

  #inGuild(user: User, guild: Guild): Scene {
    const channel = guild.channels[0];
    if (channel === undefined) throw new Error(`${guild.name} has no channel`);
    return { user, guild, channel };
  }

  #send(
    scene: Scene,
    kind: Interaction["kind"],
    payload: JsonObject,
    sourceId: string | null,
    timing: Timing,
  ): Asking {
    const platform = this.#platform;
    this.#tokens += 1;
    const interaction: Interaction = {
      id: platform.world.nextId(timing.ageMs ?? 0),
      token: `token-of-interaction-${this.#tokens}`,
      kind,
      userId: scene.user.id,
      channelId: scene.channel.id,
      sourceId,
      sentAtMs: performance.now(),
      extraAgeMs: timing.ageMs ?? 0,
      first: null,
      originalId: null,
      choices: [],
      form: null,
      followUps: [],
      writes: 0,
    };
    platform.interactions.set(interaction.id, interaction);
    const event = { ...frame(platform, scene, interaction.id, interaction.token), ...payload };
    for (let n = 0; n < (timing.deliveries ?? 1); n += 1) {
      this.#gateway.dispatch("INTERACTION_CREATE", event);
    }
    return {
      id: interaction.id,
      get first() {
        return platform.until(`a first answer to ${interaction.id}`, () => interaction.first);
      },
      get done() {
        return platform.until(`an answer to ${interaction.id}`, () =>
          answered(platform, interaction),
        );
      },
    };
  }
}

/** The answer once it is whole; null before. */
function answered(platform: Platform, interaction: Interaction): Answered | null {
  const { first, followUps } = interaction;
  const isWritten = interaction.writes > 0;
  if (first === null || (!isWritten && followUps.length === 0)) return null;
  const original = isWritten
    ? platform.world.messages.get(interaction.originalId ?? "")
    : undefined;
  const message = original ?? followUps[0];
  if (message === undefined) return null;
  return {
    interactionId: interaction.id,
    first,
    ephemeral: message.onlyFor !== null,
    message,
    text: textOf(message),
    followUps: followUps.filter((m) => m !== message),
    buttons: buttonsOf(message),
    selects: selectsOf(message),
    files: filesOf(message),
  };
}
