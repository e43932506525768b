import { z } from "zod";
import { type Command, command, Refusal } from "../../../commands/kit/command.ts";
import type { Context } from "../../../commands/kit/context.ts";
import { reply } from "../../../commands/kit/reply.ts";

const describeContext = (context: Context): string =>
  [context.group.id, context.member.name, context.isCoach ? "coach" : "member"].join(" ");

export const echo = command({
  path: ["echo"],
  description: "Says what it was given",
  who: "everyone",
  options: [
    { name: "what", description: "Anything at all", required: true, kind: "text" },
    { name: "size", description: "How big", required: false, kind: "text", choices: ["s", "l"] },
    { name: "loud", description: "Shout", required: false, kind: "yes-no" },
    { name: "file", description: "A file", required: false, kind: "file" },
  ],
  input: z.object({ what: z.string().max(10, "what must be short.") }).loose(),
  handle: async (context, input) => {
    if (input.what === "refuse") throw new Refusal(["First fault.", "Second fault."]);
    if (input.what === "break") throw new Error("database password is hunter2");
    return reply(`${describeContext(context)} ${input.what} ${context.causeId}`);
  },
  actions: {
    board: async () =>
      reply("board", {
        buttons: [{ id: "echo.again~7", label: "Undo", weight: "plain" }],
        choices: [
          { id: "echo.again", placeholder: "Pick", options: [{ value: "one", label: "1" }] },
        ],
      }),
    again: async (context, args) => reply(`${describeContext(context)} ${args.join("+")}`),
  },
});

export const form = command({
  path: ["form"],
  description: "Opens a form unless told what",
  who: "coach",
  options: [{ name: "what", description: "Anything", required: false, kind: "text" }],
  input: z.object({ what: z.string() }),
  handle: async (_context, { what }) => reply(what),
  opens: (given) => (given.includes("what") ? null : "blank"),
  forms: {
    blank: async (context, args) => {
      if (args[0] === "refuse") throw new Refusal("No form for that.");
      return {
        id: "form.send~7",
        title: `For ${context.member.name}`,
        fields: [{ name: "t", label: "T", value: args.join(), required: true, isLong: true }],
      };
    },
  },
  submissions: {
    send: async (context, args, filled) => {
      if (filled["t"] === "break") throw new Error("hunter2");
      return reply(`${describeContext(context)} ${args.join("+")} ${filled["t"]}`);
    },
  },
});

export const setup: Command = {
  ...command({
    path: ["group", "setup"],
    description: "For the coach",
    who: "coach",
    options: [
      {
        name: "role",
        description: "A role",
        required: false,
        kind: "text",
        complete: async () => [{ label: "secret", value: "secret" }],
      },
    ],
    input: z.object({}).loose(),
    handle: async (context) => reply(describeContext(context)),
    actions: { go: async () => reply("gone") },
  }),
};

export const suggest = (
  count: number,
  make: (n: number) => { label: string; value: string },
): Command => ({
  ...echo,
  path: ["suggest"],
  options: [
    {
      name: "what",
      description: "Anything",
      required: true,
      kind: "text",
      complete: async (_context, typed) => {
        if (typed === "break") throw new Error("boom");
        return Array.from({ length: count }, (_, n) => make(n));
      },
    },
  ],
});
