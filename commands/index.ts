import { batchAte } from "./batch/ate.ts";
import { batchCool } from "./batch/cool.ts";
import { batchCount } from "./batch/count.ts";
import { batchLabels } from "./batch/labels.ts";
import { batchLog } from "./batch/log.ts";
import { batchMove } from "./batch/move.ts";
import { foodAdd } from "./food/add.ts";
import { foodLook } from "./food/look.ts";
import { groupSetup } from "./group/setup.ts";
import { groupUndelivered } from "./group/undelivered.ts";
import { help } from "./help/help.ts";
import type { Command } from "./kit/command.ts";
import { me } from "./me/me.ts";
import { meals } from "./meals/meals.ts";
import { planClear, planOut, planSkip } from "./plan/leave-out.ts";
import { planPin } from "./plan/pin.ts";
import { planShow } from "./plan/show.ts";
import { recipeCard } from "./recipe/card.ts";
import { recipeDrafts } from "./recipe/drafts.ts";
import { recipeFile } from "./recipe/file.ts";
import { recipeFind } from "./recipe/find.ts";
import { recipeKeeping } from "./recipe/keeping.ts";
import { recipePublish } from "./recipe/publish.ts";
import { recipeRevise } from "./recipe/revise.ts";
import { recipeWithdraw } from "./recipe/withdraw.ts";
import { reminders } from "./reminders/reminders.ts";
import { stock } from "./stock/stock.ts";
import { targetsClear } from "./targets/clear.ts";
import { targetsSet } from "./targets/set.ts";
import { targetsShow } from "./targets/show.ts";

/** Every command there is, written out. */
export const COMMANDS: readonly Command[] = [
  recipeCard,
  recipeFind,
  recipeFile,
  recipePublish,
  recipeDrafts,
  recipeRevise,
  recipeWithdraw,
  recipeKeeping,
  batchLog,
  batchAte,
  batchMove,
  batchCount,
  batchCool,
  batchLabels,
  stock,
  meals,
  planShow,
  planPin,
  planSkip,
  planOut,
  planClear,
  reminders,
  targetsSet,
  targetsShow,
  targetsClear,
  me,
  foodLook,
  foodAdd,
  groupSetup,
  groupUndelivered,
  help,
];
