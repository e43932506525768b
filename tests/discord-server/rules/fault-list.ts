import type { JsonObject } from "../json.ts";

/** One way in which a payload breaks the platform's limits: where, and what. */
export interface Violation {
  /** Path into the payload: "components.0.components.2.label". */
  readonly at: string;
  readonly code: string;
  readonly message: string;
}

/** Collects violations while a payload is walked. */
export class Faults {
  readonly list: Violation[] = [];

  add(at: string, code: string, message: string): void {
    this.list.push({ at, code, message });
  }

  /** Text that must hold `min` to `max` characters and not be blank (unless `min` is 0). */
  text(at: string, value: unknown, min: number, max: number): value is string {
    if (typeof value !== "string") {
      this.add(at, "STRING_TYPE_CONVERT", "must be text");
      return false;
    }
    const length = value.length;
    if (length < min || length > max || (min > 0 && value.trim() === "")) {
      this.add(at, "BASE_TYPE_BAD_LENGTH", `Must be between ${min} and ${max} in length.`);
      return false;
    }
    return true;
  }

  must(at: string, holds: boolean, message: string): void {
    if (!holds) this.add(at, "BASE_TYPE", message);
  }

  count(at: string, length: number, min: number, max: number): boolean {
    if (length >= min && length <= max) return true;
    this.add(at, "BASE_TYPE_BAD_LENGTH", `Must be between ${min} and ${max} in length.`);
    return false;
  }
}

/** The platform's error body for a broken payload: code 50035 with the place of each fault. */
export function invalidForm(list: readonly Violation[]): JsonObject {
  const errors: { [key: string]: JsonObject } = {};
  for (const { at, code, message } of list) errors[at] = { _errors: [{ code, message }] };
  return { code: 50035, message: "Invalid Form Body", errors };
}
