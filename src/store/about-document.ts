import { z } from "zod";
import { lotId, recipeId } from "../../shared/ids.ts";
import type { ReminderAbout } from "../../shared/reminder/types.ts";

/** What a reminder's column says of what it is about; read and written as the other documents are. */
export const aboutDocument = z
  .object({
    lotId: z.string().transform(lotId).nullable(),
    title: z.string(),
    portions: z.number(),
    date: z.string().nullable(),
    meal: z.string().nullable(),
    mealAt: z.string().nullable(),
    // Not there in reminders of portions.
    news: z
      .object({
        recipeId: z.string().transform(recipeId),
        revision: z.number(),
        grave: z.array(z.string()).readonly(),
        changes: z.array(z.string()).readonly(),
      })
      .readonly()
      .nullable()
      .optional(),
  })
  .readonly() satisfies z.ZodType<ReminderAbout>;
