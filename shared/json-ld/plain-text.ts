/** Named characters that recipes use; others stay as they are written (HTML Living Standard, 13.5). */
const NAMED: ReadonlyMap<string, string> = new Map(
  Object.entries({
    amp: "&",
    lt: "<",
    gt: ">",
    quot: '"',
    apos: "'",
    nbsp: " ",
    frac12: "½",
    half: "½",
    frac13: "⅓",
    frac23: "⅔",
    frac14: "¼",
    frac34: "¾",
    frac18: "⅛",
    deg: "°",
    times: "×",
    middot: "·",
    bull: "•",
    ndash: "–",
    mdash: "—",
    hellip: "…",
    lsquo: "‘",
    rsquo: "’",
    ldquo: "“",
    rdquo: "”",
    eacute: "é",
    egrave: "è",
    ecirc: "ê",
    agrave: "à",
    acirc: "â",
    aacute: "á",
    auml: "ä",
    aring: "å",
    ccedil: "ç",
    icirc: "î",
    iacute: "í",
    ntilde: "ñ",
    oacute: "ó",
    ocirc: "ô",
    ouml: "ö",
    oslash: "ø",
    ucirc: "û",
    uacute: "ú",
    uuml: "ü",
    szlig: "ß",
  }),
);

const BLOCK = /<\/?(?:br|p|li|ul|ol|div|tr|h[1-6])\b[^<>]{0,2000}>/giu;
/** Starts with a letter: "a < b" is no tag. */
const TAG = /<[/!]?[a-z][^<>]{0,2000}>/giu;
/** A tag written as text, as pages do that encode twice. */
const ENCODED_TAG = /&lt;\/?[a-z][^<>&]{0,2000}&gt;/giu;
const ENTITY = /&(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z][a-z\d]{1,15}));/giu;
const HIDDEN: readonly (readonly [from: RegExp, until: RegExp])[] = [
  [/<!--/gu, /-->/gu],
  [/<(?:script|style)\b/giu, /<\/(?:script|style)\b[^<>]{0,200}>/giu],
];

/** The lines of a text that may hold markup, each as plain text; blank ones are dropped. */
export function plainLines(text: string): readonly string[] {
  const shown = HIDDEN.reduce((rest, [from, until]) => without(rest, from, until), text);
  return shown
    .replace(BLOCK, "\n")
    .replace(TAG, "")
    .replace(ENCODED_TAG, " ")
    .replace(ENTITY, decoded)
    .split(/[\n\r\u2028\u2029]/u)
    .map(clean)
    .filter((line) => line !== "");
}

/** A text that may hold markup as one line of plain text. */
export function plainLine(text: string): string {
  return plainLines(text).join(" ");
}

/** Text written such that `plainLine` gives it back. What looks like no markup stays as it is. */
export function markupSafe(text: string): string {
  return markupSafeLines([text]);
}

/** Lines as one text, such that `plainLines` gives them back. */
export function markupSafeLines(lines: readonly string[]): string {
  const text = lines.join("\n");
  // Not line by line: what one line opens, another may close.
  if (plainLines(text).join("\n") === text) return text;
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
}

/** Cuts from each opening to the next closing, in one pass; what never closes is cut to the end. */
function without(text: string, from: RegExp, until: RegExp): string {
  const opening = new RegExp(from);
  const closing = new RegExp(until);
  const kept: string[] = [];
  let at = 0;
  for (let open = opening.exec(text); open !== null; open = opening.exec(text)) {
    kept.push(text.slice(at, open.index));
    closing.lastIndex = opening.lastIndex;
    if (closing.exec(text) === null) return kept.join(" ");
    at = closing.lastIndex;
    opening.lastIndex = at;
  }
  return [...kept, text.slice(at)].join(" ");
}

function decoded(said: string, decimal?: string, hex?: string, name?: string): string {
  if (name !== undefined) return NAMED.get(name) ?? said;
  const point = decimal === undefined ? Number.parseInt(hex ?? "", 16) : Number(decimal);
  // Halves of characters, and what is none, are dropped.
  const isCharacter = point > 0 && point <= 0x10ffff && (point < 0xd800 || point > 0xdfff);
  return isCharacter ? String.fromCodePoint(point) : "";
}

/** As the reader of recipes cleans a line: nothing invisible that hides or turns text, single spaces. */
function clean(line: string): string {
  return line
    .replace(/[\p{Cc}\p{Z}]/gu, " ")
    .replace(/[\p{Cf}\p{Co}\p{Cs}]/gu, "")
    .normalize("NFC")
    .replace(/ {2,}/gu, " ")
    .trim();
}
