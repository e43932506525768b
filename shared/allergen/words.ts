import type { Allergen } from "../food/types.ts";

/** What must be said beside a word that was taken for more, or for another thing, than it says. */
export type WordNote =
  /** "nuts" was taken for tree nuts and peanut, which is a pulse. */
  | "nuts with peanut"
  /** "tree nuts" leaves out peanut. */
  | "tree nuts alone"
  /** "shellfish" was taken for crustaceans and molluscs. */
  | "shellfish are two"
  /** "seafood" was taken for fish, crustaceans and molluscs. */
  | "seafood is three"
  /** "lactose" was taken for milk; lactose-free milk still counts. */
  | "lactose is milk"
  /** "gluten" takes in wheat, barley, rye and oats. */
  | "gluten and oats"
  /** "wheat" leaves out barley, rye and oats. */
  | "wheat alone"
  /** One kind ("almonds") was taken for the whole group. */
  | "whole group";

/** What a word means. Words of one meaning share one value, so that a slip between them decides nothing. */
export interface AllergenWord {
  readonly allergens: readonly Allergen[];
  readonly note: WordNote | null;
}

/** Every word and phrase, in the singular and folded, by what it means. */
const MEANINGS: readonly (AllergenWord & { readonly phrases: string })[] = [
  {
    phrases: "milk|dairy|cow milk|milk protein|goat milk|sheep milk|buttermilk",
    allergens: ["milk"],
    note: null,
  },
  {
    phrases: "cheese|chees|butter|ghee|cream|yogurt|yoghurt|kefir|whey|casein|caseinate|quark",
    allergens: ["milk"],
    note: "whole group",
  },
  { phrases: "lactose", allergens: ["milk"], note: "lactose is milk" },
  { phrases: "egg|egg white|egg yolk|albumen|albumin", allergens: ["egg"], note: null },
  { phrases: "fish|finned fish", allergens: ["fish"], note: null },
  {
    phrases:
      "salmon|tuna|cod|haddock|pollock|hake|trout|mackerel|herring|sardine|anchovy|halibut|tilapia|sea bass|monkfish",
    allergens: ["fish"],
    note: "whole group",
  },
  { phrases: "crustacean|crustacea|crustacean shellfish", allergens: ["crustaceans"], note: null },
  {
    phrases: "prawn|shrimp|crab|lobster|crayfish|crawfish|langoustine|scampi|krill",
    allergens: ["crustaceans"],
    note: "whole group",
  },
  { phrases: "mollusc|mollusk|molluscan shellfish", allergens: ["molluscs"], note: null },
  {
    phrases:
      "clam|mussel|oyster|scallop|squid|calamari|octopus|cuttlefish|cockle|whelk|snail|abalone",
    allergens: ["molluscs"],
    note: "whole group",
  },
  {
    phrases: "shellfish|shell fish",
    allergens: ["crustaceans", "molluscs"],
    note: "shellfish are two",
  },
  {
    phrases: "seafood|sea food",
    allergens: ["fish", "crustaceans", "molluscs"],
    note: "seafood is three",
  },
  { phrases: "nut", allergens: ["tree nuts", "peanut"], note: "nuts with peanut" },
  { phrases: "tree nut|treenut", allergens: ["tree nuts"], note: "tree nuts alone" },
  {
    phrases:
      "almond|hazelnut|walnut|cashew|cashew nut|pecan|pecan nut|pistachio|pistachio nut|macadamia|macadamia nut|brazil nut|pine nut|filbert|marzipan|praline",
    allergens: ["tree nuts"],
    note: "whole group",
  },
  {
    phrases: "peanut|pea nut|peanut butter|groundnut|monkey nut|arachis",
    allergens: ["peanut"],
    note: null,
  },
  { phrases: "wheat", allergens: ["wheat"], note: "wheat alone" },
  {
    phrases: "spelt|kamut|durum|semolina|farro|einkorn|emmer|triticale",
    allergens: ["wheat", "gluten"],
    note: "whole group",
  },
  {
    phrases: "gluten|coeliac|celiac|coeliac disease|celiac disease|cereal containing gluten",
    allergens: ["gluten"],
    note: "gluten and oats",
  },
  { phrases: "barley|rye|oat", allergens: ["gluten"], note: "whole group" },
  { phrases: "soy|soya|soy bean|soya bean|soybean|soyabean", allergens: ["soy"], note: null },
  { phrases: "tofu|edamame|tempeh|miso", allergens: ["soy"], note: "whole group" },
  { phrases: "sesame|sesame seed|tahini|tahina|sesame oil", allergens: ["sesame"], note: null },
  { phrases: "celery|celeriac|celery salt", allergens: ["celery"], note: null },
  { phrases: "mustard|mustard seed", allergens: ["mustard"], note: null },
  {
    phrases: "sulphite|sulfite|sulphur dioxide|sulfur dioxide|so2|e220",
    allergens: ["sulphites"],
    note: null,
  },
  { phrases: "lupin|lupine|lupin flour|lupini", allergens: ["lupin"], note: null },
  // Made foods whose name is enough, for the table does not have them all.
  { phrases: "satay", allergens: ["peanut"], note: "whole group" },
  { phrases: "frangipane", allergens: ["tree nuts"], note: "whole group" },
  { phrases: "dukkah", allergens: ["tree nuts", "sesame"], note: "whole group" },
  { phrases: "halva|zaatar", allergens: ["sesame"], note: "whole group" },
  { phrases: "seitan|panko", allergens: ["wheat", "gluten"], note: "whole group" },
  { phrases: "malt|beer", allergens: ["gluten"], note: "whole group" },
  { phrases: "surimi", allergens: ["fish", "crustaceans"], note: "whole group" },
  { phrases: "aioli|mayonnaise|mayo|meringue", allergens: ["egg"], note: "whole group" },
];

/** Everything a member may type for an allergen, and every word of a food's name that gives one away. */
export const ALLERGEN_WORDS: ReadonlyMap<string, AllergenWord> = new Map(
  MEANINGS.flatMap(({ phrases, allergens, note }) => {
    const meaning: AllergenWord = { allergens, note };
    return phrases.split("|").map((phrase) => [phrase, meaning] as const);
  }),
);
