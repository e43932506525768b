import type { ShareOutside } from "../../shared/target/floors.ts";
import type {
  DayProblem,
  EnergyOf,
  FigureProblem,
  FromProblem,
  TargetProblem,
} from "../../shared/target/problems.ts";
import { TARGET_NAMES, writeKcal, writeTargetFigure } from "../../shared/target/write.ts";
import { writeWeekdays } from "./target-rows.ts";

const EXAMPLE = {
  energyKcal: "2100 kcal or 8800 kJ",
  proteinG: "120 g",
  fatG: "70 g",
  carbohydrateG: "230 g",
  fibreG: "30 g",
} as const;

/** Below this an energy is rather a point taken for a thousands mark: "1.500". */
const SLIP_BELOW_KCAL = 100;

export const REFERRAL =
  "So little needs licensed care: please speak with a doctor or a registered dietitian before you eat by it.";

export const FOR_HEALTHY_ADULTS =
  "Targets here are for healthy adults. With pregnancy or breastfeeding, under 18, after an eating disorder, with diabetes, kidney disease or another illness that bears on food, let a doctor or registered dietitian set them.";

/** One sentence about a figure as typed: what was wrong, and what to type instead. */
export function sayFigureProblem(problem: FigureProblem): string {
  const name = TARGET_NAMES[problem.key];
  const example = EXAMPLE[problem.key];
  switch (problem.code) {
    case "figure not understood":
      return `“${problem.text}” is not a day's ${name} I understand: type such as ${example}, or none to take it away.`;
    case "figure is a range":
      return `“${problem.text}” is a range: type one figure for ${name}, such as ${example}.`;
    case "figure out of range":
      return sayOutOfRange(problem);
  }
}

function sayOutOfRange(
  problem: Extract<FigureProblem, { readonly code: "figure out of range" }>,
): string {
  const { key, value, min, max } = problem;
  if (key === "energyKcal") {
    return `${writeKcal(value)} a day is more than ${writeKcal(max)}: check the figure, and write kJ behind it if it is in kilojoules, such as 8800 kJ.`;
  }
  return `${writeTargetFigure(key, value)} of ${TARGET_NAMES[key]} a day is outside ${min} to ${max} g: check the figure. If it is meant so, a registered dietitian should set it.`;
}

/** One sentence about the date from which targets are to hold. */
export function sayFromProblem(problem: FromProblem): string {
  switch (problem.code) {
    case "date not understood":
      return `“${problem.text}” is not a day I understand: type such as today, tomorrow, Mon, 1 Dec or 2027-01-04.`;
    case "date has passed":
      return `${problem.date} has passed, and past days stay as they were: type today or a later day, with its year if it is the next one.`;
    case "date too far ahead":
      return `That is more than ${problem.maxDays} days ahead: type an earlier day.`;
  }
}

/** Sentences about a day's figures; nothing was written. */
export function sayTargetProblem(problem: TargetProblem): readonly string[] {
  const days = writeWeekdays(problem.weekdays);
  const when = days === "every day" ? "" : ` (${days})`;
  return [...sayDay(problem, when), "Nothing was changed."];
}

function sayDay(problem: DayProblem, when: string): readonly string[] {
  switch (problem.code) {
    case "below every floor":
      return [
        `${lowEnergy(problem.energyKcal, problem.of)}${when} is below 1,200 kcal a day, and no target under that is taken here for anybody.`,
        REFERRAL,
        ...(problem.energyKcal < SLIP_BELOW_KCAL
          ? ["If you meant thousands, write them as 2100 or 2,100."]
          : []),
      ];
    case "below the floor of men":
      return [
        `${lowEnergy(problem.energyKcal, problem.of)}${when} is below 1,500 kcal a day, the floor for men without licensed care.`,
        "For women it is 1,200 kcal: if that is yours, add floor:1200 (women). If not, please speak with a doctor or a registered dietitian first.",
      ];
    default:
      return [sayContradiction(problem, when)];
  }
}

/** Rounded down, so that 1,199.9 does not read as the floor itself. */
function lowEnergy(kcal: number, of: EnergyOf): string {
  const figure = writeKcal(Math.floor(kcal));
  return of === "energy"
    ? figure
    : `Protein, fat and carbohydrate together come to ${figure}, which`;
}

function sayContradiction(
  problem: Exclude<DayProblem, { readonly code: "below every floor" | "below the floor of men" }>,
  when: string,
): string {
  switch (problem.code) {
    case "energy too high":
      return `Protein, fat and carbohydrate together come to ${writeKcal(problem.energyKcal)}${when}, more than ${writeKcal(problem.maxKcal)} a day: check them.`;
    case "macronutrients above energy":
      return `The macronutrients come to ${writeKcal(problem.macroKcal)}${when}, more than the energy of ${writeKcal(problem.energyKcal)}; what was set before counts too. Set them to fit, or take one away, such as carbohydrate:none.`;
    case "macronutrients below energy":
      return `Protein, fat and carbohydrate come to only ${writeKcal(problem.macroKcal)}${when}, less than the energy of ${writeKcal(problem.energyKcal)}; what was set before counts too. Set them to fit, or take one away, such as carbohydrate:none.`;
    case "fibre above carbohydrate":
      return `Fibre (${writeTargetFigure("fibreG", problem.fibreG)}) is part of the carbohydrate (${writeTargetFigure("carbohydrateG", problem.carbohydrateG)})${when} and cannot be more: change one of them.`;
  }
}

/** A word about a macronutrient whose share lies outside the published range. */
export function sayShare({ key, sharePct, minPct, maxPct }: ShareOutside): string {
  const name = TARGET_NAMES[key];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} gives ${Math.round(sharePct)} % of the energy; the range published for adults is ${minPct} to ${maxPct} %.`;
}
