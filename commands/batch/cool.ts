import { z } from "zod";
import {
  CONTAINERS,
  type CoolingAdvice,
  coolingAdvice,
  coolingOf,
  type Filled,
  TWO_STAGE,
} from "../../shared/heat/cool.ts";
import { thawHours } from "../../shared/heat/thaw-time.ts";
import { thawLeadHours } from "../../shared/keeping/thaw.ts";
import { numberAtStart } from "../../shared/words/read-number.ts";
import { command } from "../kit/command.ts";
import { gramsText, optionalText, wordText } from "../kit/options.ts";
import { type Reply, type Row, reply, rows } from "../kit/reply.ts";
import { type CooledFood, completeCooled, cooledFood } from "./cool-food.ts";

const CONTAINER_SENTENCE = `Type what it is put in: ${CONTAINERS.join(", ")}.`;
const DEPTH_MAX_CM = 40;
const INCH_CM = 2.54;
/** Beyond this ratio between the published rule and our own estimate, the rule is the answer. */
const FAR_APART = 1.5;
/** USDA consumer advice: shallow containers are at most 2 inches deep. */
const SHALLOW_CM = 5;

const depthText = z
  .string({ error: "Type how deep the food stands, such as 4 cm." })
  .transform((typed, checks): number => {
    const read = numberAtStart(typed.slice(0, 40).trim());
    const unit = read.ok ? /^ ?(cm|mm|in|inch|inches|")?$/iu.exec(read.value.rest) : null;
    const each = { mm: 0.1, cm: 1 }[(unit?.[1] ?? "cm").toLowerCase()] ?? INCH_CM;
    const depthCm = read.ok && read.value.to === null ? read.value.value * each : Number.NaN;
    if (unit !== null && depthCm >= 0.5 && depthCm <= DEPTH_MAX_CM) return depthCm;
    checks.addIssue({
      code: "custom",
      message: `Type how deep the food stands, 0.5 to ${DEPTH_MAX_CM} cm, such as 4 cm or 2 in.`,
    });
    return z.NEVER;
  });

export const batchCool = command({
  path: ["batch", "cool"],
  description: "Whether a box, bag or pot cools fast enough in the fridge, and how long it thaws",
  who: "everyone",
  options: [
    {
      name: "container",
      description: "What it is put in",
      required: true,
      kind: "text",
      choices: CONTAINERS,
    },
    {
      name: "depth",
      description: "How deep the food stands in it, such as 4 cm",
      required: true,
      kind: "text",
    },
    {
      name: "weight",
      description: "Weight of the food in one of them, such as 450 g",
      required: true,
      kind: "text",
    },
    {
      name: "food",
      description: "What it is: a recipe or a food; a usual cooked dish if you leave it out",
      required: false,
      kind: "text",
      complete: completeCooled,
    },
  ],
  input: z.object({
    container: wordText(CONTAINERS, CONTAINER_SENTENCE),
    depth: depthText,
    weight: gramsText,
    food: optionalText(200),
  }),
  handle: async (context, { container, depth, weight, food: typed }) => {
    const food = await cooledFood(context, typed);
    return coolReply({ container, depthCm: depth, massG: weight, food: food.composition }, food);
  },
});

function coolReply(filled: Filled, food: CooledFood): Reply {
  const { toMiddleH, toColdH, passes } = coolingOf(filled);
  const advice = coolingAdvice(filled);
  const heading = passes
    ? `This ${filled.container} cools in time in the fridge.`
    : `Too slow: ${advice === null ? "split it over smaller containers" : sayAdvice(filled, advice)}.`;
  return reply(heading, {
    parts: [
      rows(
        `A ${filled.container}, ${number(filled.depthCm)} cm deep, ${Math.round(filled.massG)} g${food.name === "" ? "" : ` of ${food.name}`}, in a fridge at 4 °C`,
        [
          {
            label: "60 to 21 °C",
            figure: hours(toMiddleH),
            note: `the rule: ${TWO_STAGE.middleH} h`,
          },
          { label: "60 to 5 °C", figure: hours(toColdH), note: `the rule: ${TWO_STAGE.totalH} h` },
          thawRow(filled),
        ],
      ),
    ],
    cautions: [
      ...shallowNote(filled, toMiddleH),
      `Estimates for the middle of food that cannot move, from its shape, ${food.isUsual ? "a usual cooked dish" : "what it consists of"} and a fridge with still air (heat conduction in a block, for thawing Plank's equation): 30 % either way, and a full fridge is slower. The rule is FDA Food Code 3-501.14; a thermometer in the middle decides.`,
      "Into the fridge within two hours of cooking. What missed 21 °C after two hours is heated to 74 °C again at once, or thrown away.",
    ],
  });
}

function sayAdvice({ container }: Filled, advice: CoolingAdvice): string {
  const depth = `${number(advice.depthCm)} cm deep`;
  const split = advice.containers === 1 ? "" : `split it over ${advice.containers}, ${depth}`;
  if (advice.kind === "shallower") {
    return split === "" ? `fill it ${depth} only` : split;
  }
  const bath = `stand ${advice.containers === 1 ? `the ${container}` : "them"} in ice water for ${advice.minutes} minutes first`;
  return split === "" ? bath : `${split}, and ${bath}`;
}

/** The published rule, and our estimate beside it; the longer of the two, but where they are far apart the rule. */
function thawRow(filled: Filled): Row {
  const rule = thawLeadHours(filled.massG);
  const estimate = thawHours(filled);
  const isFar = Math.max(estimate / rule, rule / estimate) > FAR_APART;
  const answer = isFar ? rule : Math.max(rule, estimate);
  const beside = `the published rule gives ${hours(rule)}, our estimate ${hours(estimate)}`;
  return {
    label: "thaws in the fridge",
    figure: hours(answer),
    note: isFar
      ? `${beside}: they are far apart, so the rule counts; look for ice in the middle`
      : beside,
  };
}

/** The published advice calls this shallow, and our estimate says that it is slow. */
function shallowNote(filled: Filled, toMiddleH: number): readonly string[] {
  const isShallow = filled.depthCm <= SHALLOW_CM && filled.container !== "pot";
  if (!isShallow || toMiddleH <= TWO_STAGE.middleH) return [];
  return toMiddleH / TWO_STAGE.middleH > FAR_APART
    ? [
        `Published advice takes ${SHALLOW_CM} cm for shallow enough; our estimate is far from it, so the advice counts: leave the lid ajar until it is cold.`,
      ]
    : [
        `Published advice takes ${SHALLOW_CM} cm for shallow enough; by our estimate less is safer. Leave the lid ajar until it is cold.`,
      ];
}

function hours(value: number): string {
  if (value >= 9.5) return `${Math.round(value)} h`;
  return value >= 0.95 ? `${number(value)} h` : `${Math.round((value * 60) / 5) * 5} min`;
}

function number(value: number): string {
  return String(Math.round(value * 10) / 10);
}
