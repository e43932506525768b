import type { Food } from "../../shared/food/types.ts";

/** The issue's own figure is a second's worth of lines. */
const LINES = 20_000;

const UNITS = ["g", "ml", "tbsp", "tsp", "cups", "oz", "kg", "large", "x 400 g tins", ""];
const BEFORE = ["", "", "fresh ", "chopped ", "frozen ", "cooked ", "organic ", "large ", "plain "];
const BEHIND = [
  "",
  "",
  ", diced",
  ", drained and rinsed",
  " (optional)",
  ", peeled and cut into chunks",
  ", at room temperature",
  " or 25 g butter",
  ", plus extra to serve",
  ", uncooked",
  ", finely chopped",
];

/**
 * Lines of which no two are alike: every name of the table with words that cooks set before and behind
 * it, and with every eleventh a slip of the pen.
 */
export function distinctLines(foods: readonly Food[]): readonly string[] {
  const names = foods.flatMap(({ name, otherNames }) => [name, ...otherNames]);
  const lines = new Set<string>();
  for (let at = 0; lines.size < LINES; at += 1) {
    const name = names[at % names.length] ?? "";
    const said = at % 11 === 0 ? withSlip(name, at) : name;
    const before = BEFORE[(at * 5) % BEFORE.length];
    const unit = UNITS[at % UNITS.length];
    const behind = BEHIND[(at * 3 + Math.floor(at / names.length)) % BEHIND.length];
    lines.add(`${1 + (at % 997)} ${unit} ${before}${said}${behind}`);
  }
  return [...lines];
}

/** Without one of its letters. */
function withSlip(name: string, at: number): string {
  const out = 1 + (at % Math.max(1, name.length - 2));
  return `${name.slice(0, out)}${name.slice(out + 1)}`;
}
