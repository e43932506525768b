import qty from "js-quantities";
import { allergensInRecipe } from "../../shared/allergen/find.ts";
import { resolveKeeping } from "../../shared/keeping/resolve.ts";
import { euPanel } from "../../shared/label/eu.ts";
import { labelExtras } from "../../shared/label/extras.ts";
import { nutritionOf } from "../../shared/nutrition/portion.ts";
import { readRecipe } from "../../shared/recipe/read.ts";
import { scaleRecipe } from "../../shared/recipe/scale.ts";
import { loadFoodBook } from "../../src/foods/load.ts";
import { median, report, timed } from "./measure.ts";

/** Twenty-five lines in three parts, one of them optional. */
const TEXT = `Big tray of everything
Makes 8 portions
Base:
- 1.2 kg chicken thighs, diced
- 2 x 400 g cans chickpeas, drained
- 400 g canned chopped tomatoes
- 3 red peppers, sliced
- 2 large onions, sliced
- 6 garlic cloves, crushed
- 2 tbsp olive oil
  or 25 g butter
- 2 tsp paprika
- 1 tsp ground cumin
- 1 tsp dried oregano
- 1½ tsp salt
- ½ tsp black pepper
Rice:
- 500 g basmati rice
- 1 litre water
- 200 g frozen peas
- 1 tsp turmeric
- salt to taste
Sauce (optional):
- 300 g plain low-fat yoghurt
- 2 tbsp lemon juice
- 20 g fresh parsley, chopped
- 1 tbsp tahini
- 1 pinch of salt
- 1 tsp honey
- 150 g cucumber, grated
- 1 clove garlic
Steps
1. Roast the base at 200 °C for 40 minutes.
2. Simmer the rice in the water for 12 minutes.
Keeps 3 days in the fridge
`;

/**
 * A card of 25 lines from objects nobody has touched before (nothing can be remembered from run to run),
 * against a general unit library converting the same number of amounts once.
 */
export async function benchCard(write: (line: string) => void): Promise<boolean> {
  const foods = loadFoodBook();
  const read = readRecipe(TEXT, foods);
  if (!read.ok) throw new Error("the recipe of the bench cannot be read");
  const runs = 300;
  const cold = Array.from({ length: runs + 20 }, () => structuredClone(read.value.recipe));
  let turn = 0;
  const card = await timed(
    () => {
      const recipe = cold[turn++] ?? read.value.recipe;
      const by = { kind: "portions", portions: 5 } as const;
      const scaled = scaleRecipe(recipe, foods, { by, without: [], swaps: {} });
      if (!scaled.ok) throw new Error("the recipe of the bench cannot be scaled");
      const figures = nutritionOf(scaled.value, foods);
      euPanel(figures.perPortion, labelExtras(scaled.value, foods, figures).perPortion);
      resolveKeeping(recipe, foods, []);
      allergensInRecipe(recipe, foods);
    },
    runs,
    20,
  );
  const lines = read.value.recipe.components.flatMap((part) => part.lines);
  const units = await timed(() => lines.map((_, n) => qty(`${n + 1} lb`).to("g").scalar), 100);
  return report(
    {
      what: `a card of ${lines.length} lines from cold objects`,
      ms: median(card),
      budgetMs: 1,
      reference: { name: "js-quantities converting as many amounts", ms: median(units), times: 6 },
    },
    write,
  );
}
