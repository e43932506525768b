import fc from "fast-check";

/** Text as nobody would wish it: any characters, markup, mentions, halves of characters, far too long. */
export const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 200 }),
  fc.string({ unit: fc.constantFrom(..."*_~`|<>@#&:/[]()-+1. \\\n"), maxLength: 60 }),
  fc.constantFrom("", " ", "@everyone", "<@&1>", "x".repeat(5_000), "\u202Etxt", "\uD800"),
);

/** Something to print that cannot be made: its words go along instead. */
export const anyPrint = fc.record({
  name: anyText,
  title: anyText,
  alt: anyText,
  format: fc.constantFrom("pdf" as const, "png" as const),
  pages: fc.constant([]),
});
