import type { Food } from "../food/types.ts";
import { foldWords } from "../words/fold.ts";
import { singular } from "../words/plural.ts";

const KINDS: readonly (readonly [pattern: RegExp, kind: string])[] = [
  [/\bturkey\b/u, "turkey"],
  [/\bchicken\b/u, "chicken"],
  [/\bduck\b/u, "duck"],
  [/\bveal\b/u, "veal"],
  [/\b(?:lamb|mutton|hogget)\b/u, "lamb"],
  [/\bbison\b/u, "bison"],
  [/\b(?:venison|deer)\b/u, "venison"],
  [/\b(?:pork|bacon|ham|gammon|italian sausage)\b/u, "pork"],
  [/\b(?:beef|steak|brisket|sirloin|flank|rump|topside|chuck|ox)\b/u, "beef"],
];

/** What a raw food is the flesh of ("chicken", "fish", "shellfish"); null for anything else. */
export function fleshKind(food: Food): string | null {
  if (food.state !== "raw") return null;
  switch (food.keepingClass) {
    case "raw-fish":
      return "fish";
    case "raw-shellfish":
      return "shellfish";
    case "raw-poultry":
    case "raw-meat":
    case "raw-minced-meat": {
      const name = foldWords(food.name);
      return KINDS.find(([pattern]) => pattern.test(name))?.[1] ?? "meat";
    }
    default:
      return null;
  }
}

/** Words of a name, in the singular, for comparing. */
export function wordsOfName(text: string): readonly string[] {
  return foldWords(text.slice(0, 200))
    .split(" ")
    .filter((word) => word !== "")
    .map(singular);
}
