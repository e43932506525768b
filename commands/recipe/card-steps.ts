import { type WantedScales, withOtherScale } from "../../shared/recipe/both-scales.ts";
import { type Part, type Reply, type ReplyFile, reply, text } from "../kit/reply.ts";
import { sayScaleCaution } from "../kit/say-problem.ts";
import { alertsOf, backButton, type Card } from "./card-model.ts";
import type { CardUnits } from "./card-request.ts";

const SCALES: Readonly<Record<CardUnits, WantedScales>> = {
  "as written": "both",
  metric: "C",
  us: "F",
};

/** Steps, reheating and notes: the long part, behind its button. */
export function stepsReply(card: Card): Reply {
  return reply(`${card.published.recipe.title}: steps`, {
    alerts: alertsOf(card).alerts,
    parts: blocksOf(card).map((block): Part => text(...block)),
    cautions: card.scaled.cautions.map(sayScaleCaution),
    buttons: backButton(card),
  });
}

/** Whether a recipe has anything to show behind the button. */
export function hasSteps({ published }: Card): boolean {
  const { steps, reheating, notes } = published.recipe;
  return steps.length + reheating.length + notes.length > 0;
}

/** The same as a file, for a card whose request does not fit into a button. */
export function stepsFile(card: Card): ReplyFile {
  const blocks = [
    [card.published.recipe.title],
    ...blocksOf(card),
    [...alertsOf(card).alerts, ...card.scaled.cautions.map(sayScaleCaution)],
  ];
  const written = blocks.filter((block) => block.length > 0).map((block) => block.join("\n"));
  return { name: "steps.txt", text: `${written.join("\n\n")}\n` };
}

/** Temperatures in the scale of the units asked for as well as the coach's own. */
function blocksOf({ published, request }: Card): readonly (readonly string[])[] {
  const { steps, reheating, notes } = published.recipe;
  const inScales = (line: string) => withOtherScale(line, SCALES[request.units]);
  return [
    steps.map((step, index) => `${index + 1}. ${inScales(step.text)}`),
    reheating.length === 0 ? [] : ["Reheating:", ...reheating.map(inScales)],
    notes.length === 0 ? [] : ["Notes:", ...notes.map(inScales)],
  ].filter((block) => block.length > 0);
}
