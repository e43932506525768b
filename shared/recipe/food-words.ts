/** A line without its amount: what the food is, and what is done to it. */
export interface FoodWords {
  readonly foodText: string;
  readonly preparation: string;
}

/** "500 ml oil for deep frying": what it is for is no part of its name. */
const FOR_FRYING = /(?:, ?)? (for (?:deep|shallow)?[- ]?fr(?:y|ying)\b)/iu;
/** Where a name ends although no comma says so. "In oil" and "with skin" do not end it: they are the food. */
const CLAUSE =
  /(?<=[\p{L})]) ((?:(?:mixed|blended|whisked|stirred|tossed|dissolved|combined|mashed) (?:with|in|into|together)|(?:cut|torn|broken|chopped|sliced|diced|crushed|snapped|divided) (?:in|into|up|to|on)|(?:soaked|marinated|steeped) (?:in|for|over)|plus (?:extra|more|a )|to (?:serve|garnish|finish|decorate|coat|cover|dust|grease)|for (?:serving|garnish|garnishing|greasing|dusting|brushing|drizzling|the )|at room temp|if (?:needed|necessary|you |liked|using|desired)|made (?:up )?(?:from|with|using) |such as|from (?:a|the) (?:jar|can|tin|packet))\b.*)$/iu;
const PRICE = / ?\(?[£$€] ?\d{1,5}(?:[.,]\d{1,2})?(?: each)?\)?/gu;
/** "A handful of", "drizzle of": so much that nobody can tell how much. */
const SOME =
  /^((?:an? |some |the )?(?:(?:small|large|big|generous|good|little) )?(?:handful|drizzle|knob|splash|dash|glug|squeeze|sprinkle|sprinkling|grating|grind|twist|dollop|lick|few|bit|drop|sprig|spray|spritz|bunch)s?(?: (?:sprigs?|leaves|drops|twists|grinds))?) (?:of )?(?=\p{L})/iu;
/** Kinds of fat that a spray can is named by: "spray oil". */
const SPRAY = /^(?:spray|sprays) (?:oil|olive|of oil)\b/iu;

/**
 * Parts a line without its amount into the food, up to its first comma, and what is done to it, which
 * stands behind the comma, in brackets, or in a clause of its own ("mixed with water", "to serve").
 */
export function foodWords(text: string, hasAmount: boolean): FoodWords {
  const said = text.replace(PRICE, " ");
  const inBrackets = [...said.matchAll(/\(([^()]{1,200})\)/gu)].map((match) =>
    (match[1] ?? "").trim(),
  );
  const open = said
    .replace(/\([^()]{1,200}\)/gu, " ")
    .replace(/^ ?of /iu, "")
    .replace(/ {2,}/gu, " ")
    .trim();
  const [food = "", ...rest] = open
    .replace(FOR_FRYING, ", $1")
    .replace(CLAUSE, ", $1")
    .split(/,(?!(?<=\d,)\d) ?| [–—] |(?<=\p{L}): /u)
    .map((piece) => piece.trim());
  const some = hasAmount || SPRAY.test(food) ? null : SOME.exec(food);
  const foodText = some === null ? food : food.slice(some[0].length);
  const pieces = [...(some === null ? [] : [some[1] ?? ""]), ...inBrackets, ...rest];
  return { foodText, preparation: pieces.filter((piece) => piece !== "").join(", ") };
}
