import { z } from "zod";
import type { MoveKind } from "../../shared/stock/decide.ts";
import { type Place, WASTE_REASONS } from "../../shared/stock/types.ts";
import { command } from "../kit/command.ts";
import { halvesText, requiredText, wordText } from "../kit/options.ts";
import { loadStock } from "../kit/plan.ts";
import { move } from "../stock/moving.ts";
import { board } from "../stock/stock.ts";
import { completeLot, whichLot } from "./which-lot.ts";

const DEEDS = ["eat", "freeze", "thaw", "give", "throw away"] as const;
const KINDS: Readonly<Record<(typeof DEEDS)[number], MoveKind>> = {
  eat: "ate",
  freeze: "froze",
  thaw: "set to thaw",
  give: "gave",
  "throw away": "threw away",
};
export const PLACES = ["fridge", "thawing", "freezer"] as const;
/** What is thawed was frozen, and the other way about: of several lots only these are meant. */
const FROM: Readonly<Partial<Record<MoveKind, readonly Place[]>>> = {
  "set to thaw": ["freezer"],
  froze: ["fridge", "thawing"],
};

export const batchMove = command({
  path: ["batch", "move"],
  description: "Move, eat, give or throw away portions of one kind; /stock has buttons for it",
  who: "everyone",
  options: [
    {
      name: "what",
      description: "What you did",
      required: true,
      kind: "text",
      choices: DEEDS,
    },
    {
      name: "recipe",
      description: "Of what",
      required: true,
      kind: "text",
      complete: completeLot,
    },
    {
      name: "portions",
      description: "How many, such as 2, ½ or 0.5; one if you leave it out",
      required: false,
      kind: "text",
    },
    {
      name: "place",
      description: "Where they were, if there are some in several places",
      required: false,
      kind: "text",
      choices: PLACES,
    },
    {
      name: "reason",
      description: "Why it was thrown away",
      required: false,
      kind: "text",
      choices: WASTE_REASONS,
    },
  ],
  input: z
    .object({
      what: wordText(DEEDS, `Type what you did: ${DEEDS.join(", ")}.`),
      recipe: requiredText("recipe", 120),
      portions: halvesText.optional(),
      place: wordText(PLACES, `Type the place: ${PLACES.join(", ")}.`).optional(),
      reason: wordText(WASTE_REASONS, `Type the reason: ${WASTE_REASONS.join(", ")}.`).optional(),
    })
    .refine(({ what, reason }) => reason === undefined || what === "throw away", {
      message: "A reason belongs to what is thrown away: leave it out.",
    }),
  handle: async (context, { what, recipe, portions = 1, place, reason }) => {
    const own = await loadStock(context.stores, context.member);
    const found = whichLot(context, own, { recipe, place, places: FROM[KINDS[what]] });
    if (!("lot" in found)) return found;
    const wish = { lotId: found.lot.id, kind: KINDS[what], portions, reason: reason ?? null };
    const writing = { cause: context.causeId, seen: null, at: context.now };
    const said = await move(context, wish, writing);
    return board(context, said ?? "That was recorded already; nothing was written twice.");
  },
});
