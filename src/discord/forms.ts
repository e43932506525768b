import {
  type APIModalInteractionResponseCallbackData,
  ComponentType,
  type ModalSubmitInteraction,
  TextInputStyle,
} from "discord.js";
import { type FilledForm, FORM_LIMITS, type Form } from "../../commands/kit/form.ts";
import { cut, oneLine } from "./escape.ts";

/** A form as the platform takes it, within its limits. */
export function renderForm(form: Form): APIModalInteractionResponseCallbackData {
  return {
    custom_id: form.id,
    title: cut(oneLine(form.title) || "…", FORM_LIMITS.titleChars),
    components: form.fields.slice(0, 5).map((field) => ({
      type: ComponentType.Label,
      label: cut(oneLine(field.label) || "…", FORM_LIMITS.labelChars),
      ...(field.hint === undefined
        ? {}
        : { description: cut(oneLine(field.hint), FORM_LIMITS.hintChars) }),
      component: {
        type: ComponentType.TextInput,
        custom_id: field.name,
        style: field.isLong ? TextInputStyle.Paragraph : TextInputStyle.Short,
        required: field.required,
        max_length: FORM_LIMITS.valueChars,
        // The platform refuses an empty prefilled text.
        ...(field.value === "" ? {} : { value: cut(field.value, FORM_LIMITS.valueChars) }),
      },
    })),
  };
}

/** The texts that came back, by field name. */
export function readForm({ fields }: ModalSubmitInteraction): FilledForm {
  const texts = [...fields.fields.values()].flatMap((field): [string, string][] =>
    "value" in field && typeof field.value === "string" ? [[field.customId, field.value]] : [],
  );
  return Object.fromEntries(texts);
}
