import type { Grid } from "../../shared/container-label/grids.ts";
import { type LaidSheets, layCard, laySheets } from "../../shared/container-label/layout.ts";
import type { LabelWords, NoteId } from "../../shared/container-label/types.ts";
import type { Print, PrintPage } from "../../shared/picture/print.ts";
import { count } from "../../shared/words/plural.ts";
import { writePress } from "../kit/press.ts";
import { type Button, type Reply, reply, rows, text } from "../kit/reply.ts";
import type { LabelledLot } from "./label-jobs.ts";

export interface Sheet {
  readonly grid: Grid;
  /** The first label of the page that is still free; 1 is the one top left. */
  readonly start: number;
}

interface LabelsInput {
  readonly lots: readonly LabelledLot[];
  /** Sentences on what gets no label because it must be thrown away. */
  readonly past: readonly string[];
  /** Sentences on portions that had better be moved before they are labelled. */
  readonly first: readonly string[];
  readonly firstButtons: readonly Button[];
  readonly sheet: Sheet;
  /** What the buttons print again: its kind and id. */
  readonly again: readonly [kind: string, id: string];
}

const CARDS_MAX = 4;
/** So many labels are read out in the message; more go into a file. */
const READ_OUT_MAX = 2;
const ALT_MAX = 1_000;

export function labelsReply(input: LabelsInput): Reply {
  const { lots, sheet, past } = input;
  const laid = laySheets(sheet.grid, jobsOf(lots), sheet.start);
  const total = lots.reduce((sum, { labels }) => sum + labels, 0);
  const titles = [...new Set(lots.map(({ batch }) => batch.title))];
  const what = titles.length === 1 ? titles.join("") : count(titles.length, "dish");
  const pages = count(laid.pages.length, `${sheet.grid.page} sheet`);
  const readOut = lots.length <= READ_OUT_MAX ? lots : [];
  return reply(`${count(total, "label")} on ${pages}: ${what}.`, {
    alerts: [...past, ...elsewhereAlerts(lots, laid)],
    parts: [
      rows(
        sheetTitle(sheet),
        lots.map((one) => lotRow(one, titles.length > 1)),
      ),
      ...(input.first.length === 0 ? [] : [text(...input.first)]),
      ...readOut.map((one) => text(`The label ${one.code} says:`, ...sentencesOf(wordsOf(one)))),
      ...leftOffParts(laid),
    ],
    cautions: [
      "Print at 100 %, not “fit to page”, and try on plain paper first.",
      "The dates hold while the portions stay where they are: after you freeze or thaw them, print again.",
    ],
    prints: [pdfOf(input, laid, what), ...lots.slice(0, CARDS_MAX).map(cardOf)],
    files: readOut.length > 0 ? [] : [{ name: "labels.txt", text: readAll(lots) }],
    buttons: [...input.firstButtons, ...sheetButtons(input), seeStock()],
  });
}

function jobsOf(lots: readonly LabelledLot[]) {
  return lots.flatMap(({ jobs }) => jobs);
}

/** All labels of a lot say the same but for the places to tick. */
function wordsOf({ jobs }: LabelledLot): LabelWords {
  const [first] = jobs;
  if (first === undefined) throw new Error("a lot without a label");
  return first.words;
}

function sheetTitle({ grid, start }: Sheet): string {
  return start === 1 ? grid.name : `${grid.name}, from label ${start} on`;
}

function lotRow(one: LabelledLot, isNamed: boolean) {
  const { lead, date } = wordsOf(one);
  const where = one.lot.place === "thawing" ? "thawing in the fridge" : one.lot.place;
  return {
    label: isNamed ? `${one.batch.title}, ${where}` : capital(where),
    figure: count(one.labels, "label"),
    note: `code ${one.code}, ${lead.toLowerCase()} ${date}`,
  };
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}

/** The words of a label at their fullest. */
function sentencesOf({ name, lead, date, notes }: LabelWords): readonly string[] {
  const title = name === "" ? "(a line to write the name on: its letters cannot be printed)" : name;
  return [title, `${lead} ${date}`, ...notes.flatMap(({ forms: [whole] }) => whole ?? [])];
}

function readAll(lots: readonly LabelledLot[]): string {
  return lots
    .map((one) => [`${one.code}, ${count(one.labels, "label")}`, ...sentencesOf(wordsOf(one))])
    .map((lines) => `${lines.join("\n")}\n`)
    .join("\n");
}

function altOf(lines: readonly string[]): string {
  const whole = lines.join(" ");
  return whole.length <= ALT_MAX ? whole : `${[...whole].slice(0, ALT_MAX - 2).join("")}…`;
}

function pdfOf({ lots, sheet }: LabelsInput, laid: LaidSheets, what: string): Print {
  const codes = lots.map(({ code }) => code);
  return {
    name: `labels-${codes.length === 1 ? codes.join("") : `${codes.length}-lots`}-${sheet.grid.page.toLowerCase()}`,
    format: "pdf",
    title: `Labels, ${what}`,
    pages: laid.pages,
    alt: altOf(lots.map((one) => `${one.labels} x ${sentencesOf(wordsOf(one)).join(". ")}`)),
  };
}

function cardOf(one: LabelledLot): Print {
  const card = layCard(wordsOf(one));
  return {
    name: `label-${one.code}`,
    format: "png",
    title: `Label ${one.code} for a phone`,
    pages: [card.page],
    alt: altOf([`Label, code ${one.code}:`, ...shownOn(card.page)]),
  };
}

function shownOn({ items }: PrintPage): readonly string[] {
  return items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
}

const NOTE_WORDS: Readonly<Record<NoteId, string>> = {
  after: "what the date means",
  cooked: "the day of cooking",
  thaw: "how to thaw",
  portion: "the portion's figures",
  without: "what was left out",
  allergens: "the allergens",
  reheat: "reheating",
};

/** A box without its allergens is dangerous in a shared kitchen: said loudly. */
function elsewhereAlerts(lots: readonly LabelledLot[], laid: LaidSheets): readonly string[] {
  const isOff = laid.singles.some(({ leftOff }) => leftOff.includes("allergens"));
  if (!isOff) return [];
  const names = [...new Set(lots.map(({ batch }) => batch.title))].join(", ");
  return [
    `Too small for the allergens: the labels only say where to look (${names}). Take a larger label if others eat from your fridge.`,
  ];
}

function leftOffParts(laid: LaidSheets): Reply["parts"] {
  const off = new Set(laid.singles.flatMap(({ leftOff }) => leftOff));
  off.delete("allergens");
  if (off.size === 0) return [];
  const names = [...off].map((id) => NOTE_WORDS[id]).join(", ");
  return [text(`No room on labels of this size for: ${names}.`)];
}

/** The other paper, which is what a wrong first guess needs; plain stays plain. */
function sheetButtons({ sheet, again }: LabelsInput): readonly Button[] {
  const other = sheet.grid.page === "A4" ? "letter" : "a4";
  const label = other === "a4" ? "On A4 paper" : "On US Letter paper";
  return [
    {
      id: writePress(
        "batch labels",
        "print",
        ...again,
        other,
        sheet.grid.isCut ? "plain" : "sheet",
      ),
      label,
      weight: "plain",
    },
  ];
}

function seeStock(): Button {
  return { id: writePress("stock", "board"), label: "See stock", weight: "plain" };
}
