import type { PrismaClient } from "./generated/client.ts";
import { patiently } from "./patience.ts";

/** Small facts the bot keeps about itself, such as the hash of the commands it has registered. */
export interface Settings {
  /** Null when it was never set. */
  get(key: string): Promise<string | null>;
  set(key: string, value: string): Promise<void>;
}

export function prismaSettings(db: PrismaClient): Settings {
  return {
    get: async (key) => (await db.setting.findUnique({ where: { key } }))?.value ?? null,
    set: async (key, value) => {
      await patiently(() =>
        db.setting.upsert({ where: { key }, create: { key, value }, update: { value } }),
      );
    },
  };
}
