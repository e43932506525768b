/** What the adapter needs of a log: fields first, then a plain sentence. */
export interface AdapterLog {
  info(fields: object, message: string): void;
  warn(fields: object, message: string): void;
  error(fields: object, message: string): void;
}

/** Small facts kept across restarts, such as the hash of the registered commands. */
export interface AdapterSettings {
  /** Null when it was never set. */
  get(key: string): Promise<string | null>;
  set(key: string, value: string): Promise<void>;
}
