import { byChart, whoseWord } from "../keeping/coach-word.ts";
import { bestBefore, daysLeftAfterThaw, discardBy, LEAST_DAYS_TO_THAW } from "../keeping/dates.ts";
import type { KeepingTime } from "../keeping/types.ts";
import { euGrams, euKcal, euSums } from "../label/eu.ts";
import type { LabelStyle } from "../label/types.ts";
import { usFigure } from "../label/us.ts";
import type { NutrientSums } from "../nutrition/types.ts";
import { writeCore } from "../quantity/temperature.ts";
import { writeGrams } from "../quantity/write-amount.ts";
import { readStep } from "../recipe/read-step.ts";
import type { Batch, Lot } from "../stock/types.ts";
import { daysBetween, type PlainDate } from "../time.ts";
import { count } from "../words/plural.ts";
import { writeDate } from "../words/write-when.ts";
import { allergenForms, type LabelAllergens } from "./allergen-line.ts";
import { printable } from "./printable.ts";
import type { LabelNote, LabelWords } from "./types.ts";

export interface LabelInput {
  readonly lot: Lot;
  readonly batch: Batch;
  readonly code: string;
  readonly style: LabelStyle;
  readonly allergens: LabelAllergens;
  /** Parts and foods of the recipe that were left out. */
  readonly without: readonly string[];
  /** The recipe's own sentences; empty where it has none. */
  readonly reheating: readonly string[];
  /** Portions that one label stands for. */
  readonly ticks: number;
}

/** Outside these no food's core is meant, but an oven or a fridge. */
const CORE_C = { least: 60, most: 100 };

/** The label of a lot as it is now; its dates hold as long as the lot stays where it is. */
export function labelWords(input: LabelInput): LabelWords {
  const { lot, batch, code, ticks } = input;
  const isFrozen = lot.place === "freezer";
  const last = isFrozen ? bestBefore(lot, batch.keeping) : discardBy(lot, batch.keeping);
  return {
    name: printable(batch.title).text,
    lead: isFrozen ? "Best before" : "Eat by",
    ...datesOf(lot, last),
    code,
    ticks,
    notes: [
      afterNote(lot, batch),
      cookedNote(lot, batch),
      ...(isFrozen ? [thawNote(lot, batch)] : []),
      portionNote(input),
      ...withoutNotes(input.without),
      { id: "allergens", forms: allergenForms(input.allergens) },
      ...reheatNotes(input.reheating),
    ],
  };
}

function datesOf(lot: Lot, last: PlainDate | null): Pick<LabelWords, "date" | "dateShort"> {
  if (last === null) return { date: "", dateShort: "" };
  if (lot.place !== "freezer") return { date: writeDate(last), dateShort: writeDate(last) };
  // The day of freezing stands below with its year: a day of the months after it is the only one of its kind.
  const isNear = daysBetween(lot.since, last) < 330;
  return { date: withYear(last), dateShort: isNear ? writeDate(last) : withYear(last) };
}

/** What stays in the freezer for months goes over the end of a year. */
function withYear(date: PlainDate): string {
  return `${writeDate(date)} ${date.year}`;
}

/** "14 Oct" */
function dayOf(date: PlainDate): string {
  return writeDate(date).split(" ").slice(1).join(" ");
}

/** What the date means: food in the fridge must go, frozen food has only lost of its taste. */
function afterNote({ place }: Lot, { keeping }: Batch): LabelNote {
  if (place === "freezer") {
    const forms = ["A date for quality: kept frozen it stays safe.", "A date for quality.", null];
    return { id: "after", forms };
  }
  const where = place === "thawing" ? "Thawing in the fridge" : "In the fridge";
  const forms = [`${where}; after this day throw it away.`, "Then throw away."];
  const longer = isCoachsWord(keeping) ? keeping.longer : null;
  if (longer === null) return { id: "after", forms: [...forms, null] };
  // Whoever else eats from the box must be able to see that its date is not the chart's.
  const chart = `chart: ${count(longer.chart.fridgeDays, "day")}`;
  return {
    id: "after",
    forms: forms.map((form) => `${form} By the coach's word; ${chart}.`),
  };
}

function isCoachsWord(keeping: KeepingTime): boolean {
  return whoseWord(keeping) === "coach";
}

