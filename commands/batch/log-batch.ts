import { lotId } from "../../shared/ids.ts";
import { decideLog } from "../../shared/stock/decide.ts";
import { type SplitPart, splitOf } from "../../shared/stock/split.ts";
import { dateIn } from "../../shared/time.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import { changeStock } from "../kit/plan.ts";
import type { PublishedRecipe } from "../kit/ports.ts";
import type { Reply } from "../kit/reply.ts";
import { sayStockProblem } from "../kit/say-stock-problem.ts";
import type { CardRequest } from "../recipe/card-request.ts";
import { type Cooked, cookedBatch } from "./cooked-batch.ts";
import { loggedReply } from "./logged.ts";
import { splitOrRefuse } from "./say-split.ts";

/** What is said of a cooking besides its size. */
export interface LogInput extends Cooked {
  /** Portions that went straight into the freezer. */
  readonly freeze?: number | undefined;
  /** Instead of that: where all of it went. */
  readonly split?: readonly SplitPart[] | null | undefined;
}

/** Writes a batch of the recipe at the size asked for, and tells what to keep, freeze and thaw. */
export async function logBatch(
  context: Context,
  published: PublishedRecipe,
  request: CardRequest,
  input: LogInput,
): Promise<Reply> {
  const { batch, alerts, sized } = cookedBatch(context, published, request, input);
  const { stores, member, now, newId, causeId } = context;
  const zone = member.choice.zone;
  const { froze, ate } =
    input.split == null
      ? { froze: input.freeze ?? 0, ate: 0 }
      : splitOrRefuse(splitOf(input.split, batch.portionsCooked));
  const changed = await changeStock({
    stores,
    member,
    now,
    causeId,
    newId,
    newBatch: batch,
    decide: () =>
      decideLog(batch, froze, { at: now, on: dateIn(now, zone) }, () => lotId(newId()), ate),
  });
  if (!changed.ok) throw new Refusal(sayStockProblem(changed.problem, zone));
  const rules = await stores.meals.list(member.id);
  return loggedReply({
    ...changed.value,
    batch,
    froze,
    ate,
    now,
    zone,
    zoneIsOwn: member.zoneIsOwn,
    hasMeals: rules.length > 0,
    alerts,
    sized,
  });
}
