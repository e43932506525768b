import { z } from "zod";
import {
  type Decided,
  type DecidedDays,
  decideTargets,
  type TypedFigures,
} from "../../shared/target/decide.ts";
import {
  dayEnergy,
  FLOOR_MEN_KCAL,
  FLOOR_WOMEN_KCAL,
  sharesOutside,
} from "../../shared/target/floors.ts";
import { readTargetFigure } from "../../shared/target/read-figure.ts";
import { readFromDate } from "../../shared/target/read-from.ts";
import { TARGET_KEYS, type TargetKey, type TargetRule } from "../../shared/target/types.ts";
import { TARGET_NAMES, writeTarget } from "../../shared/target/write.ts";
import type { PlainDate } from "../../shared/time.ts";
import { command, type Option, Refusal } from "../kit/command.ts";
import { optionalText, weekdaysText } from "../kit/options.ts";
import { type Reply, reply, text } from "../kit/reply.ts";
import { record } from "./record.ts";
import { sayByOf } from "./said-by.ts";
import {
  FOR_HEALTHY_ADULTS,
  sayFigureProblem,
  sayFromProblem,
  sayShare,
  sayTargetProblem,
} from "./say-target-problem.ts";
import { laterPart, type SayBy, weekPart, writeFrom, writeWeekdays } from "./target-rows.ts";
import { pregnancyAlert, type Whose, whoseTargets } from "./whose.ts";

const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];
const FLOORS = ["1500 (men)", "1200 (women)"] as const;

export const targetsSet = command({
  path: ["targets", "set"],
  description: "Set what a day of yours should hold; what you leave out stays as it is",
  who: "everyone",
  options: [
    figureOption("energy", "A day's energy, such as 2100 kcal or 8800 kJ; none takes it away"),
    figureOption("protein", "A day's protein, such as 120 g"),
    figureOption("fat", "A day's fat, such as 70 g"),
    figureOption("carbohydrate", "A day's carbohydrate, fibre included, such as 230 g"),
    figureOption("fibre", "A day's fibre, such as 30 g"),
    figureOption("days", "For which days, such as Mon-Fri or Sat Sun; every day if left out"),
    figureOption("from", "From when, such as tomorrow, Mon or 1 Dec; today if left out"),
    {
      name: "floor",
      description: "The least energy taken without licensed care that is yours",
      required: false,
      kind: "text",
      choices: FLOORS,
    },
    {
      name: "member",
      description: "For the coach: whose targets, if they let you",
      required: false,
      kind: "member",
    },
  ],
  input: z.object({
    energy: figureText("energyKcal"),
    protein: figureText("proteinG"),
    fat: figureText("fatG"),
    carbohydrate: figureText("carbohydrateG"),
    fibre: figureText("fibreG"),
    days: weekdaysText.default(EVERY_DAY),
    from: optionalText(80),
    floor: z.enum(FLOORS, { error: `Type floor:${FLOORS.join(" or floor:")}.` }).optional(),
    member: optionalText(100),
  }),
  handle: async (context, input) => {
    const whose = await whoseTargets(context, input.member);
    const typed = typedFigures(input);
    if (Object.keys(typed).length === 0) {
      throw new Refusal(
        "Say at least one figure, such as /targets set energy:2100 kcal protein:120 g.",
      );
    }
    const from = fromDate(input.from, whose);
    const before = await context.stores.targets.list(whose.member.id);
    const decided = decideTargets(before, {
      from,
      weekdays: input.days,
      typed,
      floorKcal: floorOf(input.floor),
    });
    if (!decided.ok) throw new Refusal(sayTargetProblem(decided.problem));
    const rules = await record(context, whose, before, decided.value.days);
    return setReply({
      whose,
      from,
      decided: decided.value,
      rules,
      sayBy: await sayByOf(context, whose, rules),
    });
  },
});

function figureOption(name: string, description: string): Option {
  return { name, description, required: false, kind: "text" };
}

