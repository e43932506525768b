import { type Json, type JsonObject, list, num, obj, str } from "../json.ts";
import type { Faults } from "./fault-list.ts";

// Limits of components: the platform's developer documentation, components/reference.
const COMPONENTS_MAX = 40;
const TEXT_MAX = 4_000;
const ROW = 1;
const BUTTON = 2;
const STRING_SELECT = 3;
const TEXT_DISPLAY = 10;
const MEDIA_GALLERY = 12;
const FILE = 13;
const SEPARATOR = 14;
const CONTAINER = 17;
const LINK = 5;

/** All components of a message, nested ones included, in order. */
export function flatten(components: readonly Json[]): readonly JsonObject[] {
  return components.flatMap((value) => {
    const component = obj(value);
    const inner = flatten(list(component["components"]));
    const accessory = component["accessory"] === undefined ? [] : [obj(component["accessory"])];
    return [component, ...inner, ...accessory];
  });
}

/** Checks the components of a Components V2 message; `fileNames` are its attachments. */
export function checkComponents(
  components: readonly Json[],
  fileNames: readonly string[],
  faults: Faults,
): void {
  const all = flatten(components);
  faults.count("components", all.length, 1, COMPONENTS_MAX);
  const texts = all.filter((c) => c["type"] === TEXT_DISPLAY).map((c) => str(c["content"]));
  if (texts.reduce((sum, text) => sum + text.length, 0) > TEXT_MAX) {
    faults.add("components", "COMPONENT_TEXT_TOO_LONG", "4,000 characters of text in all at most");
  }
  checkUnique(
    all.map((c) => c["custom_id"]).filter((id) => id !== undefined),
    "custom_id",
    faults,
  );
  checkUnique(
    all.map((c) => c["id"]).filter((id) => id !== undefined && id !== 0),
    "id",
    faults,
  );
  components.forEach((component, index) => {
    checkTopLevel(obj(component), `components.${index}`, fileNames, faults);
  });
  checkFilesShown(all, fileNames, faults);
}

function checkUnique(values: readonly (Json | undefined)[], what: string, faults: Faults): void {
  if (new Set(values).size !== values.length) {
    faults.add("components", "COMPONENT_DUPLICATED", `${what} must be unique in the message`);
  }
}

function checkFilesShown(
  all: readonly JsonObject[],
  fileNames: readonly string[],
  faults: Faults,
): void {
  const inFiles = all.filter((c) => c["type"] === FILE).map((c) => str(obj(c["file"])["url"]));
  const inGalleries = all
    .filter((c) => c["type"] === MEDIA_GALLERY)
    .flatMap((c) => list(c["items"]))
    .map((item) => str(obj(obj(item)["media"])["url"]));
  const shown = [...inFiles, ...inGalleries];
  for (const name of fileNames) {
    if (!shown.includes(`attachment://${name}`)) {
      // Not refused by the platform, but the reader would never see it.
      faults.add("components", "FILE_NOT_SHOWN", `${name} is attached and shown by no component`);
    }
  }
}

function checkTopLevel(
  component: JsonObject,
  at: string,
  fileNames: readonly string[],
  faults: Faults,
): void {
  switch (component["type"]) {
    case ROW:
      checkRow(list(component["components"]), `${at}.components`, faults);
      return;
    case TEXT_DISPLAY:
      faults.text(`${at}.content`, component["content"], 1, TEXT_MAX);
      return;
    case FILE: {
      const url = str(obj(component["file"])["url"]);
      const isAttached = fileNames.some((name) => url === `attachment://${name}`);
      if (!isAttached)
        faults.add(`${at}.file.url`, "UNFURLED_MEDIA_ITEM", `${url} is not attached`);
      return;
    }
    case MEDIA_GALLERY:
      checkGallery(list(component["items"]), `${at}.items`, fileNames, faults);
      return;
    case SEPARATOR:
      return;
    case CONTAINER:
      list(component["components"]).forEach((inner, index) => {
        checkTopLevel(obj(inner), `${at}.components.${index}`, fileNames, faults);
      });
      return;
    default:
      faults.add(`${at}.type`, "UNION_TYPE_CHOICES", "not a top-level component");
  }
}

/** One to ten media, each attached or on the web, its text of 1 to 1,024 characters. */
function checkGallery(
  items: readonly Json[],
  at: string,
  fileNames: readonly string[],
  faults: Faults,
): void {
  faults.count(at, items.length, 1, 10);
  items.forEach((value, index) => {
    const item = obj(value);
    const url = str(obj(item["media"])["url"]);
    const isThere =
      /^https?:\/\//u.test(url) || fileNames.some((name) => url === `attachment://${name}`);
    if (!isThere) {
      faults.add(`${at}.${index}.media.url`, "UNFURLED_MEDIA_ITEM", `${url} is not attached`);
    }
    if (item["description"] !== undefined) {
      faults.text(`${at}.${index}.description`, item["description"], 1, 1_024);
    }
  });
}

function checkRow(inner: readonly Json[], at: string, faults: Faults): void {
  const types = new Set(inner.map((c) => num(obj(c)["type"])));
  const isButtons = types.size === 1 && types.has(BUTTON) && inner.length <= 5;
  const isSelect = inner.length === 1 && types.has(STRING_SELECT);
  if (!isButtons && !isSelect) {
    faults.add(at, "BASE_TYPE_BAD_LENGTH", "a row holds 1 to 5 buttons or one select");
  }
  inner.forEach((value, index) => {
    const component = obj(value);
    const place = `${at}.${index}`;
    if (component["type"] === BUTTON) checkButton(component, place, faults);
    else if (component["type"] === STRING_SELECT) checkSelect(component, place, faults);
  });
}

function checkButton(button: JsonObject, at: string, faults: Faults): void {
  faults.text(`${at}.label`, button["label"], 1, 80);
  const style = num(button["style"]);
  if (style < 1 || style > 6) faults.add(`${at}.style`, "BASE_TYPE_CHOICES", "not a button style");
  if (style === LINK) faults.text(`${at}.url`, button["url"], 1, 512);
  else faults.text(`${at}.custom_id`, button["custom_id"], 1, 100);
}

function checkSelect(select: JsonObject, at: string, faults: Faults): void {
  faults.text(`${at}.custom_id`, select["custom_id"], 1, 100);
  if (select["placeholder"] !== undefined) {
    faults.text(`${at}.placeholder`, select["placeholder"], 0, 150);
  }
  const options = list(select["options"]);
  faults.count(`${at}.options`, options.length, 1, 25);
  checkUnique(
    options.map((o) => obj(o)["value"]),
    "option value",
    faults,
  );
  options.forEach((value, index) => {
    const option = obj(value);
    faults.text(`${at}.options.${index}.label`, option["label"], 1, 100);
    faults.text(`${at}.options.${index}.value`, option["value"], 1, 100);
    if (option["description"] !== undefined) {
      faults.text(`${at}.options.${index}.description`, option["description"], 1, 100);
    }
  });
}
