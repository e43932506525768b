import { openStore } from "../../../src/store/open.ts";

// A process of its own that opens a store, says how that went as one line of JSON, and keeps it open.

const opened = await openStore(process.argv[2] ?? "");
process.stdout.write(`${JSON.stringify(opened.ok ? { ok: true } : opened)}\n`);
if (opened.ok) setInterval(() => undefined, 60_000);