/** A figure, or null for "none"; left out when it is not typed. */
function figureText(key: TargetKey) {
  return z
    .string({ error: `Type a figure for ${TARGET_NAMES[key]}.` })
    .transform((typed, checks): number | null => {
      const read = readTargetFigure(key, typed);
      if (read.ok) return read.value;
      checks.addIssue({ code: "custom", message: sayFigureProblem(read.problem) });
      return z.NEVER;
    })
    .optional();
}

type TypedInput = {
  readonly [Name in "energy" | "protein" | "fat" | "carbohydrate" | "fibre"]?:
    | number
    | null
    | undefined;
};

function typedFigures(input: TypedInput): TypedFigures {
  const values: Readonly<Record<TargetKey, number | null | undefined>> = {
    energyKcal: input.energy,
    proteinG: input.protein,
    fatG: input.fat,
    carbohydrateG: input.carbohydrate,
    fibreG: input.fibre,
  };
  const typed: Partial<Record<TargetKey, number | null>> = {};
  for (const key of TARGET_KEYS) {
    const value = values[key];
    if (value !== undefined) typed[key] = value;
  }
  return typed;
}

function fromDate(typed: string | undefined, { today }: Whose): PlainDate {
  if (typed === undefined) return today;
  const read = readFromDate(typed, today);
  if (!read.ok) throw new Refusal(sayFromProblem(read.problem));
  return read.value;
}

function floorOf(typed: (typeof FLOORS)[number] | undefined) {
  if (typed === undefined) return null;
  return typed === "1200 (women)" ? FLOOR_WOMEN_KCAL : FLOOR_MEN_KCAL;
}

interface SetTargets {
  readonly whose: Whose;
  readonly from: PlainDate;
  readonly decided: Decided;
  /** Every decision of the member, the new ones with them. */
  readonly rules: readonly TargetRule[];
  readonly sayBy: SayBy;
}

function setReply({ whose, from, decided, rules, sayBy }: SetTargets): Reply {
  const { member, isSelf, today } = whose;
  const { days } = decided;
  const what = isSelf ? "Targets" : `Targets of ${member.name}`;
  const said = notes(whose, decided);
  const [only, ...others] = days;
  const heading =
    only === undefined || others.length > 0
      ? `${what} from ${writeFrom(from, today)} are set; they differ by day.`
      : `${what}, ${writeWeekdays(only.weekdays)} from ${writeFrom(from, today)}: ${writeTarget(only.figures)}`;
  return reply(heading, {
    alerts: pregnancyAlert(whose),
    parts: [
      ...weekPart(rules, from, today, sayBy),
      ...laterPart(rules, from, today, sayBy),
      ...(said.length === 0 ? [] : [text(...said)]),
    ],
    cautions: [...shareCautions(days), FOR_HEALTHY_ADULTS],
  });
}

function notes({ member, isSelf }: Whose, { days, floorKcal }: Decided): readonly string[] {
  const isLow = days.some(({ figures }) => {
    const day = dayEnergy(figures);
    return day !== null && day.kcal < FLOOR_MEN_KCAL;
  });
  const kept = TARGET_KEYS.filter((key) => days.some((one) => one.kept.includes(key)));
  const names = kept.map((key) => TARGET_NAMES[key]).join(", ");
  return [
    ...(names === "" ? [] : [`Kept as before: ${names}. To take a figure away, type none for it.`]),
    ...(isLow && floorKcal === FLOOR_WOMEN_KCAL
      ? ["Taken on the floor for women, 1,200 kcal a day."]
      : []),
    ...(isSelf
      ? []
      : [`${member.name} sees in /targets show that you set this, and can change or clear it.`]),
  ];
}

function shareCautions(days: readonly DecidedDays[]): readonly string[] {
  return days.flatMap(({ figures, weekdays }) =>
    sharesOutside(figures).map((share) => {
      const when = days.length === 1 ? "" : `${writeWeekdays(weekdays)}: `;
      return `${when}${sayShare(share)}`;
    }),
  );
}
