import { massUnitG } from "../quantity/unit.ts";
import { plural } from "../words/plural.ts";
import { type ReadYield, readYield } from "./read-yield.ts";

/** Thirds, sixths and the like, which decimals do not hold exactly. */
const DENOMINATORS = [3, 6, 7, 9, 11, 12];

/** "Makes 6 portions, 2280 g cooked": the first way to write it that is read as exactly that. */
export function yieldLine(yields: ReadYield): string {
  const { portions, portionWord, yieldG } = yields;
  const some = [plural(portionWord), portionWord, `${portionWord}s`];
  const words = portions === 1 ? [portionWord, ...some] : some;
  const figures = yieldG === null ? [""] : massesOf(yieldG).map((mass) => `, ${mass} cooked`);
  const forms = words.flatMap((word) =>
    figures.map((figure) => `Makes ${portions} ${word}${figure}`),
  );
  return forms.find((form) => isReadAs(form, yields)) ?? forms[0] ?? "";
}

function isReadAs(line: string, meant: ReadYield): boolean {
  const read = readYield(line, 1);
  return (
    read.ok &&
    read.value.portions === meant.portions &&
    read.value.portionWord === meant.portionWord &&
    read.value.yieldG === meant.yieldG
  );
}

/** Ways to write a mass, the plainest first: the coach may have written pounds, and thirds of them. */
function massesOf(grams: number): readonly string[] {
  return (["g", "kg", "lb", "oz", "mg"] as const).flatMap((unit) => {
    const value = grams / (massUnitG(unit) ?? 1);
    return figuresOf(value).map((figure) => `${figure} ${unit}`);
  });
}

function figuresOf(value: number): readonly string[] {
  const decimal = value.toFixed(9).replace(/\.?0+$/u, "");
  const whole = Math.floor(value);
  const fractions = DENOMINATORS.flatMap((below) => {
    const above = Math.round((value - whole) * below);
    if (above === 0 || above === below) return [];
    return [whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`];
  });
  return [decimal, ...fractions];
}
