import {
  type APIApplicationCommandOptionChoice,
  InteractionResponseType,
  MessageFlags,
  type RawFile,
  REST,
  RequestMethod,
  type RouteLike,
  Routes,
} from "discord.js";
import type { Form } from "../../commands/kit/form.ts";
import type { Reply } from "../../commands/kit/reply.ts";
import { renderForm } from "./forms.ts";
import { render } from "./render.ts";
import { drawPictures } from "./render-pictures.ts";

/** What identifies an interaction towards the platform. The token is a secret for 15 minutes. */
export interface Answerable {
  readonly id: string;
  readonly applicationId: string;
  readonly token: string;
}

type Choices = readonly APIApplicationCommandOptionChoice<string>[];

/** The calls that answer interactions. */
export interface Calls {
  /** First answer: a new message. */
  say(to: Answerable, reply: Reply, isPrivate: boolean): Promise<void>;
  /** First answer: the pressed message becomes this. */
  update(to: Answerable, reply: Reply): Promise<void>;
  /** First answer: "thinking", privately. */
  defer(to: Answerable): Promise<void>;
  /** First answer to a press: the message stays as it is for now. */
  deferUpdate(to: Answerable): Promise<void>;
  /** First answer: a form to fill in. */
  open(to: Answerable, form: Form): Promise<void>;
  /** First answer to a completion. */
  suggest(to: Answerable, choices: Choices): Promise<void>;
  /** Rewrites the message of the first answer (or the pressed message after an update). */
  edit(to: Answerable, reply: Reply): Promise<void>;
  /** One more message. */
  follow(to: Answerable, reply: Reply, isPrivate: boolean): Promise<void>;
}

/**
 * The calls over a REST manager of their own: the platform exempts answers from the limit per bot
 * (topics/rate-limits), and nothing is repeated behind our back, so a follow-up is never doubled.
 */
export function createCalls(apiBase: string | null): Calls & { stop(): void } {
  const rest = new REST({
    ...(apiBase === null ? {} : { api: apiBase }),
    retries: 0,
    timeout: 10_000,
    globalRequestsPerSecond: Number.POSITIVE_INFINITY,
  });
  // What comes back is never looked at: an answer that the platform took is not to be doubted, and so
  // repeated, because of how its acknowledgement is written.
  const send = async (
    method: RequestMethod,
    fullRoute: RouteLike,
    body: unknown,
    files: RawFile[],
  ): Promise<void> => {
    const answer = await rest.queueRequest({ method, fullRoute, body, files, auth: false });
    await answer.arrayBuffer();
  };
  const first = async (
    to: Answerable,
    type: InteractionResponseType,
    data?: object,
    files = NO_FILES,
  ) => {
    const body = data === undefined ? { type } : { type, data };
    await send(RequestMethod.Post, Routes.interactionCallback(to.id, to.token), body, files);
  };
  return {
    say: async (to, reply, isPrivate) => {
      const { data, files } = await message(reply, isPrivate);
      await first(to, InteractionResponseType.ChannelMessageWithSource, data, files);
    },
    update: async (to, reply) => {
      const { data, files } = await message(reply, false);
      await first(to, InteractionResponseType.UpdateMessage, data, files);
    },
    defer: (to) =>
      first(to, InteractionResponseType.DeferredChannelMessageWithSource, {
        flags: MessageFlags.Ephemeral,
      }),
    deferUpdate: (to) => first(to, InteractionResponseType.DeferredMessageUpdate),
    open: (to, form) => first(to, InteractionResponseType.Modal, renderForm(form)),
    suggest: (to, choices) =>
      first(to, InteractionResponseType.ApplicationCommandAutocompleteResult, { choices }),
    edit: async (to, reply) => {
      const { data, files } = await message(reply, false);
      const route = Routes.webhookMessage(to.applicationId, to.token, "@original");
      await send(RequestMethod.Patch, route, data, files);
    },
    follow: async (to, reply, isPrivate) => {
      const { data, files } = await message(reply, isPrivate);
      await send(RequestMethod.Post, Routes.webhook(to.applicationId, to.token), data, files);
    },
    stop: () => {
      rest.clearHashSweeper();
      rest.clearHandlerSweeper();
    },
  };
}

const NO_FILES: ReturnType<typeof render>["files"] = [];

async function message(reply: Reply, isPrivate: boolean) {
  await drawPictures(reply.pictures);
  const { message: data, files } = render(reply);
  const flags = data.flags | (isPrivate ? MessageFlags.Ephemeral : 0);
  return { data: { ...data, flags }, files };
}
