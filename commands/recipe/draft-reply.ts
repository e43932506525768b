import { allergensInRecipe } from "../../shared/allergen/find.ts";
import type { FoodBook } from "../../shared/food/book.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { labelExtras } from "../../shared/label/extras.ts";
import { shortFigures } from "../../shared/label/short.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { writeAmount, writeGrams } from "../../shared/quantity/write-amount.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import type { LineChoice, Recipe } from "../../shared/recipe/types.ts";
import { whatChanged } from "../../shared/recipe/what-changed.ts";
import { fold } from "../../shared/words/fold.ts";
import { count } from "../../shared/words/plural.ts";
import { Refusal } from "../kit/command.ts";
import type { Context } from "../kit/context.ts";
import type { RecipeDraft } from "../kit/ports.ts";
import { type Choice, type Part, type Reply, type Row, reply, rows, text } from "../kit/reply.ts";
import { sayScaleProblem } from "../kit/say-problem.ts";
import { allergenRows } from "./allergen-parts.ts";
import { figureNotes } from "./card-notes.ts";
import { AS_WRITTEN } from "./card-request.ts";
import { draftButtons, publishButtons } from "./draft-buttons.ts";
import { foodChoice } from "./draft-foods.ts";
import { draftForm } from "./draft-form.ts";
import { type DraftRead, readDraft } from "./draft-read.ts";
import { type DraftTarget, targetOf } from "./draft-target.ts";
import { keepingRow } from "./keeping-row.ts";
import { sayChanges } from "./say-change.ts";

/** What a reply on a draft says besides. */
interface Besides {
  /** Said first: what was just done, or what did not come over. */
  readonly notes?: readonly string[];
  /** Line key and choice of the doubtful food that was left open: the next one is offered. */
  readonly leftOpen?: string;
}

/** How a draft was read, with everything to mend it by; nothing of it is published. */
export async function draftReply(
  context: Context,
  draft: RecipeDraft,
  besides: Besides = {},
): Promise<Reply> {
  const read = readDraft(draft, context.foods);
  if (!read.ok) return unreadReply(draft, read.problem, besides);
  const target = await targetOf(context, draft, read.value.recipe);
  return readReply(context, draft, read.value, target, besides);
}

function unreadReply(
  draft: RecipeDraft,
  faults: readonly string[],
  { notes = [] }: Besides,
): Reply {
  const many = faults.length === 1 ? "One thing keeps" : `${faults.length} things keep`;
  return reply(`${many} “${draft.title}” from being read.`, {
    parts: [
      ...noteParts(notes),
      text(...faults),
      text("The draft is kept as it is and nothing is published: press Edit to mend it."),
      ...tooLongParts(draft),
    ],
    buttons: draftButtons(draft, []),
    files: draftFiles(draft),
  });
}

function readReply(
  context: Context,
  draft: RecipeDraft,
  read: DraftRead,
  target: DraftTarget,
  { notes = [], leftOpen }: Besides,
): Reply {
  const { foods } = context;
  const { recipe } = read;
  const figures = figuresOf(context, recipe);
  const keeping = resolveKeeping(recipe, foods, []);
  const choices = nextChoice(draft, read, foods, leftOpen);
  return reply(`Read: ${recipe.title}, ${count(recipe.portions, recipe.portionWord)}`, {
    parts: [
      ...noteParts(notes),
      ...lookParts(read, choices.length > 0),
      ...targetParts(context, recipe, target),
      ...recipe.components.map((part) => linesPart(part, draft, foods)),
      rows(`Per ${recipe.portionWord}, estimated`, [
        { label: "figures", figure: figures.short },
        keepingRow(keeping),
        ...allergenRows(allergensInRecipe(recipe, foods)),
      ]),
      ...noteParts(read.noted),
      ...tooLongParts(draft),
    ],
    cautions: ["Not published yet.", ...figures.notes, ...keeping.remarks],
    choices,
    buttons: draftButtons(draft, publishButtons(draft, target)),
    files: draftFiles(draft),
  });
}

/** Of a text that is all doubts the first ones are looked at: looking for like foods takes time. */
const LOOKED_AT = 8;

/** A list for the first doubtful food that any other is near to, or for the next after the one left open. */
function nextChoice(
  draft: RecipeDraft,
  { doubtful }: DraftRead,
  foods: FoodBook,
  leftOpen: string | undefined,
): readonly Choice[] {
  const from = doubtful.findIndex(({ ref }) => ref === leftOpen) + 1;
  for (const doubt of doubtful.slice(from, from + LOOKED_AT)) {
    const choices = foodChoice(draft, doubt, foods);
    if (choices.length > 0) return choices;
  }
  return [];
}