function cookedNote(lot: Lot, batch: Batch): LabelNote {
  const cooked = `Cooked ${writeDate(batch.cookedOn)}`;
  if (lot.place === "freezer") {
    const cookedYear = batch.cookedOn.year === lot.since.year ? "" : ` ${batch.cookedOn.year}`;
    const short = `Cooked ${dayOf(batch.cookedOn)}, frozen ${dayOf(lot.since)} ${lot.since.year}`;
    return batch.cookedOn.equals(lot.since)
      ? { id: "cooked", forms: [`Cooked and frozen ${withYear(lot.since)}`, short] }
      : { id: "cooked", forms: [`${cooked}${cookedYear}, frozen ${withYear(lot.since)}`, short] };
  }
  if (lot.place === "thawing") {
    const short = `Cooked ${dayOf(batch.cookedOn)}, thawing ${dayOf(lot.since)}`;
    return { id: "cooked", forms: [`${cooked}, thawing since ${writeDate(lot.since)}`, short] };
  }
  return { id: "cooked", forms: [cooked] };
}

/** What a box from the freezer needs to know when its place changes and nobody prints. */
function thawNote(lot: Lot, batch: Batch): LabelNote {
  const days = daysLeftAfterThaw(lot.usedDays, batch.keeping);
  if (days < LEAST_DAYS_TO_THAW) {
    return {
      id: "thaw",
      forms: ["Do not thaw first: heat straight from frozen.", "Heat straight from frozen."],
    };
  }
  const byCharts = isCoachsWord(batch.keeping)
    ? ` Coach's word; chart: ${count(Math.max(0, daysLeftAfterThaw(lot.usedDays, byChart(batch.keeping))), "day")}.`
    : "";
  const forms = [
    `Into the fridge to thaw on ____________: eat within ${days} days, that day counted.`,
    `In the fridge to thaw: eat within ${days} days, that day counted.`,
    `Eat by thawing day + ${count(days - 1, "day")}.`,
  ];
  return { id: "thaw", forms: forms.map((form) => `${form}${byCharts}`) };
}

function portionNote({ batch, style }: LabelInput): LabelNote {
  const word = printable(batch.portionWord).text;
  const about = batch.cookedWeightG === null ? "about " : "";
  const weight = `${about}${writeGrams(batch.portionG)}`;
  const { energy, protein, rest } = figuresOf(batch.perPortion, style);
  const listed = (figures: readonly string[]) =>
    figures.filter((figure) => figure !== "").join(", ");
  const all = listed([weight, energy, protein]);
  const fullest = listed([weight, energy, protein, ...rest]);
  const lead = word === "" || word.length > 24 ? "One portion" : `One ${word}`;
  const short = energy === "" ? weight : `${weight}, ${energy}`;
  const forms = [
    ...new Set([`${lead}: ${fullest}`, `${lead}: ${all}`, capital(all), capital(short)]),
  ];
  return { id: "portion", forms: [...forms, null] };
}

function withoutNotes(names: readonly string[]): readonly LabelNote[] {
  const printed = names.map((name) => printable(name).text).filter((name) => name !== "");
  if (names.length === 0) return [];
  const counted = `${count(names.length, "part")} left out.`;
  const forms = printed.length === names.length ? [`Without ${printed.join(", ")}.`] : [];
  return [{ id: "without", forms: [...forms, counted, null] }];
}

/** Figures of a portion as the group's style prints them; empty where not known. */
function figuresOf(
  sums: NutrientSums,
  style: LabelStyle,
): { readonly energy: string; readonly protein: string; readonly rest: readonly string[] } {
  const eu = euSums(sums);
  const [fat, carbohydrate] =
    style === "us"
      ? [usFigure(sums, "fatG").text, usFigure(sums, "carbohydrateG").text]
      : [euGrams(eu, "fat"), euGrams(eu, "carbohydrate")];
  const energy = style === "us" ? usFigure(sums, "energyKcal").text : euKcal(eu);
  const protein = style === "us" ? usFigure(sums, "proteinG").text : euGrams(eu, "protein");
  const known = (figure: string, lead: string) => (/\d/u.test(figure) ? `${lead}${figure}` : "");
  return {
    energy: known(energy, ""),
    protein: known(protein, "protein "),
    rest: [known(fat, "fat "), known(carbohydrate, "carbohydrate ")],
  };
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** The recipe's own words whole, else the temperature that they name: never a sentence cut in two. */
function reheatNotes(reheating: readonly string[]): readonly LabelNote[] {
  const whole = reheating.join(" ");
  const { text, isWhole } = printable(whole);
  const core = readStep(whole.slice(0, 2_000)).temperaturesC.filter(
    (celsius) => celsius >= CORE_C.least && celsius <= CORE_C.most,
  );
  const forms = [
    ...(text !== "" && isWhole ? [`Reheat: ${text}`] : []),
    ...(core.length === 0 ? [] : [`Reheat to ${writeCore(Math.max(...core))} throughout.`]),
  ];
  return forms.length === 0 ? [] : [{ id: "reheat", forms: [...forms, null] }];
}
