import type { HeatMethod } from "./types.ts";

/** One cooking yield: cooked weight in per cent of raw weight. */
export interface MeatYield {
  /** Words that the food must have, all of them; the kind of animal first. */
  readonly words: string;
  readonly method: HeatMethod;
  readonly percent: number;
  readonly source: string;
}

const USDA = "USDA Table of Cooking Yields for Meat and Poultry, Release 2 (2014)";
/** Raw and cooked weight of the same piece in USDA SR28 (2015): our own calculation. */
const PIECES = "USDA SR28 (2015), piece weights raw and cooked";
/** Raw over cooked protein in USDA SR28 (2015), none being lost: our own calculation. */
const PROTEIN = "USDA SR28 (2015), protein raw and cooked";

/** "words | method | per cent | NDB number of the cooked food or what the row is of". */
function table(source: string, text: string): readonly MeatYield[] {
  return text
    .trim()
    .split("\n")
    .map((row) => {
      const [words = "", method = "", percent = "", number = ""] = row
        .split("|")
        .map((cell) => cell.trim());
      return {
        words,
        method: method as HeatMethod,
        percent: Number(percent),
        source: `${source}, ${number}`,
      };
    });
}

/**
 * Selected rows of the published table (Roseland et al., US Department of Agriculture, Agricultural
 * Research Service, September 2014, doi 10.15482/USDA.ADC/1409031), the cuts that are cooked ahead. Where
 * it has several rows of a cut, the one of most samples. Cuts go by their British names: sirloin is the US
 * top loin, rump its top sirloin, topside its top round, silverside its bottom round.
 */
const PUBLISHED = table(
  USDA,
  `
chicken | roast | 78 | 05004
chicken | braise | 75 | 05010
chicken breast | roast | 72 | 05060
chicken breast | braise | 77 | 05061
chicken drumstick | roast | 76 | 05069
chicken drumstick | braise | 77 | 05676
chicken thigh | roast | 69 | 05094
chicken thigh | braise | 68 | 05677
chicken wing | roast | 78 | 05103
chicken wing | braise | 86 | 05104
chicken wing | deep-fry | 66 | 05102
chicken liver | fry | 62 | 05661
turkey | roast | 71 | 05166
turkey breast | roast | 72 | 05733
turkey drumstick | roast | 72 | 05737
turkey thigh | roast | 83 | 05743
turkey wing | roast | 71 | 05735
turkey sausage | grill | 77 | 07958
beef | grill | 78 | retail cuts, all
beef | roast | 79 | retail cuts, boneless
beef | braise | 67 | retail cuts, boneless
beef flank | grill | 81 | 13948
beef sirloin | grill | 82 | 13445
beef rump | grill | 80 | 13930
beef fillet | grill | 80 | 13918
beef fillet | roast | 82 | 23345
beef rib eye | grill | 83.6 | 23197
beef topside | grill | 72 | 13893
beef silverside | roast | 84 | 13870
beef silverside | braise | 69 | 13869
beef skirt | grill | 72.9 | 23214
beef brisket | braise | 69 | 13806
beef rib | braise | 66 | retail cuts, boneless, short ribs
beef liver | fry | 73 | 13327
beef mince lean | fry | 69 | 23565
beef mince lean | roast | 72 | 23566
beef mince lean patty | grill | 73 | 23563
beef mince lean patty | fry | 77 | 23564
beef mince | fry | 67 | 23575
beef mince | roast | 70 | 23576
beef mince patty | grill | 69 | 23573
beef mince patty | fry | 73 | 23574
beef mince fatty | fry | 62 | 13494
beef mince fatty | roast | 63 | 13495
beef mince fatty patty | grill | 63 | 13497
beef mince fatty patty | fry | 69 | 13496
lamb | roast | 74 | retail cuts, roasts
lamb | braise | 60 | retail cuts, shoulder, shank, breast, flank
veal | grill | 77 | 17438
bison mince | grill | 77 | 17331
venison mince | grill | 83 | 17344
pork leg | roast | 77 | 10013
pork loin | roast | 77 | 10039
pork loin | braise | 73 | 10063
pork loin | fry | 77 | 10186
pork loin | grill | 79 | 10212
pork fillet | roast | 77 | 10061
pork shoulder | roast | 75 | 10990
pork shoulder | braise | 74 | 10075
pork shoulder | grill | 80 | 10959
pork rib | roast | 76 | 10940
pork mince lean | fry | 68 | 10976
pork mince | fry | 67 | 10975
pork mince fatty | fry | 66 | 10974
pork mince lean patty | grill | 68 | 10979
pork mince patty | grill | 68 | 10978
pork mince fatty patty | grill | 69 | 10977
pork sausage | fry | 80 | 07064
pork ham | roast | 94 | 10879
pork ham | fry | 86 | 10899
pork bacon | roast | 32 | 10860
pork bacon | fry | 32 | 10862
pork bacon | microwave | 29 | 10861
`,
);

/** For what the published table lacks: boneless skinless chicken, minced poultry, fish. */
const FROM_PIECES = table(
  PIECES,
  `
chicken thigh skinless | roast | 77.9 | 05096 to 05098
chicken breast skinless | grill | 72.1 | 05062 to 05747
chicken breast skinless | braise | 66.5 | 05062 to 05746
turkey mince | fry | 72.8 | 05305 to 05306
`,
);
const FROM_PROTEIN = table(
  PROTEIN,
  `
turkey mince lean | fry | 69 | 05665 to 05666
chicken mince | fry | 75 | 05332 to 05333
lamb mince | grill | 67 | 17224 to 17225
fish cod | roast | 78 | 15015 to 15016
fish flatfish | roast | 81 | 15028 to 15029
fish halibut | roast | 82 | 15036 to 15037
fish mackerel | roast | 78 | 15046 to 15047
fish salmon | roast | 78 | 15076 to 15209
fish sockeye | roast | 84 | 15085 to 15086
fish snapper | roast | 78 | 15101 to 15102
fish tilapia | roast | 77 | 15261 to 15262
fish trout | roast | 84 | 15240 to 15241
fish tuna | roast | 84 | 15127 to 15221
shellfish prawn | cook | 84 | 15270 to 15271
`,
);

/** Every cooking yield of meat, poultry and fish that we use. */
export const MEAT_YIELDS: readonly MeatYield[] = [...PUBLISHED, ...FROM_PIECES, ...FROM_PROTEIN];
