import { z } from "zod";
import { command } from "../kit/command.ts";
import { halvesOrNoneText, requiredText, wordText } from "../kit/options.ts";
import { loadStock } from "../kit/plan.ts";
import { correct } from "../stock/moving.ts";
import { board } from "../stock/stock.ts";
import { PLACES } from "./move.ts";
import { lotOfLabel } from "./turned-up.ts";
import { completeLot, whichLot } from "./which-lot.ts";

export const batchCount = command({
  path: ["batch", "count"],
  description: "Put a wrong count right: say how many are really there",
  who: "everyone",
  options: [
    {
      name: "recipe",
      description: "Of what, or the code on the label",
      required: true,
      kind: "text",
      complete: completeLot,
    },
    {
      name: "portions",
      description: "How many are really there, such as 3, 2½ or 0",
      required: true,
      kind: "text",
    },
    {
      name: "place",
      description: "Where, if there are some in several places",
      required: false,
      kind: "text",
      choices: PLACES,
    },
  ],
  input: z.object({
    recipe: requiredText("recipe", 120),
    portions: halvesOrNoneText,
    place: wordText(PLACES, `Type the place: ${PLACES.join(", ")}.`).optional(),
  }),
  handle: async (context, { recipe, portions, place }) => {
    const own = await loadStock(context.stores, context.member);
    const labelled = await lotOfLabel(context, own, recipe);
    const found = labelled ?? whichLot(context, own, { recipe, place });
    if (!("lot" in found)) return found;
    const writing = { cause: context.causeId, seen: null, at: context.now };
    const wish = { lotId: found.lot.id, counted: portions };
    const isThere = own.lots.some(({ id }) => id === found.lot.id);
    const said = await correct(context, isThere ? wish : { ...wish, emptied: found }, writing);
    return board(context, said ?? "That was recorded already; nothing was written twice.");
  },
});
