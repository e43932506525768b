/** A value of JSON (RFC 8259). */
export type JsonValue =
  | null
  | boolean
  | number
  | string
  | readonly JsonValue[]
  | { readonly [key: string]: JsonValue };

export type JsonObject = { readonly [key: string]: JsonValue };

/** Limits of a document: more is refused before any of it is read. */
export const JSON_LD_LIMITS = { chars: 100_000, depth: 40, values: 5_000, names: 8 } as const;

/** Why a document gives no recipe. */
export type JsonLdProblem =
  | { readonly code: "json too long"; readonly chars: number; readonly max: number }
  | { readonly code: "not json" }
  | { readonly code: "json too deep"; readonly max: number }
  | { readonly code: "json too big"; readonly max: number }
  | { readonly code: "no recipe" }
  /** At most `JSON_LD_LIMITS.names` names, shortened; one without a name is "". */
  | {
      readonly code: "several recipes";
      readonly names: readonly string[];
      readonly recipes: number;
    }
  | { readonly code: "recipe without name" };

/** What of a document did not become part of the recipe as it stood. */
export type JsonLdRemark =
  /** Figures are worked out from the foods, never taken over. */
  | { readonly code: "nutrition ignored" }
  | { readonly code: "times as note" }
  /** Its parts and its list of ingredients are not the same lines; the list was taken. */
  | { readonly code: "parts ignored" }
  | { readonly code: "tags cut"; readonly max: number }
  /** Properties that a recipe here has no place for, shortened. */
  | { readonly code: "left out"; readonly properties: readonly string[] };
