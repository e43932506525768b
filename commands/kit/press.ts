/**
 * Button and choice ids: `<command>.<action>~arg~arg`. They come back from clients, so they are input:
 * the action parses its arguments with zod and checks who presses.
 */
export interface Press {
  readonly command: string;
  readonly action: string;
  readonly args: readonly string[];
}

/** The platform's limit for a custom id. */
export const PRESS_ID_MAX = 100;

export function writePress(
  command: string,
  action: string,
  ...args: readonly (string | number)[]
): string {
  const id = [`${command}.${action}`, ...args.map(String)].join("~");
  if (id.length > PRESS_ID_MAX || args.some((a) => String(a).includes("~"))) {
    throw new Error(`button id does not fit: ${id}`);
  }
  return id;
}

/** Null when the text is not one of our ids. */
export function readPress(id: string): Press | null {
  const [name, ...args] = id.split("~");
  const match = /^([a-z ]{1,30})\.([a-z ]{1,30})$/u.exec(name ?? "");
  if (id.length > PRESS_ID_MAX || match === null) return null;
  return { command: match[1] ?? "", action: match[2] ?? "", args };
}