function noteParts(notes: readonly string[]): readonly Part[] {
  return notes.length === 0 ? [] : [text(...notes)];
}

function lookParts({ look, lookLines }: DraftRead, hasChoice: boolean): readonly Part[] {
  if (look.length === 0) return [text("Every line was found and weighed.")];
  const many = lookLines === 1 ? "1 line needs a look:" : `${lookLines} lines need a look:`;
  return [text(many, ...look, ...(hasChoice ? ["Pick the food below, or edit the line."] : []))];
}

/** What publishing would make of it. */
function targetParts(
  { foods }: Context,
  recipe: Recipe,
  { recipe: published, isRetitled, titled }: DraftTarget,
): readonly Part[] {
  if (published === null) return [];
  const { title } = published.recipe;
  const keepsTitle = isRetitled && titled !== null;
  const renamed = isRetitled ? [sayRetitled(recipe, title, keepsTitle)] : [];
  const changes = whatChanged(published.recipe, keepsTitle ? { ...recipe, title } : recipe);
  const number = published.revisionNumber;
  const heading =
    changes.length === 0
      ? `It says the same as revision ${number} of ${title}.`
      : `Against revision ${number} of ${title}:`;
  return [text(...renamed, heading, ...sayChanges(changes, foods))];
}

function sayRetitled(recipe: Recipe, title: string, keepsTitle: boolean): string {
  return keepsTitle
    ? `There is a recipe “${recipe.title}” already, so Publish makes a revision of “${title}” under its own title. Press As “${recipe.title}” to revise that one.`
    : `Publish renames “${title}” to “${recipe.title}”, history and all. Press As a new recipe to keep both.`;
}

function linesPart(part: Recipe["components"][number], draft: RecipeDraft, foods: FoodBook): Part {
  return rows(part.optional ? `${part.name} (optional), as read` : `${part.name}, as read`, [
    ...part.lines.flatMap(({ main, swaps, optional }) => [
      readRow(main, { draft, foods, before: "", optional }),
      ...swaps.map((swap) => readRow(swap, { draft, foods, before: "or ", optional: false })),
    ]),
    ...makesRows(part),
  ]);
}

/** How much of a part that makes more is used. */
function makesRows({ makes }: Recipe["components"][number]): readonly Row[] {
  if (!makes) return [];
  const { madeG, usedG } = makes;
  return [
    { label: "makes", figure: writeGrams(madeG), note: `${writeGrams(usedG)} of it is used` },
  ];
}

interface RowParts {
  readonly draft: RecipeDraft;
  readonly foods: FoodBook;
  readonly before: string;
  readonly optional: boolean;
}

/** How one line was read: its amount, its weight, and the food it was taken for. */
function readRow(choice: LineChoice, { draft, foods, before, optional }: RowParts): Row {
  const food = choice.foodId === null ? null : foods.byId(choice.foodId);
  const amount = choice.amount === null ? "no amount" : writeAmount(choice.amount);
  const weight = choice.grams === null ? "" : weightOf(choice.grams);
  const isChosen = Object.hasOwn(draft.takenFor, fold(choice.foodText));
  const notes = [
    weight === amount ? "" : weight,
    food === null ? "not in the food table" : `taken as ${food.name}`,
    food !== null && isChosen ? "your choice" : "",
    choice.preparation,
    optional ? "optional" : "",
  ];
  return {
    label: `${before}${choice.foodText}`,
    figure: amount,
    note: notes.filter((note) => note !== "").join("; "),
  };
}

/** A pinch is not nothing. */
function weightOf(grams: number): string {
  const written = writeGrams(grams);
  return grams > 0 && written === "0 g" ? "under 0.5 g" : written;
}

function figuresOf(
  { group, foods }: Context,
  recipe: Recipe,
): { readonly short: string; readonly notes: readonly string[] } {
  const scaled = scaleRecipe(recipe, foods, AS_WRITTEN);
  if (!scaled.ok) throw new Refusal(sayScaleProblem(scaled.problem));
  const figures = nutritionOf(scaled.value, foods);
  const extras = labelExtras(scaled.value, foods, figures);
  return {
    short: shortFigures(figures.perPortion, group.labelStyle, extras.perPortion),
    notes: figureNotes(figures),
  };
}

function tooLongParts(draft: RecipeDraft): readonly Part[] {
  return draftForm(draft, "") === null
    ? [
        text(
          "The text does not fit a form: change it in the attached file and attach that to /recipe publish or /recipe revise; then drop this draft.",
        ),
      ]
    : [];
}

function draftFiles(draft: RecipeDraft): Reply["files"] {
  return draftForm(draft, "") === null ? [{ name: "recipe.txt", text: draft.text }] : [];
}
