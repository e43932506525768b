import {
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIStringSelectComponent,
  ButtonStyle,
  ComponentType,
} from "discord.js";
import { PRESS_ID_MAX } from "../../commands/kit/press.ts";
import type { Button, Choice } from "../../commands/kit/reply.ts";
import { cut, oneLine } from "./escape.ts";

// Limits: the platform's developer documentation, components/reference.
const BUTTONS_MAX = 10;
const FIRST_ROW = 3;
const ROW_MAX = 5;
const BUTTON_LABEL_MAX = 80;
const SELECTS_MAX = 5;
const OPTIONS_MAX = 25;
const OPTION_TEXT_MAX = 100;
const PLACEHOLDER_MAX = 150;

type Row = APIActionRowComponent<APIButtonComponentWithCustomId | APIStringSelectComponent>;

const STYLES = {
  main: ButtonStyle.Primary,
  plain: ButtonStyle.Secondary,
  grave: ButtonStyle.Danger,
} as const;

/** The pick-one lists and buttons as rows. What the platform would refuse is left out. */
export function renderControls(buttons: readonly Button[], choices: readonly Choice[]): Row[] {
  const taken = new Set<string>();
  const selects = choices
    .filter((choice) => mayStand(choice.id, taken))
    .map(select)
    .filter((shown) => shown.options.length > 0)
    .slice(0, SELECTS_MAX);
  const pressable = buttons
    .filter((button) => oneLine(button.label) !== "" && mayStand(button.id, taken))
    .slice(0, BUTTONS_MAX)
    .map(renderButton);
  const rows: Row[] = selects.map((shown) => row([shown]));
  for (let from = 0; from < pressable.length; from += from === 0 ? FIRST_ROW : ROW_MAX) {
    rows.push(row(pressable.slice(from, from + (from === 0 ? FIRST_ROW : ROW_MAX))));
  }
  return rows;
}

/** Whether an id fits and is the first of its kind in the message; notes it. */
function mayStand(id: string, taken: Set<string>): boolean {
  if (id.trim() === "" || id.length > PRESS_ID_MAX || taken.has(id)) return false;
  taken.add(id);
  return true;
}

function row(components: Row["components"]): Row {
  return { type: ComponentType.ActionRow, components };
}

function renderButton(button: Button): APIButtonComponentWithCustomId {
  return {
    type: ComponentType.Button,
    style: STYLES[button.weight],
    custom_id: button.id,
    label: cut(oneLine(button.label), BUTTON_LABEL_MAX),
  };
}

function select(choice: Choice): APIStringSelectComponent {
  const values = new Set<string>();
  const options = choice.options
    .filter(({ value, label }) => {
      // A value is never cut: it would then name something else.
      const fits = value.trim() !== "" && value.length <= OPTION_TEXT_MAX && !values.has(value);
      values.add(value);
      return fits && oneLine(label) !== "";
    })
    .slice(0, OPTIONS_MAX)
    .map(({ value, label, hint }) => ({
      value,
      label: cut(oneLine(label), OPTION_TEXT_MAX),
      ...(oneLine(hint ?? "") === ""
        ? {}
        : { description: cut(oneLine(hint ?? ""), OPTION_TEXT_MAX) }),
    }));
  const placeholder = cut(oneLine(choice.placeholder), PLACEHOLDER_MAX);
  return {
    type: ComponentType.StringSelect,
    custom_id: choice.id,
    options,
    ...(placeholder === "" ? {} : { placeholder }),
  };
}
