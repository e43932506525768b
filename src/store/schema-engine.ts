import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import type { SchemaEngine } from "@prisma/schema-engine-wasm/schema_engine_bg";

type AdapterFactory = Parameters<typeof bindMigrationAwareSqlAdapterFactory>[0];
type Adapter = Awaited<ReturnType<AdapterFactory["connect"]>>;

/** The little of the global that is used here; TypeScript declares it only together with the DOM. */
interface Wasm {
  instantiate(
    bytes: Uint8Array,
    imports: Readonly<Record<string, object>>,
  ): Promise<{
    readonly instance: { readonly exports: { readonly __wbindgen_start: () => void } };
  }>;
}
const wasm: Wasm = Reflect.get(globalThis, "WebAssembly");

/** Nothing in the database belongs to anybody but the bot. */
export const NO_FILTERS = { externalTables: [], externalEnums: [] };

/**
 * The engine gives itself ten seconds to lock a server and lets the timer run on when it is done. It
 * must not keep the process alive.
 */
function passingTimer(work: () => void, ms: number): unknown {
  return setTimeout(work, ms >>> 0).unref();
}

let loading: Promise<typeof import("@prisma/schema-engine-wasm/schema_engine_bg")> | null = null;

/**
 * Loads Prisma's schema engine. Its own entry file imports the WebAssembly as a module, which Node 20
 * does only behind a flag, so the parts are put together here.
 */
async function load() {
  const bindings = await import("@prisma/schema-engine-wasm/schema_engine_bg");
  const path = createRequire(import.meta.url).resolve(
    "@prisma/schema-engine-wasm/schema_engine_bg",
  );
  const bytes = await readFile(path.replace(/\.js$/u, ".wasm"));
  const parts = Object.entries(bindings).map(([name, part]) =>
    name.startsWith("__wbg_setTimeout_") ? [name, passingTimer] : [name, part],
  );
  const { instance } = await wasm.instantiate(bytes, {
    "./schema_engine_bg.js": Object.fromEntries(parts),
  });
  bindings.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
  return bindings;
}

/** The same factory, keeping what it opened so that it can be closed for certain. */
function keepingTrack(factory: AdapterFactory, opened: Adapter[]): AdapterFactory {
  const track = async (connecting: Promise<Adapter>): Promise<Adapter> => {
    const adapter = await connecting;
    opened.push(adapter);
    return adapter;
  };
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: () => track(factory.connect()),
    connectToShadowDb: () => track(factory.connectToShadowDb()),
  };
}

/**
 * Runs `use` with a schema engine on its own connection from `factory`, then closes that connection.
 * The engine locks a SQLite file for itself and, when freed, closes it at some later time, so the
 * closing is not left to it.
 */
export async function withSchemaEngine<T>(
  factory: AdapterFactory,
  schema: string | null,
  use: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  loading ??= load();
  const { SchemaEngine: Engine } = await loading;
  const opened: Adapter[] = [];
  const engine = await Engine.new(
    { datamodels: schema === null ? undefined : [["schema.prisma", schema]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(keepingTrack(factory, opened)),
  );
  try {
    return await use(engine);
  } finally {
    engine.free();
    await Promise.all(opened.map((adapter) => adapter.dispose()));
  }
}
