import type { KeepingTime } from "../../shared/keeping/types.ts";
import { count } from "../../shared/words/plural.ts";
import { sayWhose } from "../kit/keeping.ts";
import type { Row } from "../kit/reply.ts";

/** How long a recipe keeps, in the fridge and the freezer, with the reason where it freezes badly. */
export function keepingRow(keeping: KeepingTime): Row {
  const fridge = `${count(keeping.fridgeDays, "day")} in the fridge`;
  const months =
    keeping.freezerMonths === null ? "" : `, best within ${count(keeping.freezerMonths, "month")}`;
  const why = keeping.reason === "" ? "" : ` (${keeping.reason})`;
  const freezer =
    keeping.freezes === "no"
      ? `not for the freezer${why}`
      : `${keeping.freezes === "well" ? "freezes well" : "freezes badly"}${why}${months}`;
  const whose = sayWhose(keeping);
  return {
    label: "keeps",
    figure: fridge,
    note: whose === "" ? freezer : `${whose}; ${freezer}`,
  };
}
