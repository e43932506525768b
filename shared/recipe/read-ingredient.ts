import { fail, type Outcome, ok } from "../outcome.ts";
import type { AmountProblem } from "../quantity/problems.ts";
import { type ReadAmount, readAmount } from "../quantity/read-amount.ts";
import type { Amount } from "../quantity/types.ts";
import { massUnitG, volumeUnitMl } from "../quantity/unit.ts";
import { excerpt } from "../words/problems.ts";
import { foodWords } from "./food-words.ts";
import type { RecipeProblem } from "./problems.ts";

/** One way to fill a line, as read from its text; no food looked up yet. */
export interface ReadChoice {
  readonly amount: Amount | null;
  /** What the line itself says it weighs or holds in all; null where it does not. */
  readonly stated: Amount | null;
  readonly foodText: string;
  readonly preparation: string;
}

export interface ReadIngredient {
  readonly main: ReadChoice;
  readonly swaps: readonly ReadChoice[];
  readonly optional: boolean;
}

const SWAP = /[,;]? ?\(?(?:\bswaps?(?: for| with)? ?: ?|\bor (?:with )?(?=\d|[½¼¾⅓⅔⅛]|half ))/giu;
const OPTIONAL = /^optional ?[:–—-] ?|,? ?\(optional\)|, ?optional\b/giu;
const TO_TASTE =
  /,? ?\(?(?:or )?(?:(?:to|for) taste|to season|for seasoning|as (?:needed|required|desired|necessary))\b\)?/giu;
/** "Juice of 1 lemon", "grated zest of half an orange": the number is in the middle. */
const PART_OF =
  /^((?:finely |freshly )?(?:grated |squeezed )?(?:juice|zest|rind|peel)(?: and (?:juice|zest|rind|peel))?) (?:of|from) (?=[\d½¼¾]|half |an? |one |two |three )/iu;

/**
 * Reads an ingredient line without its bullet: amount, food, preparation after the first comma,
 * "(optional)", "to taste", and swaps ("or 25 g olive oil", "swap: firm tofu"). A swap without an
 * amount takes the measured amount of the line. `more` holds swaps written on lines of their own.
 */
export function readIngredient(
  text: string,
  line: number,
  more: readonly string[] = [],
): Outcome<ReadIngredient, RecipeProblem> {
  const said = [text, ...more];
  const optional = said.some((part) => part.search(OPTIONAL) !== -1);
  const [mainText, ...swapTexts] = said.flatMap((part) => piecesOf(part.replace(OPTIONAL, " ")));
  const main = readChoice(mainText ?? "", line);
  if (!main.ok) return main;
  const swaps: ReadChoice[] = [];
  for (const swapText of swapTexts) {
    if (swapText === "") continue;
    const swap = readChoice(swapText, line);
    if (!swap.ok) return swap;
    swaps.push({ ...swap.value, amount: swap.value.amount ?? measuredAmount(main.value) });
  }
  return ok({ main: withFoodOf(main.value, swaps[0]), swaps, optional });
}

const STATES = "fresh|dried|frozen|canned|tinned|raw|cooked|ground|small|medium|large";
const ONLY_STATE = new RegExp(`^(?:${STATES})$`, "iu");
const STATE_FIRST = new RegExp(`^(?:${STATES}) `, "iu");

/** "1 tbsp fresh or 1 tsp dried oregano": what it is stands with the swap alone. */
function withFoodOf(main: ReadChoice, swap: ReadChoice | undefined): ReadChoice {
  if (swap === undefined || !ONLY_STATE.test(main.foodText)) return main;
  return { ...main, foodText: `${main.foodText} ${swap.foodText.replace(STATE_FIRST, "")}` };
}

/** A line and the swaps in it. */
function piecesOf(text: string): readonly string[] {
  // "1 or 2 cloves" is a range, not a swap.
  const plain = text.trim().replace(/^(\d{1,4}|[½¼¾]) or (?=[\d½¼¾])/iu, "$1-");
  return plain.split(SWAP).map((piece) => piece.trim());
}

/** Whether a line says that its food goes in to taste, so that no amount is missing. */
export function saysToTaste(text: string): boolean {
  return text.search(TO_TASTE) !== -1;
}

/** Whether a line gives a swap for the one before: "or 25 g olive oil", "swap: firm tofu". */
export function isSwapLine(text: string): boolean {
  return text.search(SWAP) === 0;
}

/** The amount a swap may take over: a mass or a volume, not a count of something else. */
export function measuredAmount(main: ReadChoice): Amount | null {
  const amount = main.stated ?? main.amount;
  if (amount === null) return null;
  return massUnitG(amount.unit) === null && volumeUnitMl(amount.unit, "us") === null
    ? null
    : amount;
}

function readChoice(text: string, line: number): Outcome<ReadChoice, RecipeProblem> {
  const plain = balanced(text.replace(TO_TASTE, "").replace(/[,;.\s]+$/u, ""));
  const partOf = PART_OF.exec(plain);
  const read = amountOf(plain, partOf === null ? plain : plain.slice(partOf[0].length));
  if (!read.ok && !isAbsent(read.problem)) {
    return fail({ code: "amount wrong", line, text: excerpt(text), problem: read.problem });
  }
  const rest = read.ok ? read.value.rest : plain;
  const whole = read.ok && partOf !== null ? `${partOf[1]} of ${rest.trim()}` : rest;
  const { foodText, preparation } = foodWords(whole, read.ok);
  if (!/\p{L}/u.test(foodText)) return fail({ code: "ingredient empty", line });
  const amount = read.ok ? read.value.amount : null;
  return ok({
    amount,
    stated: read.ok ? read.value.stated : null,
    foodText:
      amount?.unit === "piece"
        ? foodText
        : foodText.replace(/^(?:can|tin)s? (?:of )?/iu, "canned "),
    preparation,
  });
}

/** The amount in front, else the one that ends the line. */
function amountOf(plain: string, front: string): Outcome<ReadAmount, AmountProblem> {
  const first = readAmount(front);
  return first.ok || !isAbsent(first.problem) ? first : (amountLast(plain) ?? first);
}

/** Nothing there looks like an amount, which is no fault. */
function isAbsent({ code }: AmountProblem): boolean {
  return code === "no number" || code === "not a number";
}

/** "Chicken thighs, 500 g": a measure that ends the line; null when it does not. */
export function amountLast(text: string): Outcome<ReadAmount, AmountProblem> | null {
  const match = /^(\D{2,200}?)[,:]? ([\d½¼¾][^,()]{0,20})$/u.exec(text);
  const read = match === null ? null : readAmount(match[2] ?? "");
  if (match === null || read === null || !read.ok) return read;
  const isMeasure = read.value.amount.unit !== "piece" && read.value.rest === "";
  return isMeasure ? ok({ ...read.value, rest: match[1] ?? "" }) : null;
}

/** Drops brackets that a split has left without their partner. */
function balanced(text: string): string {
  const opens = text.split("(").length;
  const closes = text.split(")").length;
  if (opens === closes) return text;
  return (opens > closes ? text.replace("(", "") : text.replace(")", "")).trim();
}
