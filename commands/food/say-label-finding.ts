import type { LabelFinding } from "../../shared/label-entry/finding.ts";
import { writeMassG } from "../../shared/nutrition/write.ts";

/** One sentence for a coach about what looks like a slip: what does not fit, and what to look at on the pack. */
export function sayLabelFinding(finding: LabelFinding): string {
  switch (finding.code) {
    case "energies swapped":
      return "There are fewer kJ than kcal, and a kcal is about 4.2 kJ: type each with its own unit.";
    case "energies apart":
      return `${whole(finding.kcal)} kcal are about ${whole(finding.kcal * 4.184)} kJ, not ${whole(finding.kj)} kJ: look at both on the pack.`;
    case "energy above pure fat":
      return `That is ${whole(finding.kcalPer100g)} kcal in 100 g, more than pure fat has (900 kcal): look at the unit of energy: and at per:.`;
    case "energy in the other unit":
      return `${whole(finding.stated)} ${finding.unit} does not fit protein, fat and carbohydrate, and ${whole(finding.stated)} ${finding.other} would: look at the unit of energy: on the pack.`;
    case "energy off the macros":
      return energyOff(finding);
    case "more than the mass":
      return `The parts add up to ${writeMassG(finding.sumG)}, more than the ${writeMassG(finding.basisG)} they are in: look at per: and at each figure's decimal point.`;
    case "saturates above fat":
      return "There are more saturates than fat, and they are part of it: look at both on the pack.";
    case "sugars above carbohydrate":
      return "There are more sugars than carbohydrate, and they are part of it: look at both on the pack.";
    case "fibre above carbohydrate":
      return "There is more fibre than carbohydrate, and on a US label it is part of it: look at both, or type style:eu if the pack lists fibre apart.";
    case "sugars and fibre above carbohydrate":
      return "Sugars and fibre together are more than carbohydrate, and on a US label both are part of it: look at them, or type style:eu if the pack lists fibre apart.";
    case "salt and sodium apart":
      return `That sodium makes ${small(finding.saltOfSodiumG)} g of salt (sodium × 2.5), not ${small(finding.saltG)} g: look at both on the pack.`;
    case "more sodium than salt has":
      return "That is more sodium than pure salt has: look whether the pack says mg, or salt instead of sodium.";
    case "sodium below a milligram":
      return "That is less than a milligram of sodium: look whether the pack says g instead of mg.";
    case "much saltier than its like":
      return `That is ${small(finding.saltPer100g)} g of salt in 100 g, where its like has ${small(finding.likePer100g)} g: look at the decimal point, and whether the pack says sodium.`;
  }
}

function energyOff(finding: Extract<LabelFinding, { code: "energy off the macros" }>): string {
  const { unit, stated, side } = finding;
  const from = whole(finding.from);
  const to = whole(finding.to);
  const range = from === to ? `about ${to}` : `${from} to ${to}`;
  const why =
    side === "above"
      ? "alcohol, acids or fibre that are not typed would explain more"
      : "polyols (sweeteners) or fibre inside the carbohydrate would explain less";
  return `Protein, fat and carbohydrate give ${range} ${unit} and the label says ${whole(stated)} ${unit}: look at each figure and its unit (${why}).`;
}

function whole(value: number): string {
  return String(Math.round(value));
}

function small(value: number): string {
  return String(Number(value.toPrecision(2)));
}
