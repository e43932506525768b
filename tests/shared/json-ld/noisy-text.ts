import fc from "fast-check";

const MARKS =
  "- |1. |½| g |or |swap: |(|)|, |keeps |freezes |3 days|2 months| and |\n|\n|\n\n|Steps\n|Notes\n|Reheating\n|Sauce:\n|badly: |°C|–|(optional)| optional |; |Note: |Reheat: |salt|oil|5 |to taste|Tip:|Tags: |fridge|: |# |&amp;|<b>|&|<|for the |Keeping\n|it splits|.".split(
    "|",
  );

/** Our own marks and words in any order, between lines that make it a recipe. */
export const noisyRecipeText: fc.Arbitrary<string> = fc
  .array(
    fc.oneof(
      { weight: 8, arbitrary: fc.constantFrom(...MARKS) },
      { weight: 1, arbitrary: fc.string({ maxLength: 4 }) },
    ),
    { maxLength: 60 },
  )
  .map((marks) => {
    const middle = Math.floor(marks.length / 2);
    const ingredients = marks.slice(0, middle).join("");
    const below = marks.slice(middle).join("");
    return `Pot\nMakes 4 wraps\n- 5 g salt\n${ingredients}\nSteps\n${below}`;
  });
