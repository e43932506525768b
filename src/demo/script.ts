/** Someone of the invented group. */
export type Who = "Mara" | "Theo" | "Ines";

/** One thing somebody does. `at` is UTC; the log shows each person's own wall clock. */
export type Step =
  | { readonly at: string; readonly who: Who; readonly say: string }
  /** Presses the newest button of theirs whose label starts so. */
  | { readonly at: string; readonly who: Who; readonly press: string }
  /** Picks from the newest list of theirs the entry whose label starts so. */
  | { readonly at: string; readonly who: Who; readonly pick: string }
  /** Presses a button of somebody else's message; the bot must refuse. */
  | { readonly at: string; readonly who: Who; readonly press: string; readonly of: Who }
  /** A line of the narrator. */
  | { readonly at: string; readonly note: string };

export const START = "2026-10-24T08:00:00Z";
export const END = "2026-10-31T12:00:00Z";

const RECIPES = "prisma/seed/recipes";

/**
 * A week of an invented group. Mara coaches from Lisbon; Theo cooks in Chicago a bake that freezes
 * well; Ines cooks in Lisbon a salad that freezes badly, and her clocks go back in the night of
 * 25 October.
 */
export const SCRIPT: readonly Step[] = [
  {
    at: "2026-10-24T08:00:00Z",
    note: "Saturday. The coach sets the group up and publishes two recipes.",
  },
  { at: "2026-10-24T08:00:00Z", who: "Mara", say: "/group setup zone:Europe/Lisbon" },
  {
    at: "2026-10-24T08:02:00Z",
    who: "Mara",
    say: `/recipe publish file:${RECIPES}/paprika-thigh-and-white-bean-bake.txt`,
  },
  { at: "2026-10-24T08:03:00Z", who: "Mara", press: "Publish" },
  {
    at: "2026-10-24T08:05:00Z",
    who: "Mara",
    say: `/recipe publish file:${RECIPES}/cold-noodle-and-cucumber-bowl.txt`,
  },
  { at: "2026-10-24T08:06:00Z", who: "Mara", press: "Publish" },

  {
    at: "2026-10-24T16:00:00Z",
    note: "Ines, in Lisbon, cooks the salad. Her clocks go back in the night.",
  },
  { at: "2026-10-24T16:00:00Z", who: "Ines", say: "/reminders zone:Europe/Lisbon evening:19:00" },
  { at: "2026-10-24T16:01:00Z", who: "Ines", say: "/meals days:Sun, Mon time:19:30 name:dinner" },
  {
    at: "2026-10-24T17:30:00Z",
    who: "Ines",
    say: "/batch log recipe:Cold noodle and cucumber bowl cooked:18:20",
  },
  { at: "2026-10-24T17:33:00Z", who: "Ines", say: "/stock" },
  { at: "2026-10-24T17:33:00Z", who: "Ines", pick: "Cold noodle and cucumber bowl" },
  { at: "2026-10-24T17:34:00Z", who: "Ines", press: "Gave away 1" },

  { at: "2026-10-25T16:00:00Z", note: "Sunday. Theo, in Chicago, cooks for his weekday lunches." },
  { at: "2026-10-25T16:00:00Z", who: "Theo", say: "/reminders zone:America/Chicago" },
  { at: "2026-10-25T16:01:00Z", who: "Theo", say: "/meals days:Mon-Fri time:12:30 name:lunch" },
  {
    at: "2026-10-25T16:02:00Z",
    who: "Theo",
    say: "/recipe card recipe:Paprika thigh and white bean bake portions:8",
  },
  {
    at: "2026-10-25T16:04:00Z",
    who: "Theo",
    say: "/recipe card recipe:Paprika thigh and white bean bake have:850 g chicken thigh",
  },
  {
    at: "2026-10-25T19:05:00Z",
    who: "Theo",
    say: "/batch log recipe:Paprika thigh and white bean bake portions:8 cooked:2 pm weight:3.2 kg",
  },
  { at: "2026-10-25T19:20:00Z", who: "Theo", press: "Froze 5" },
  { at: "2026-10-25T19:35:00Z", who: "Ines", say: "/stock" },
  { at: "2026-10-25T19:36:00Z", who: "Ines", press: "Ate 1" },
  { at: "2026-10-25T19:40:00Z", who: "Theo", press: "Ate 1", of: "Ines" },

  {
    at: "2026-10-26T17:31:00Z",
    note: "Monday to Friday: they eat, thaw and throw away as the reminders say.",
  },
  { at: "2026-10-26T17:31:00Z", who: "Theo", say: "/stock" },
  { at: "2026-10-26T17:32:00Z", who: "Theo", press: "Ate 1" },
  { at: "2026-10-26T19:40:00Z", who: "Ines", say: "/stock" },
  { at: "2026-10-26T19:40:00Z", who: "Ines", press: "Ate 1" },
  { at: "2026-10-27T17:32:00Z", who: "Theo", say: "/stock" },
  { at: "2026-10-27T17:32:00Z", who: "Theo", press: "Ate 1" },
  { at: "2026-10-28T00:10:00Z", who: "Theo", press: "Set 1 to thaw" },
  { at: "2026-10-28T08:30:00Z", who: "Ines", press: "Threw away 1" },
  { at: "2026-10-29T00:15:00Z", who: "Theo", press: "Set 1 to thaw" },
  {
    at: "2026-10-29T13:30:00Z",
    note: "Theo ate out on Wednesday: his last fresh portion has had its day.",
  },
  { at: "2026-10-29T13:31:00Z", who: "Theo", press: "Threw away 1" },
  { at: "2026-10-29T17:35:00Z", who: "Theo", say: "/stock" },
  { at: "2026-10-29T17:35:00Z", who: "Theo", press: "Ate 1" },
  { at: "2026-10-30T17:35:00Z", who: "Theo", say: "/stock" },
  { at: "2026-10-30T17:36:00Z", who: "Theo", press: "Ate 1" },
  { at: "2026-10-31T11:00:00Z", who: "Theo", say: "/reminders" },
];
