import { type JsonObject, list, obj, str } from "./json.ts";
import type { Interaction } from "./platform.ts";

/** A form as a person sees it. */
export interface OpenForm {
  readonly id: string;
  readonly title: string;
  /** Field name -> what stands in it. */
  readonly values: Readonly<Record<string, string>>;
  readonly labels: readonly string[];
  /** The message whose button opened it; null when a command did. */
  readonly sourceId: string | null;
}

export function openForm({ form, sourceId }: Interaction): OpenForm {
  const labels = list(form?.["components"]).map(obj);
  const inputs = labels.map((label) => obj(label["component"]));
  return {
    id: str(form?.["custom_id"]),
    title: str(form?.["title"]),
    labels: labels.map((label) => str(label["label"])),
    values: Object.fromEntries(
      inputs.map((input) => [str(input["custom_id"]), str(input["value"] ?? "")]),
    ),
    sourceId,
  };
}

/** The data of a submission, as the platform sends it. */
export function submittedForm(form: OpenForm, texts: Readonly<Record<string, string>>): JsonObject {
  const components = Object.entries({ ...form.values, ...texts }).map(([name, value], index) => ({
    type: 18,
    id: index * 2 + 1,
    component: { type: 4, id: index * 2 + 2, custom_id: name, value },
  }));
  return { custom_id: form.id, components };
}
