/** What a letter is when written plainly, for letters that do not decompose into letter and accent. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  đ: "d",
  ł: "l",
  ı: "i",
  "’": "'",
  "‘": "'",
};

const PLAIN_TEXT = /^[ -~]*$/u;

/**
 * Text as it is compared: lower case, no accents, curly quotes and dashes straightened, runs of white
 * space as one space. Other punctuation stays; `foldWords` drops it.
 */
export function fold(text: string): string {
  // Most text is plain, and then there is little to do.
  if (PLAIN_TEXT.test(text)) return text.toLowerCase().replace(/ {2,}/gu, " ").trim();
  return (
    text
      // Else "1½" would become "11/2", and "10²" 102.
      .replace(/(\d)([¼-¾⅐-⅞²³¹⁰-⁹])/gu, "$1 $2")
      .normalize("NFKD")
      .toLowerCase()
      .replace(/\p{M}/gu, "")
      .replace(/[ßæœøđłı’‘]/gu, (letter) => PLAIN[letter] ?? letter)
      .replace(/[\u2010-\u2015\u2212]/gu, "-")
      .replace(/\u2044/gu, "/")
      .replace(/\s+/gu, " ")
      .trim()
  );
}

/** The words of a text for search: folded, letters and digits only, one space between. */
export function foldWords(text: string): string {
  return fold(text)
    .replace(/'/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}
