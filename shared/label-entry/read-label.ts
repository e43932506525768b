import type { LabelStyle } from "../label/types.ts";
import { fail, type Outcome, ok } from "../outcome.ts";
import type { LabelField, LabelProblem } from "./problems.ts";
import { readAllergens } from "./read-allergens.ts";
import { readEnergy } from "./read-energy.ts";
import { readMass } from "./read-figure.ts";
import { readAlcohol, readDensity, readOneWeight } from "./read-measures.ts";
import { readPer } from "./read-per.ts";
import { readSalt } from "./read-salt.ts";
import type { Label, LabelBasis } from "./types.ts";

/** A label as typed from the pack, every box as text; what the pack does not state is left out. */
export interface TypedLabel {
  readonly per: string;
  readonly energy: string;
  readonly protein: string;
  readonly fat: string;
  readonly carbohydrate: string;
  readonly saturates?: string | undefined;
  readonly fibre?: string | undefined;
  readonly sugars?: string | undefined;
  readonly salt?: string | undefined;
  readonly alcohol?: string | undefined;
  readonly density?: string | undefined;
  readonly one?: string | undefined;
  readonly allergens?: string | undefined;
  readonly mayHide?: string | undefined;
}

/** Keeps every problem, so that all of them are said at once. */
class Reader {
  readonly problems: LabelProblem[] = [];

  /** The value, or null after noting the problem. */
  take<T>(outcome: Outcome<T, LabelProblem>): T | null {
    if (outcome.ok) return outcome.value;
    this.problems.push(outcome.problem);
    return null;
  }

  optional<T>(
    text: string | undefined,
    read: (text: string) => Outcome<T, LabelProblem>,
  ): T | null {
    return text === undefined ? null : this.take(read(text));
  }
}

/**
 * Reads a typed label: all that cannot be read at once, else the label with what rounding hides. A label
 * by volume needs a density, since foods are kept per 100 g: typed, or from a serving that has both.
 */
export function readLabel(
  typed: TypedLabel,
  style: LabelStyle,
): Outcome<Label, readonly LabelProblem[]> {
  const reader = new Reader();
  const mass = (field: LabelField) => (text: string) => readMass(text, field, style);
  const basis = reader.take(readPer(typed.per, style));
  const energy = reader.take(readEnergy(typed.energy, style));
  const proteinG = reader.take(mass("protein")(typed.protein));
  const fatG = reader.take(mass("fat")(typed.fat));
  const carbohydrateG = reader.take(mass("carbohydrate")(typed.carbohydrate));
  const saturatesG = reader.optional(typed.saturates, mass("saturates"));
  const fibreG = reader.optional(typed.fibre, mass("fibre"));
  const sugarsG = reader.optional(typed.sugars, mass("sugars"));
  const salt = reader.optional(typed.salt, (text) => readSalt(text, style));
  const density = reader.optional(typed.density, (text) => readDensity(text, style));
  const one = reader.optional(typed.one, readOneWeight);
  const allergens = reader.optional(typed.allergens, readAllergens);
  const mayHide = reader.optional(typed.mayHide, readAllergens);
  const densityGPerMl = density ?? basis?.densityGPerMl ?? null;
  const basisG = basis === null ? null : gramsOf(basis, densityGPerMl);
  // A density that cannot be read has been said already.
  if (basis !== null && basisG === null && typed.density === undefined) {
    reader.problems.push({ code: "density needed" });
  }
  const alcoholG = basis === null ? null : alcoholOf(reader, typed.alcohol, basis, densityGPerMl);
  if (
    reader.problems.length > 0 ||
    basis === null ||
    basisG === null ||
    energy === null ||
    proteinG === null ||
    fatG === null ||
    carbohydrateG === null
  ) {
    return fail(reader.problems);
  }
  return ok({
    style,
    basis,
    basisG,
    densityGPerMl,
    ...energy,
    proteinG,
    fatG,
    carbohydrateG,
    saturatesG,
    fibreG,
    sugarsG,
    saltG: salt?.saltG ?? null,
    sodiumMg: salt?.sodiumMg ?? null,
    alcoholG: alcoholG ?? 0,
    one,
    allergens,
    mayHide,
  });
}

function gramsOf({ amount, unit }: LabelBasis, densityGPerMl: number | null): number | null {
  if (unit === "g") return amount;
  return densityGPerMl === null ? null : amount * densityGPerMl;
}

function alcoholOf(
  reader: Reader,
  text: string | undefined,
  basis: LabelBasis,
  densityGPerMl: number | null,
): number | null {
  return reader.optional(text, (typed) => readAlcohol(typed, basis, densityGPerMl));
}
