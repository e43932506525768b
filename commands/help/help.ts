import { z } from "zod";
import { command } from "../kit/command.ts";
import { reply, rows, text } from "../kit/reply.ts";

const EVERYONE = [
  {
    label: "/recipe find",
    figure: "recipes by name, by what you have, by figures",
    note: "uses:rice, energy:400-600, free-of:mine",
  },
  {
    label: "/recipe card",
    figure: "a recipe at your size",
    note: "portions:8, have:850 g thigh, or fill:6 boxes of 400 g",
  },
  {
    label: "/recipe file",
    figure: "a recipe to keep or take elsewhere",
    note: "as:text or as:json-ld",
  },
  {
    label: "/batch log",
    figure: "record what you cooked",
    note: "sized like a card, or by a card's Log it; cooked:18:30, weight:2.4 kg",
  },
  {
    label: "/batch labels",
    figure: "labels for your boxes, to print",
    note: "copies, paper, grid:63.5 x 38.1 mm, start:4 on a used sheet",
  },
  {
    label: "/batch ate",
    figure: "you ate one: which box that was",
    note: "recipe, portions:½",
  },
  {
    label: "/batch move",
    figure: "freeze, thaw, give, throw away",
    note: "or the buttons of /stock",
  },
  { label: "/batch count", figure: "put a wrong count right" },
  { label: "/batch cool", figure: "whether a box or pot cools in time" },
  {
    label: "/stock",
    figure: "what is where, until when",
    note: "buttons to move it, a picture, code:7K3QA from a label",
  },
  { label: "/meals", figure: "which meals are eaten from stock" },
  {
    label: "/plan show",
    figure: "your week's meals from stock, and why",
    note: "also pin, skip, out and clear",
  },
  { label: "/reminders", figure: "what is coming, and how you are told" },
  {
    label: "/me",
    figure: "what you avoid and who eats with you",
    note: "every card then says so first",
  },
  {
    label: "/targets set",
    figure: "your day's energy and macros",
    note: "also show and clear; cards count against them",
  },
  { label: "/food look", figure: "figures, measures and source of a food" },
];
const COACH = [
  {
    label: "/recipe publish",
    figure: "paste or attach a recipe, see how it was read, publish",
    note: "also revise, drafts and withdraw",
  },
  {
    label: "/recipe keeping",
    figure: "where you state longer than the published chart",
    note: "confirm it on your word, or take it back",
  },
  { label: "/food add", figure: "a food from its pack's label", note: "for your group alone" },
  { label: "/group setup", figure: "coach role, reminder channel, time zone, label style" },
  { label: "/group undelivered", figure: "reminders that could not reach a member, and why" },
];

export const help = command({
  path: ["help"],
  description: "What I do and what to type",
  who: "everyone",
  options: [],
  input: z.object({}),
  handle: async (context) =>
    reply("Cook once, log it, and I tell you what to eat, freeze, thaw and throw away.", {
      parts: [
        rows("For you", EVERYONE),
        ...(context.isCoach ? [rows("For the coach", COACH)] : []),
        text(
          "Numbers, days and times work as you write them: 1 1/2, ½, 2 lb, Sun, yesterday 18:30.",
        ),
      ],
      cautions: [
        "Dates follow published guidance for fridges at 4 °C or colder. Local food rules and a thermometer come first.",
        "Nutrition figures are estimates. With pregnancy, illness or an eating disorder, ask licensed care.",
      ],
    }),
});
