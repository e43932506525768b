import type { Component, Line, Recipe } from "../recipe/types.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

/** Where a text names lines of a recipe. */
export interface Mentions {
  /** Keys of all lines. */
  readonly keys: readonly string[];
  readonly in: (
    text: string,
  ) => readonly { readonly at: number; readonly keys: readonly string[] }[];
}

/** Words that steps use for foods of a kind. */
const KIND_WORDS: readonly (readonly [pattern: RegExp, words: readonly string[]])[] = [
  [/\b(?:chicken|turkey|duck)\b/u, ["poultry", "meat", "bird"]],
  [/\b(?:beef|pork|lamb|veal|steak|venison|brisket|bison)\b/u, ["meat"]],
  [/\b(?:mince|minced|ground (?:beef|pork|lamb|turkey|chicken))\b/u, ["mince", "meat"]],
  [/\b(?:patt(?:y|ies)|burgers?|meatballs?)\b/u, ["patty", "burger", "meatball"]],
  [/\b(?:cod|salmon|haddock|tilapia|trout|tuna|mackerel|pollock|bass|snapper)\b/u, ["fish"]],
  [/\b(?:shrimps?|prawns?)\b/u, ["prawn", "shrimp"]],
  [/\b(?:basmati|jasmine|arborio)\b/u, ["rice"]],
  [/\b(?:rice|quinoa|bulgur|barley|couscous|millet|spelt)\b/u, ["grain"]],
  [/\b(?:spaghetti|penne|fusilli|macaroni|linguine|tagliatelle|orzo|rigatoni)\b/u, ["pasta"]],
  [/\b(?:lentils?|chick ?peas?|beans?)\b/u, ["pulse"]],
  [/\b(?:oats|oatmeal)\b/u, ["porridge", "oat"]],
  [/\b(?:stock|broth|bouillon)\b/u, ["stock", "broth"]],
  [/\b(?:wine|beer|cider|brandy|sherry)\b/u, ["alcohol"]],
];
const EVERYTHING = /\b(?:everything|all (?:of )?the ingredients|all ingredients|the lot)\b/gu;

/** Collects the words by which the steps of a recipe may call each of its lines. */
export function mentionsOf(recipe: Recipe): Mentions {
  const byWord = new Map<string, Set<string>>();
  const keys: string[] = [];
  for (const component of recipe.components) {
    for (const line of component.lines) {
      keys.push(line.key);
      for (const word of [...wordsOfLine(line), ...wordsOfPart(component, recipe)]) {
        byWord.set(word, (byWord.get(word) ?? new Set()).add(line.key));
      }
    }
  }
  return {
    keys,
    in: (text) => [
      ...[...text.matchAll(/\p{L}+/gu)].flatMap((match) => {
        const found = byWord.get(singular(match[0]));
        return found === undefined ? [] : [{ at: match.index, keys: [...found] }];
      }),
      ...[...text.matchAll(EVERYTHING)].map((match) => ({ at: match.index, keys })),
    ],
  };
}

function wordsOfLine({ main, swaps }: Line): readonly string[] {
  return [main, ...swaps].flatMap(({ foodText }) => {
    const text = foldWords(foodText.slice(0, 200));
    const words = text.split(" ").filter((word) => word !== "");
    const telling = words.filter((word) => tells(word) && tells(singular(word)));
    const kinds = KIND_WORDS.flatMap(([pattern, said]) => (pattern.test(text) ? said : []));
    return [...(telling.length > 0 ? telling : words).map(singular), ...kinds];
  });
}

/** Words of cut, state, size and grammar: they do not tell one line from another. */
const TELLING_NOTHING = new Set(
  `a about an and any baby big block boneless boned bottom bulb bunch can canned chopped clove cold cooked
  cooking crushed cube cubed cut diced dried drained dry each extra fat fatty fillet fine finely firm for free
  fresh freshly frozen full green grated ground half handful head hot in large lean leaf leftover light
  long low medium mild mince minced mixed of or organic other peeled piece plain ready red reduced ripe
  roughly salted short skin skinless skimmed slice sliced small soft stalk stick table the thick thin tin
  tinned to top unsalted warm weight white whole wholemeal with yellow free-range grain base part`
    .split(/\s+/u)
    .filter((word) => word !== ""),
);

function tells(word: string): boolean {
  return word.length > 1 && !TELLING_NOTHING.has(word) && !/^\d/u.test(word);
}

/** "Simmer the sauce": all lines of the part of that name. */
function wordsOfPart({ name }: Component, recipe: Recipe): readonly string[] {
  if (recipe.components.length === 1) return [];
  return foldWords(name.slice(0, 80)).split(" ").filter(tells).map(singular);
}
