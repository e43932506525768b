import { fail, type Outcome, ok } from "../outcome.ts";
import { readClosedWords, signsIn, wordsOf } from "./closed-words.ts";
import { VULNERABLE, type Vulnerable } from "./types.ts";

/** What can be wrong with who eats along, as typed. */
export type TableProblem = {
  readonly code: "people not understood";
  readonly texts: readonly string[];
};

const WORDS: Readonly<Record<Vulnerable, string>> = {
  pregnant: "pregnant|pregnancy|expecting|mother to be|mum to be|mom to be",
  "under five":
    "under five|under 5|under fives|below five|below 5|baby|infant|newborn|toddler|preschooler|small child|small children|young child|young children|little one",
  "over 65":
    "over 65|over sixty five|above 65|elderly|old people|older adult|old age|senior|pensioner|grandmother|grandfather|grandma|grandpa|grandparent|gran|nan",
  "weak immune system":
    "weak immune system|weak immune|weak immunity|weakened immune system|weakened immunity|immune system|immunocompromised|immunosuppressed|immune suppressed|immune compromised|chemo|chemotherapy|cancer|cancer treatment|transplant|hiv|aids",
};

const PHRASES: ReadonlyMap<string, Vulnerable> = new Map(
  VULNERABLE.flatMap((one) => WORDS[one].split("|").map((phrase) => [phrase, one] as const)),
);

const FILLERS: ReadonlySet<string> = new Set(
  "a an and am also at child children daughter dad eat eating eats father girlfriend has have i im in is lives me mother mum mom my of old on one our partner people person sister brother somebody someone son table the us we wife with woman year years".split(
    " ",
  ),
);

const NOBODY: ReadonlySet<string> = new Set([
  "nobody",
  "no one",
  "none",
  "no",
  "nobody else",
  "just me",
  "only me",
  "me",
]);

/**
 * Reads who of the vulnerable eats along: "pregnant, under five", "toddler and grandma", "nobody". All of
 * it is understood or none of it is. An age ("aged 3", "70", "18 months") counts as the group it is in.
 */
export function readTable(text: string): Outcome<readonly Vulnerable[], TableProblem> {
  const words = wordsOf(text);
  const signs = signsIn(text);
  if (signs.length === 0 && NOBODY.has(words.join(" "))) return ok([]);
  const typed = [agesAsGroups(words.join(" ")), ...signs].join(" ");
  const { found, notUnderstood } = readClosedWords(typed, {
    phrases: PHRASES,
    fillers: FILLERS,
  });
  if (notUnderstood.length > 0 || found.length === 0) {
    const texts = notUnderstood.length > 0 ? notUnderstood : [text.trim().slice(0, 40)];
    return fail({ code: "people not understood", texts });
  }
  return ok(VULNERABLE.filter((one) => found.some(({ meaning }) => meaning === one)));
}

/** "aged 3" and "18 months" as "under five", "70 years old" as "over 65"; other ages stay and are asked about. */
function agesAsGroups(text: string): string {
  return text
    .replace(/\b(\d{1,2}) ?(?:months?|mo|weeks?)\b/gu, "baby")
    .replace(
      /\b(?<!(?:under|below|over|above) )(?:aged? )?(\d{1,3})(?: ?(?:years?|yr|yrs))?\b/gu,
      (all, age: string) => {
        if (Number(age) < 5) return "under five";
        return Number(age) >= 65 && Number(age) < 120 ? "over 65" : all;
      },
    );
}
