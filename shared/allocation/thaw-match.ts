/** Portions that may be given to meals. */
export interface Supply {
  /** Portions not given to any meal yet. */
  readonly left: number;
  /** Whether a portion of it may be eaten at a meal (by index). */
  readonly serves: (meal: number) => boolean;
}

/** Which supplies (by index) are at each meal, one entry a portion. */
type AtMeals = readonly (readonly number[])[];

interface Table {
  readonly supplies: readonly Supply[];
  readonly left: number[];
  readonly at: number[][];
}

/**
 * Fills the places still free at the meals, in order of time, from the supplies that have portions
 * left, first supply first. Where none that is left can be eaten at a meal, another meal gives it its
 * portion and takes a different one, if any chain of such changes ends with a portion that is left
 * (an augmenting path): so as many meals are served as can be, and every portion seated stays seated.
 * What is left is then exchanged for what comes later in the list, wherever a chain allows it.
 */
export function fillFrom(
  supplies: readonly Supply[],
  places: readonly number[],
  seated: AtMeals,
): AtMeals {
  const table: Table = {
    supplies,
    left: supplies.map(({ left }) => left),
    at: seated.map((list) => [...list]),
  };
  for (const [meal, count] of places.entries()) {
    let free = count - (seated[meal]?.length ?? 0);
    while (free > 0 && serve(table, meal)) free -= 1;
  }
  for (const index of supplies.keys()) {
    while (replaceLater(table, index));
  }
  return table.at;
}

/** For a meal that came into question: which supply it would give up, and to which meal. */
type Gives = Map<number, { readonly supply: number; readonly to: number }>;

/** Finds one more portion for a meal; false when no chain of changes yields one. */
function serve(table: Table, wanting: number): boolean {
  const { supplies, left } = table;
  if (left.every((portions) => portions === 0)) return false;
  const gives: Gives = new Map();
  const asked = new Set<number>();
  const queue = [wanting];
  for (const meal of queue) {
    const direct = supplies.findIndex((one, i) => (left[i] ?? 0) > 0 && one.serves(meal));
    if (direct >= 0) {
      left[direct] = (left[direct] ?? 0) - 1;
      passOn(table, gives, meal, direct);
      return true;
    }
    for (const { other, supply } of couldGive(table, meal, asked)) {
      if (other === wanting || gives.has(other)) continue;
      gives.set(other, { supply, to: meal });
      queue.push(other);
    }
  }
  return false;
}

/** The meals that have a portion which `meal` could have instead, of supplies not asked before. */
function couldGive({ supplies, at }: Table, meal: number, asked: Set<number>) {
  const found: { other: number; supply: number }[] = [];
  for (const [other, portions] of at.entries()) {
    for (const supply of portions) {
      if (asked.has(supply) || supplies[supply]?.serves(meal) !== true) continue;
      found.push({ other, supply });
    }
  }
  for (const { supply } of found) asked.add(supply);
  return found;
}

/** Gives `supply` to the meal at the end of the chain, and each meal's own portion to the one before it. */
function passOn({ at }: Table, gives: Gives, last: number, supply: number): void {
  let [meal, taken] = [last, supply];
  for (let step = gives.get(meal); step !== undefined; step = gives.get(meal)) {
    const portions = at[meal] ?? [];
    portions[portions.indexOf(step.supply)] = taken;
    [meal, taken] = [step.to, step.supply];
  }
  at[meal]?.push(taken);
}

/** For a supply that came into question: the meal it would leave, and which supply takes its place. */
type Yields = Map<number, { readonly meal: number; readonly by: number }>;

/** Seats a portion of a supply in place of one that comes later in the list; false when no chain allows it. */
function replaceLater(table: Table, index: number): boolean {
  if (isLast(table, index) || (table.left[index] ?? 0) === 0) return false;
  const yields: Yields = new Map();
  const asked = new Set([index]);
  for (const by of asked) {
    const found = couldReplace(table, by).filter((one) => !asked.has(one.supply));
    for (const { meal, supply } of found) {
      yields.set(supply, { meal, by });
      asked.add(supply);
    }
    const later = found.find(({ supply }) => supply > index);
    if (later !== undefined) {
      exchange(table, yields, later.supply, index);
      return true;
    }
  }
  return false;
}

function isLast({ at }: Table, index: number): boolean {
  return at.every((portions) => portions.every((one) => one <= index));
}

/** The portions seated at the meals that a supply could be eaten at. */
function couldReplace({ supplies, at }: Table, by: number) {
  return at.flatMap((portions, meal) =>
    supplies[by]?.serves(meal) === true ? portions.map((supply) => ({ meal, supply })) : [],
  );
}

function exchange({ at, left }: Table, yields: Yields, out: number, into: number): void {
  left[out] = (left[out] ?? 0) + 1;
  left[into] = (left[into] ?? 0) - 1;
  let leaving = out;
  for (let step = yields.get(leaving); step !== undefined; step = yields.get(leaving)) {
    const portions = at[step.meal] ?? [];
    portions[portions.indexOf(leaving)] = step.by;
    leaving = step.by;
  }
}
