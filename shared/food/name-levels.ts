/** What a name says of fat and salt. */
export interface NameLevels {
  /** "5 % fat" -> 5; "95 % lean" -> 5; "fat-free" -> 0; null when nothing is said. */
  readonly fatPct: number | null;
  /** False for a bare "5 %", which means fat in milk and mince only. */
  readonly saysFat: boolean;
  readonly lowFat: boolean;
  readonly fullFat: boolean;
  readonly lowSalt: boolean;
  readonly skin: "on" | "off" | null;
  /** Whether a can's liquid is out or in. */
  readonly liquid: "out" | "in" | null;
}

const NOTHING_SAID: NameLevels = {
  fatPct: null,
  saysFat: false,
  lowFat: false,
  fullFat: false,
  lowSalt: false,
  skin: null,
  liquid: null,
};
/** Most names say nothing of the kind: a look that costs little. */
const MAY_SAY = /\d|fat|lean|lite|light|cream|milk|skim|skin|salt|sodium|drain|liquid|juice/u;

/** Reads what a folded name says of fat, salt, skin and liquid. */
export function levelsOf(folded: string): NameLevels {
  if (!MAY_SAY.test(folded)) return NOTHING_SAID;
  const { pct, saysFat } = readFat(folded);
  const lowFat =
    /\b(?:(?:low|lower|reduced|half|less)[ -]?fat|lite|skim|skimmed|extra[ -]lean)\b/u.test(
      folded,
    ) ||
    // "Light tuna" is the colour of the fish.
    /\blight\b(?! (?:tuna|meat))/u.test(folded);
  return {
    fatPct: pct,
    saysFat,
    lowFat: lowFat || pct === 0,
    fullFat: /\bfull[ -]?(?:fat|cream)\b|\bwhole[ -]milk\b/u.test(folded),
    lowSalt:
      /\b(?:(?:low|lower|reduced|less|no)[ -]?(?:added )?(?:salt|sodium)|salt[ -]free|unsalted|no[ -]salt)\b/u.test(
        folded,
      ),
    skin: skinOf(folded),
    liquid: liquidOf(folded),
  };
}

function liquidOf(folded: string): "out" | "in" | null {
  if (/\bundrained\b|\bwith (?:its|their|the) (?:liquid|juice)\b/u.test(folded)) return "in";
  return /\bdrained\b/u.test(folded) ? "out" : null;
}

function skinOf(folded: string): "on" | "off" | null {
  if (/\b(?:skinless|skinned|skin (?:off|removed)|without skin|no skin)\b/u.test(folded))
    return "off";
  return /\b(?:skin[ -]?on|with skin|and skin|skin left on)\b/u.test(folded) ? "on" : null;
}

/** "5% fat", "95% lean", "85/15", "fat free", "2%": per cent of fat. */
function readFat(folded: string): { readonly pct: number | null; readonly saysFat: boolean } {
  const lean = /(\d{2}) ?(?:%|per ?cent)? ?lean\b/u.exec(folded);
  if (lean !== null) return { pct: 100 - Number(lean[1]), saysFat: true };
  const leanFirst = /\blean \(?(\d{2}) ?%/u.exec(folded);
  if (leanFirst !== null) return { pct: 100 - Number(leanFirst[1]), saysFat: true };
  const pair = /\b(\d{2}) ?\/ ?(\d{1,2})\b/u.exec(folded);
  if (pair !== null && Number(pair[1]) + Number(pair[2]) === 100) {
    return { pct: Number(pair[2]), saysFat: true };
  }
  const fat = /(\d{1,2}(?:\.\d)?) ?(?:%|per ?cent) ?(?:milk)?fat/u.exec(folded);
  if (fat !== null) return { pct: Number(fat[1]), saysFat: true };
  if (/\b(?:fat.?free|non.?fat|no fat)\b/u.test(folded)) return { pct: 0, saysFat: true };
  const bare = /(\d{1,2}(?:\.\d)?) ?(?:%|per ?cent)/u.exec(folded);
  return { pct: bare === null ? null : Number(bare[1]), saysFat: false };
}
