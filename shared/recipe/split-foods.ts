import { numberAtStart } from "../words/read-number.ts";

const TO_TASTE_AT_END =
  /,? ?\(?(?:or )?(?:(?:to|for) taste|to season|for seasoning|as (?:needed|required|desired|necessary))\)?$/iu;
const SEASONING =
  /^(?:(?:sea|table|kosher|rock|flaky|fine|coarse|a little|some|freshly|ground|cracked|black|white|mixed|milled|fresh) )*(?:salt|pepper|peppercorns)$/iu;
const PINCH =
  /^(?:(?:an?|a good|a large|a small|a generous) )?pinch(?:es)? (?:each )?of (?:each )?/iu;
const AND = /,? ?(?:\band\b|&|\+) ?|, ?| ?\/ ?/iu;
/** "1 tsp each ground coriander and turmeric", "10 g each of dill and parsley". */
const EACH = /^([^,;()]{1,30}?) each(?: of)?:? (?=\p{L})/iu;
/** "Ground coriander and turmeric, 1 tsp each". */
const EACH_LAST = /^(\D{3,100}?)[,:] ([\d½¼¾][^,;()]{0,20}?) each$/iu;
const FOODS_MAX = 6;
const COLOUR = "red|green|yellow|orange|white|brown|black|purple";
/** "1 red and 1 yellow pepper, sliced". */
const COLOURS = new RegExp(
  `^(\\d{1,2}|[½¼¾]) (${COLOUR}) ?(?:,|and|&|\\+) ?(\\d{1,2}|[½¼¾]) (${COLOUR}) (.{3,200})$`,
  "iu",
);

/**
 * The ingredients that one line names: "salt & pepper to taste" is two of them, "1 tsp each cumin and
 * paprika" as well. Most lines name one, and come back as they are.
 */
export function splitFoods(text: string): readonly string[] {
  return ofEach(text) ?? ofColours(text) ?? seasonings(text) ?? [text];
}

function ofColours(text: string): readonly string[] | null {
  const match = COLOURS.exec(text);
  if (match === null) return null;
  const [, one, first, other, second, food] = match;
  return [`${one} ${first} ${food}`, `${other} ${second} ${food}`];
}

function ofEach(text: string): readonly string[] | null {
  const first = EACH.exec(text);
  if (first !== null && numberAtStart(first[1] ?? "").ok) {
    return withAmount(first[1] ?? "", text.slice(first[0].length));
  }
  const last = EACH_LAST.exec(text);
  return last === null ? null : withAmount(last[2] ?? "", last[1] ?? "");
}

function withAmount(amount: string, list: string): readonly string[] | null {
  // What stands after a bracket is about one of them: too much to take apart.
  const foods = /[();]|\bor\b/iu.test(list) ? [] : foodsIn(list);
  return foods.length < 2 ? null : foods.map((food) => `${amount} ${food}`);
}

function foodsIn(list: string): readonly string[] {
  const foods = list
    .split(AND)
    .map((food) => food.trim())
    .filter((food) => food !== "");
  return foods.length <= FOODS_MAX && foods.every((food) => food.split(" ").length <= 4)
    ? foods
    : [];
}

/** Salt, pepper and what stands with them, without an amount or by the pinch. */
function seasonings(text: string): readonly string[] | null {
  const end = TO_TASTE_AT_END.exec(text);
  const said = end === null ? text : text.slice(0, end.index);
  if (!/\b(?:salt|pepper)/iu.test(said) && end === null) return null;
  if (/[();]|\bor\b/iu.test(said)) return null;
  const pinch = PINCH.exec(said)?.[0] ?? "";
  const foods = foodsIn(said.slice(pinch.length));
  const isSeasoning = foods.some((food) => SEASONING.test(food));
  const isList = foods.length > 1 && (isSeasoning || /\band\b|&/iu.test(said));
  if (!isList || foods.some((food) => /^[\d½¼¾⅓⅔⅛]/u.test(food))) return null;
  // "Salt, to season the pan" is one food and a use.
  if (end === null && !foods.every((food) => SEASONING.test(food))) return null;
  const taste = end === null ? "" : ", to taste";
  return foods.map((food) => `${pinch}${food}${taste}`);
}
