import { type JsonObject, list, obj } from "../json.ts";
import { Faults, type Violation } from "./fault-list.ts";

/**
 * A form's limits (docs.discord.com, interactions/receiving-and-responding and components/reference):
 * title 45, custom_id 100, one to five labels of 45 with a description of 100, each with a text input of
 * at most 4,000 characters.
 */
export function checkForm(data: JsonObject): readonly Violation[] {
  const faults = new Faults();
  faults.text("data.custom_id", data["custom_id"], 1, 100);
  faults.text("data.title", data["title"], 1, 45);
  const labels = list(data["components"]).map(obj);
  faults.count("data.components", labels.length, 1, 5);
  const names = new Set<unknown>();
  labels.forEach((label, index) => {
    const at = `data.components.${index}`;
    faults.must(`${at}.type`, label["type"] === 18, "must be a label");
    faults.text(`${at}.label`, label["label"], 1, 45);
    if (label["description"] !== undefined)
      faults.text(`${at}.description`, label["description"], 1, 100);
    const input = obj(label["component"]);
    faults.must(`${at}.component.type`, input["type"] === 4, "must be a text input");
    faults.text(`${at}.component.custom_id`, input["custom_id"], 1, 100);
    if (input["value"] !== undefined) faults.text(`${at}.component.value`, input["value"], 1, 4000);
    names.add(input["custom_id"]);
  });
  faults.must("data.components", names.size === labels.length, "custom ids must differ");
  return faults.list;
}
