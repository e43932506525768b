import { describe, expect, expectTypeOf, test } from "vitest";
import type { z } from "zod";
import type { KeepingTime } from "../../../shared/keeping/types.ts";
import type { NutrientSums } from "../../../shared/nutrition/types.ts";
import type { Recipe } from "../../../shared/recipe/types.ts";
import type { ReminderAbout, ReminderKind, ReminderState } from "../../../shared/reminder/types.ts";
import type { MovementKind, Place } from "../../../shared/stock/types.ts";
import { aboutDocument } from "../../../src/store/about-document.ts";
import {
  fromText,
  keepingDocument,
  type movementWord,
  type placeWord,
  recipeDocument,
  type reminderKindWord,
  type reminderStateWord,
  sumsDocument,
  toText,
} from "../../../src/store/documents.ts";
import { keeping, noNutrients } from "../../kit/stock.ts";
import { recipe, reminder } from "./kit.ts";

describe("documents", () => {
  // Checked by the compiler: an added, dropped or retyped field of `shared/` is an error here.
  test("say neither more nor less than the types", () => {
    expectTypeOf<z.output<typeof recipeDocument>>().toEqualTypeOf<Recipe>();
    expectTypeOf<z.output<typeof keepingDocument>>().toEqualTypeOf<KeepingTime>();
    expectTypeOf<z.output<typeof sumsDocument>>().toEqualTypeOf<NutrientSums>();
    expectTypeOf<z.output<typeof aboutDocument>>().toEqualTypeOf<ReminderAbout>();
    expectTypeOf<z.output<typeof placeWord>>().toEqualTypeOf<Place>();
    expectTypeOf<z.output<typeof movementWord>>().toEqualTypeOf<MovementKind>();
    expectTypeOf<z.output<typeof reminderKindWord>>().toEqualTypeOf<ReminderKind>();
    expectTypeOf<z.output<typeof reminderStateWord>>().toEqualTypeOf<ReminderState>();
    expect(Object.keys(recipeDocument.parse(recipe())).toSorted()).toEqual(
      Object.keys(recipe()).toSorted(),
    );
  });

  test("come back as they were written", () => {
    const { about } = reminder("a");
    expect(fromText(recipeDocument, toText(recipeDocument, recipe()))).toEqual(recipe());
    expect(fromText(keepingDocument, toText(keepingDocument, keeping()))).toEqual(keeping());
    expect(fromText(sumsDocument, toText(sumsDocument, noNutrients()))).toEqual(noNutrients());
    expect(fromText(aboutDocument, toText(aboutDocument, about))).toEqual(about);
  });

  test("that could not be read back are not written", () => {
    const broken = recipe({ yieldG: Number.NaN });
    expect(() => toText(recipeDocument, broken)).toThrow("yieldG");
    expect(() => toText(recipeDocument, recipe({ portions: Infinity }))).toThrow("portions");
  });

  test("of recipes published before uptake was kept still read: all of every line is eaten", () => {
    const old = JSON.parse(toText(recipeDocument, recipe()), (key, value: unknown) =>
      key === "uptake" || key === "tableGPerG" ? undefined : value,
    );
    const line = fromText(recipeDocument, JSON.stringify(old)).components[0]?.lines[0];
    expect(line?.main).toMatchObject({ uptake: 1, tableGPerG: 1 });
    expect(line?.swaps[0]).toMatchObject({ uptake: 1, tableGPerG: 1 });
  });

  test("that were altered are refused on the way out", () => {
    const text = JSON.stringify({ ...keeping(), freezes: "perhaps" });
    expect(() => fromText(keepingDocument, text)).toThrow("freezes");
    expect(() => fromText(aboutDocument, "{")).toThrow();
  });
});
