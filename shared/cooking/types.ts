/** How heat gets into a food, as far as published yields tell methods apart. */
export const HEAT_METHODS = [
  "roast",
  "grill",
  "fry",
  "deep-fry",
  "air-fry",
  "microwave",
  "braise",
  "boil",
  "poach",
  "steam",
  /** Heated, and the text does not say how ("cook the chicken"). */
  "cook",
] as const;
export type HeatMethod = (typeof HEAT_METHODS)[number];

/** What the steps of a recipe do to one of its lines. */
export interface HowCooked {
  /** The method that goes on longest; null when no step that heats something names the line. */
  readonly method: HeatMethod | null;
  /** The method of the recipe as a whole, for a line that no step names; null when nothing is heated. */
  readonly otherwise: HeatMethod | null;
  /** Water or another liquid is around it at some time: boiled, steamed, braised, boiling water poured over. */
  readonly wet: boolean;
  /** What it was cooked in is poured off. */
  readonly drained: boolean;
  /** The steps say to cook it until the liquid is gone. */
  readonly untilAbsorbed: boolean;
  /** Heated for so many minutes in all, as far as the steps say. */
  readonly minutes: number;
  /** Keys of the lines that are in the same pot while it is wet, itself among them. */
  readonly pot: ReadonlySet<string>;
}

/** What no step touches, in a recipe that heats nothing. */
export const NOT_COOKED: HowCooked = {
  method: null,
  otherwise: null,
  wet: false,
  drained: false,
  untilAbsorbed: false,
  minutes: 0,
  pot: new Set(),
};

/** A published figure that a weight was worked out with, and where it stands. */
export interface Basis {
  readonly factor: number;
  readonly source: string;
}

/** What became of one line's weight in cooking. */
export type CookedLine = {
  readonly food: string;
  /** Grams that go in and are eaten; a line that is partly poured off counts with what is taken up. */
  readonly rawG: number;
  readonly cookedG: number;
} & (
  | { readonly code: "yield"; readonly basis: Basis }
  | { readonly code: "water taken up"; readonly basis: Basis }
  | { readonly code: "dry matter"; readonly basis: Basis }
  /** A liquid that gave water to the dry foods in it, or is poured off. */
  | { readonly code: "water given" }
  /** Cooked in a liquid that is eaten: what the meat loses stays in the pot. */
  | { readonly code: "juices stay" }
  | { readonly code: "not heated" }
  /** Oil, seasoning, herbs: nothing to lose that would show. */
  | { readonly code: "unchanged" }
  /** Heated, and no published factor: taken as unchanged. */
  | { readonly code: "no factor" }
);

/** An estimate of the whole cooked mass. */
export interface CookedMass {
  readonly grams: number;
  readonly lines: readonly CookedLine[];
  /** Water from the tap that dry foods took up beyond the recipe's own, grams. */
  readonly tapG: number;
  /** Cooking water of the recipe that is poured off or boils away, grams. */
  readonly goneG: number;
  /** Foods that were heated and have no published factor, taken as unchanged. */
  readonly noFactor: readonly string[];
}

/** Something that the figures of a recipe rest on; wording in `commands/`. */
export type CookingAssumption =
  /** Only this share of the line is eaten (0 to 1). */
  | { readonly code: "taken up"; readonly food: string; readonly share: number }
  /** Poured off, and nobody says how much: counted in full, so the figure is an upper bound. */
  | { readonly code: "counted in full"; readonly food: string }
  /** This share of the alcohol is left after cooking (0 to 1); its energy is lowered accordingly. */
  | { readonly code: "alcohol kept"; readonly food: string; readonly share: number }
  /** This share of the food's own sodium is left after boiling and draining (0 to 1). */
  | { readonly code: "sodium kept"; readonly food: string; readonly share: number }
  /** Written cooked and counted by the table's dry food, or the other way round: table grams per gram. */
  | { readonly code: "converted"; readonly food: string; readonly factor: number }
  /** Written as bought, and the table has no inedible share for it: counted in full, an upper bound. */
  | { readonly code: "refuse not known"; readonly food: string };
