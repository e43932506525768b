import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { RecipeId, RevisionId } from "../../shared/ids.ts";
import { resolvePart } from "../../shared/recipe/resolve-part.ts";
import type { ScaleRequest } from "../../shared/recipe/scale.ts";
import type { Tray } from "../../shared/recipe/tray.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import type { Instant } from "../../shared/time.ts";
import { Refusal } from "../kit/command.ts";
import { PRESS_ID_MAX, writePress } from "../kit/press.ts";

/** How amounts are shown: as the coach wrote them, or turned into grams, or into pounds and ounces. */
export type CardUnits = "as written" | "metric" | "us";

/** A card as it is asked for, with everything resolved against the recipe. */
export interface CardRequest {
  readonly by: ScaleRequest["by"];
  /** Names of the components and foods left out. */
  readonly without: readonly string[];
  readonly swaps: Readonly<Record<string, number>>;
  readonly units: CardUnits;
  /** The member's own tray; an oven's when not said. */
  readonly tray?: Tray | undefined;
  /** When the marinating starts; no clock times when not said. */
  readonly start?: Instant | undefined;
}

export const AS_WRITTEN: CardRequest = {
  by: { kind: "as written" },
  without: [],
  swaps: {},
  units: "as written",
};

const NONE = "-";
const STALE = "That button no longer fits the recipe: ask for the card again with /recipe card.";

/** What a request is carried to: the card itself, its parts, or the log of what was cooked by it. */
const PRESSES = {
  show: ["recipe card", "show"],
  steps: ["recipe card", "steps"],
  label: ["recipe card", "label"],
  log: ["batch log", "form"],
} as const;

/**
 * A button id that carries the request: whose it is, size, parts left out, swaps, units. Null when it
 * does not fit into the platform's 100 characters; the card then goes without that button.
 */
export function requestPress(
  action: keyof typeof PRESSES,
  id: RecipeId | RevisionId,
  recipe: Recipe,
  request: CardRequest,
): string | null {
  const args = [
    id,
    writeSize(recipe, request.by),
    listOr(request.without.map((name) => partRef(recipe, name))),
    listOr(Object.entries(request.swaps).map(([key, index]) => `${key}=${index}`)),
    request.units.slice(0, 1),
    ...writeExtras(request),
  ];
  const [command, press] = PRESSES[action];
  const length = [command, press, ...args].join("~").length;
  return length > PRESS_ID_MAX ? null : writePress(command, press, ...args);
}

