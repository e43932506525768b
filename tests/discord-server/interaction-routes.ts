import { badForm, type HttpAnswer, NOTHING, REFUSALS } from "./answer.ts";
import { type JsonObject, list, num, obj } from "./json.ts";
import { refuseForm, writeMessage } from "./message-routes.ts";
import type { Interaction, Platform } from "./platform.ts";
import { fileNames, type Received } from "./request.ts";
import { Faults } from "./rules/fault-list.ts";
import { checkForm } from "./rules/form-rules.ts";
import { COMPONENTS_V2, checkMessage, EPHEMERAL } from "./rules/message-rules.ts";
import { type Message, messageJson } from "./world.ts";

/** The first answer must come within 3 s (interactions/receiving-and-responding). */
const FIRST_ANSWER_MS = 3_000;
const ALLOWED: Readonly<Record<Interaction["kind"], readonly number[]>> = {
  command: [4, 5, 9],
  completion: [8],
  component: [4, 5, 6, 7, 9],
  // A form cannot be answered with another one.
  form: [4, 5],
  "form from message": [4, 5, 6, 7],
};

/** POST /interactions/{id}/{token}/callback. */
export function answerInteraction(
  platform: Platform,
  received: Received,
  id: string,
  token: string,
): HttpAnswer {
  const interaction = platform.interactions.get(id);
  if (interaction === undefined || interaction.token !== token) return REFUSALS.unknownInteraction;
  const afterMs = received.atMs - interaction.sentAtMs;
  if (afterMs + interaction.extraAgeMs > FIRST_ANSWER_MS) return REFUSALS.unknownInteraction;
  if (interaction.first !== null) return REFUSALS.alreadyAnswered;
  const type = num(obj(received.body)["type"]);
  const data = obj(obj(received.body)["data"]);
  if (!ALLOWED[interaction.kind].includes(type)) {
    return badForm([
      { at: "type", code: "INTERACTION_CALLBACK_TYPE", message: `${type} not here` },
    ]);
  }
  const refused = check(platform, received, interaction, type, data);
  if (refused !== null) return refused;
  const ephemeral = (num(data["flags"]) & EPHEMERAL) !== 0;
  interaction.first = { type, afterMs, ephemeral };
  if (type === 4) writeOriginal(platform, received, interaction, data, undefined);
  if (type === 7) writeOriginal(platform, received, interaction, data, interaction.sourceId);
  if (type === 6) interaction.originalId = interaction.sourceId;
  if (type === 8) interaction.choices = list(data["choices"]);
  if (type === 9) interaction.form = data;
  return NOTHING;
}

function check(
  platform: Platform,
  received: Received,
  interaction: Interaction,
  type: number,
  data: JsonObject,
): HttpAnswer | null {
  if (type === 8) return checkChoices(platform, received, data);
  if (type === 9) {
    const violations = checkForm(data);
    return violations.length === 0 ? null : refuseForm(platform, received, violations);
  }
  if (type === 5 || type === 6) {
    // Only the flag EPHEMERAL may come with a deferral.
    const isBad = (num(data["flags"]) & ~EPHEMERAL) !== 0 || data["components"] !== undefined;
    return isBad ? badForm([{ at: "data.flags", code: "DEFER", message: "EPHEMERAL only" }]) : null;
  }
  const source = type === 7 ? platform.world.messages.get(interaction.sourceId ?? "") : undefined;
  return checkBody(platform, received, data, source);
}

function checkBody(
  platform: Platform,
  received: Received,
  body: JsonObject,
  old: Message | undefined,
): HttpAnswer | null {
  const violations = checkMessage({
    body,
    fileNames: fileNames(received, body),
    isAlreadyV2: ((old?.flags ?? 0) & COMPONENTS_V2) !== 0,
    mustNameMentions: false,
  });
  return violations.length === 0 ? null : refuseForm(platform, received, violations);
}

function checkChoices(platform: Platform, received: Received, data: JsonObject): HttpAnswer | null {
  const faults = new Faults();
  const choices = list(data["choices"]);
  faults.count("data.choices", choices.length, 0, 25);
  choices.forEach((choice, index) => {
    faults.text(`data.choices.${index}.name`, obj(choice)["name"], 1, 100);
    faults.text(`data.choices.${index}.value`, obj(choice)["value"], 1, 100);
  });
  return faults.list.length === 0 ? null : refuseForm(platform, received, faults.list);
}

function writeOriginal(
  platform: Platform,
  received: Received,
  interaction: Interaction,
  body: JsonObject,
  replaces: string | null | undefined,
): Message {
  const old = platform.world.messages.get(replaces ?? "");
  const wasEphemeral = old !== undefined ? old.onlyFor !== null : interaction.first?.ephemeral;
  const message = writeMessage(
    platform,
    {
      received,
      body,
      channelId: interaction.channelId,
      onlyFor: wasEphemeral === true ? interaction.userId : null,
    },
    replaces ?? undefined,
  );
  interaction.originalId = message.id;
  interaction.writes += 1;
  return message;
}

function byToken(platform: Platform, token: string): Interaction | undefined {
  for (const interaction of platform.interactions.values()) {
    if (interaction.token === token) return interaction;
  }
  return undefined;
}

/** PATCH /webhooks/{application}/{token}/messages/@original. */
export function editOriginal(platform: Platform, received: Received, token: string): HttpAnswer {
  const interaction = byToken(platform, token);
  if (interaction === undefined || interaction.first === null) return REFUSALS.unknownWebhook;
  const body = obj(received.body);
  const old = platform.world.messages.get(interaction.originalId ?? "");
  const refused = checkBody(platform, received, body, old);
  if (refused !== null) return refused;
  const message = writeOriginal(platform, received, interaction, body, interaction.originalId);
  return { status: 200, body: messageJson(message, platform.world, platform.fileBase) };
}

/** POST /webhooks/{application}/{token}: a follow-up; the first after a deferral fills the deferral. */
export function followUp(platform: Platform, received: Received, token: string): HttpAnswer {
  const interaction = byToken(platform, token);
  if (interaction === undefined || interaction.first === null) return REFUSALS.unknownWebhook;
  const body = obj(received.body);
  const refused = checkBody(platform, received, body, undefined);
  if (refused !== null) return refused;
  if (interaction.first.type === 5 && interaction.originalId === null) {
    const message = writeOriginal(platform, received, interaction, body, undefined);
    return { status: 200, body: messageJson(message, platform.world, platform.fileBase) };
  }
  const isEphemeral = (num(body["flags"]) & EPHEMERAL) !== 0;
  const message = writeMessage(platform, {
    received,
    body,
    channelId: interaction.channelId,
    onlyFor: isEphemeral ? interaction.userId : null,
  });
  interaction.followUps.push(message);
  return { status: 200, body: messageJson(message, platform.world, platform.fileBase) };
}
