import type { HeatMethod } from "./types.ts";

/** A place in a step where something happens to what is in the pot. */
export interface HeatWord {
  readonly at: number;
  readonly does: HeatMethod | "wet" | "join" | "apart" | "out" | "drain" | "off" | "absorbed";
}

/** "Spread the bake out": a dish, not an order. */
const NO_THING = "(?<!\\b(?:the|this|that|a|your|each|of) )";

/**
 * Words of the steps, as orders ("roast", "frying"), not as what a food is ("roasted peppers"). "wet": boiling
 * water is poured over. "join": what follows goes into the same pot; "apart": into another; "out": it leaves
 * the pot. "off": no heat any more.
 */
const WORDS: readonly (readonly [words: string, does: HeatWord["does"]])[] = [
  ["air[- ]?fry(?:ing)?", "air-fry"],
  ["deep[- ]?fry(?:ing)?", "deep-fry"],
  ["boiling(?:[- ]hot)? (?:water|stock|broth)|soak(?:ing)?", "wet"],
  [`${NO_THING}(?:roast(?:ing)?|bak(?:e|ing))`, "roast"],
  ["grill(?:ing)?|broil(?:ing)?|griddle|barbecu(?:e|ing)|chargrill", "grill"],
  ["(?:pan[- ]|stir[- ]|shallow[- ])?fry(?:ing)?|saut[eé](?:ing|eing)?|sear(?:ing)?|brown", "fry"],
  ["soften|sweat", "fry"],
  [
    `${NO_THING}(?:brais(?:e|ing)|stew(?:ing)?|casserole)|simmer(?:ing)?|(?:pressure|slow)[- ]cook(?:er|ing)?|bubble`,
    "braise",
  ],
  ["boil(?:ing)?|blanch(?:ing)?|parboil", "boil"],
  ["steam(?:ing)?", "steam"],
  ["poach(?:ing)?", "poach"],
  ["microwave", "microwave"],
  ["cook(?:ing)?|heat(?! (?:the |an? |your )?(?:oven|grill|fryer))|warm|melt|toast", "cook"],
  ["add|stir in|stir through|return|pour|tip|lay|put|scatter|fold|nestle|throw in|sit", "join"],
  [
    "mix|toss|rub|coat|season|combine|whisk|beat|marinate|meanwhile|for the|in (?:a|an)other",
    "apart",
  ],
  ["drain(?! (?:off )?(?:the |any |all |excess |away )*(?:fat|oil|grease))", "drain"],
  [
    "until (?:all |the |all the )*(?:water|liquid|stock|broth)(?: (?:is|has|have|been))*",
    "absorbed",
  ],
  ["(?:remove|take out|lift out)(?! (?:the )?(?:lid|foil|cover))|set aside", "out"],
  ["stand|rest|cool|chill|refrigerate|freeze|leave|serve|box|divide", "off"],
];
const PATTERN = new RegExp(
  `(?<![\\p{L}-])(?:${WORDS.map(([words]) => `(${words})`).join("|")})(?![\\p{L}])`,
  "giu",
);

/** Things named after a method: no heat comes from the words "baking tray". Off the heat is not out of the pot. */
const THINGS =
  /\b(?:remove|take)(?: it| them| the [a-z]{1,12})? (?:from|off) (?:the )?(?:heat|oven|hob|stove)\b|\b(?:roasting|baking|frying|grill|griddle|cooking|steaming|boil|boiling|oven) (?:tins?|trays?|sheets?|dish(?:es)?|pans?|racks?|powder|paper|parchment|soda|pots?|bags?|basket|time)\b|\bmedium heat\b|\b(?:low|high|gentle|the|a|direct|residual) heat\b|\bfor frying\b/giu;

/** Words of heat in a sentence, in order. */
export function heatWords(sentence: string): readonly HeatWord[] {
  const blanked = sentence.replace(THINGS, (thing) => " ".repeat(thing.length));
  return [...blanked.matchAll(PATTERN)].flatMap((match) => {
    const which = match.slice(1).findIndex((group) => group !== undefined);
    const does = WORDS[which]?.[1];
    return does === undefined ? [] : [{ at: match.index, does }];
  });
}