function writeSize(recipe: Recipe, by: ScaleRequest["by"]): string {
  if (by.kind === "as written") return "w";
  if (by.kind === "portions") return `p${by.portions}`;
  if (by.kind === "fill") return `f${by.boxes}x${tenths(by.boxG)}`;
  const held = by.foods.map(({ grams, foodText }) => {
    const at = allChoices(recipe).find(({ choice }) => choice.foodText === foodText);
    return `${tenths(grams)}@${at?.ref ?? NONE}`;
  });
  return `h${held.join(",")}`;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** What few cards have; nothing where there is none, so that older buttons read the same. */
function writeExtras({ tray, start }: CardRequest): readonly string[] {
  const extras = [
    tray === undefined ? "" : `t${tenths(tray.widthCm)}x${tenths(tray.depthCm)}`,
    start === undefined ? "" : `s${Math.floor(start.epochMilliseconds / 60_000).toString(36)}`,
  ].filter((extra) => extra !== "");
  return extras.length === 0 ? [] : [extras.join(",")];
}

function listOr(list: readonly string[]): string {
  return list.length === 0 ? NONE : list.join(",");
}

/** "c1" for the second component, a line's key for a food. */
function partRef(recipe: Recipe, name: string): string {
  const component = recipe.components.findIndex((part) => part.name === name);
  if (component >= 0) return `c${component}`;
  const part = resolvePart(recipe, name);
  return part.ok ? (part.value.keys[0] ?? NONE) : NONE;
}

/** Every choice of the recipe with a reference: line key, then which choice of the line. */
function allChoices(
  recipe: Recipe,
): readonly { readonly ref: string; readonly choice: LineChoice }[] {
  return recipe.components.flatMap((part) =>
    part.lines.flatMap((line) =>
      [line.main, ...line.swaps].map((choice, index) => ({ ref: `${line.key}.${index}`, choice })),
    ),
  );
}

const HELD = "\\d{1,6}(?:\\.\\d)?@\\d{1,3}\\.\\d{1,3}\\.\\d{1,2}";
const SIZE = new RegExp(
  `^(?:w|p\\d{1,3}|f\\d{1,3}x\\d{1,5}(?:\\.\\d)?|h${HELD}(?:,${HELD}){0,11})$`,
  "u",
);
const argsSchema = z.tuple([
  z.string().regex(/^[\w-]{1,40}$/u),
  z.string().regex(SIZE),
  z.string().regex(/^(?:-|(?:c\d{1,2}|\d{1,3}\.\d{1,3})(?:,(?:c\d{1,2}|\d{1,3}\.\d{1,3}))*)$/u),
  z.string().regex(/^(?:-|\d{1,3}\.\d{1,3}=\d{1,2}(?:,\d{1,3}\.\d{1,3}=\d{1,2})*)$/u),
  z.enum(["a", "m", "u"]),
  z
    .string()
    .regex(/^(?:t\d{2,3}(?:\.\d)?x\d{2,3}(?:\.\d)?)?,?(?:s[0-9a-z]{1,6})?$/u)
    .optional(),
]);
const idSchema = z.tuple([z.string().regex(/^[\w-]{1,40}$/u)]);

/** The id of a press, of the recipe or of its revision, and a reader of its request once the recipe is known. */
export interface PressedCard {
  readonly id: string;
  readonly requestFor: (recipe: Recipe) => CardRequest;
}

/** Reads the arguments of a press; refuses what is none of ours. */
export function readPressedCard(args: readonly string[]): PressedCard {
  const alone = idSchema.safeParse(args);
  if (alone.success) return { id: alone.data[0], requestFor: () => AS_WRITTEN };
  const parsed = argsSchema.safeParse(args);
  if (!parsed.success) throw new Refusal(STALE);
  const [id, size, without, swaps, units, extras = ""] = parsed.data;
  return {
    id,
    requestFor: (recipe) => ({
      by: readSize(recipe, size),
      without: pieces(without).map((ref) => partNamed(recipe, ref)),
      swaps: Object.fromEntries(
        pieces(swaps).map((swap) => {
          const [key = "", index = ""] = swap.split("=");
          return [key, Number(index)];
        }),
      ),
      units: units === "m" ? "metric" : units === "u" ? "us" : "as written",
      ...readExtras(extras),
    }),
  };
}

function readSize(recipe: Recipe, size: string): ScaleRequest["by"] {
  if (size === "w") return { kind: "as written" };
  if (size.startsWith("p")) return { kind: "portions", portions: Number(size.slice(1)) };
  if (size.startsWith("f")) {
    const [boxes = "", boxG = ""] = size.slice(1).split("x");
    return { kind: "fill", boxes: Number(boxes), boxG: Number(boxG) };
  }
  const choices = allChoices(recipe);
  const foods = pieces(size.slice(1)).map((held) => {
    const [grams = "", ref = ""] = held.split("@");
    const at = choices.find((one) => one.ref === ref);
    if (at === undefined) throw new Refusal(STALE);
    return { grams: Number(grams), foodText: at.choice.foodText };
  });
  return { kind: "have", foods };
}

function readExtras(extras: string): Pick<CardRequest, "tray" | "start"> {
  const of = (letter: string) =>
    extras
      .split(",")
      .find((extra) => extra.startsWith(letter))
      ?.slice(1);
  const [tray, start] = [of("t"), of("s")];
  const [widthCm = 0, depthCm = 0] = (tray ?? "").split("x").map(Number);
  return {
    ...(tray === undefined ? {} : { tray: { widthCm, depthCm } }),
    ...(start === undefined
      ? {}
      : { start: Temporal.Instant.fromEpochMilliseconds(Number.parseInt(start, 36) * 60_000) }),
  };
}

function pieces(text: string): readonly string[] {
  return text === NONE ? [] : text.split(",");
}

function partNamed(recipe: Recipe, ref: string): string {
  if (!ref.startsWith("c")) return ref;
  const component = recipe.components[Number(ref.slice(1))];
  if (component === undefined) throw new Refusal(STALE);
  return component.name;
}
