import type { Serving, ServingWhy } from "../../shared/allocation/types.ts";
import type { Lot } from "../../shared/stock/types.ts";
import { type Instant, isBefore } from "../../shared/time.ts";
import { writeWhen } from "../../shared/words/write-when.ts";

const WHY: Readonly<Record<ServingWhy, string>> = {
  "freezes badly": "freezes badly, so it goes first",
  "first expired": "first to expire",
  "oldest frozen": "longest in the freezer",
  pinned: "pinned by you",
};

/** Why these portions and no others, in a few words. `lot` is where they are now. */
export function sayWhy(serving: Serving, lot: Lot): string {
  if (serving.why === "first expired" && serving.from === "thawing") {
    return "thawed, so it goes first";
  }
  if (serving.why === "oldest frozen" && lot.place !== "freezer") return "no earlier meal takes it";
  return WHY[serving.why];
}

/** Where they come from and what is to be done for it: "from the fridge", "thaw Tue 13 Oct, 19:00". */
export function sayFrom(serving: Serving, lot: Lot, now: Instant, zone: string): string {
  if (serving.thawAt === null) {
    return serving.from === "thawing" ? "thawing in the fridge" : "from the fridge";
  }
  const when = isBefore(now, serving.thawAt) ? writeWhen(serving.thawAt, zone) : "now";
  return lot.place === "freezer" ? `thaw ${when}` : `freeze now, thaw ${when}`;
}
