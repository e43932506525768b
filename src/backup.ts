import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { systemClock } from "./clock.ts";
import { readConfig, withEnvFile } from "./config.ts";
import { backUp, FileThere } from "./store/backup.ts";
import { checkFile, type FileReport } from "./store/check-file.ts";
import { FileTaken } from "./store/file-owner.ts";
import { restore } from "./store/restore.ts";

// Copies the embedded database while the bot runs, looks through a copy, and puts one back:
//
//   node --import tsx src/backup.ts --to FILE
//   node --import tsx src/backup.ts --check FILE
//   node --import tsx src/backup.ts --restore FILE
//
// The database is the one in DATABASE_URL (of the environment or of .env).

const USAGE =
  "Say one of: --to FILE to back up, --check FILE to look through a backup, --restore FILE to put one in the place of the database.";
const ON_A_SERVER =
  "DATABASE_URL is on a PostgreSQL server, which has tools of its own: pg_dump --format=custom to back up, pg_restore to put it back.";

/** What to do, and with which file. */
interface Asked {
  readonly task: "to" | "check" | "restore";
  readonly file: string;
}

process.exitCode = await main(process.argv.slice(2));

async function main(args: readonly string[]): Promise<number> {
  const asked = readArgs(args);
  if (asked === null) return complain(2, USAGE);
  try {
    return asked.task === "check" ? await check(asked.file) : await onDatabase(asked);
  } catch (error) {
    return complain(1, sentenceFor(error, asked));
  }
}

function readArgs(args: readonly string[]): Asked | null {
  try {
    const type = "string";
    const options = { to: { type }, check: { type }, restore: { type } } as const;
    const { values } = parseArgs({ args: [...args], options });
    const given = (["to", "check", "restore"] as const).flatMap((task) => {
      const file = values[task];
      return file === undefined || file === "" ? [] : [{ task, file: resolve(file) }];
    });
    return given.length === 1 ? (given[0] ?? null) : null;
  } catch {
    return null;
  }
}

async function onDatabase({ task, file }: Asked): Promise<number> {
  const config = readConfig(withEnvFile(process.env));
  if (!config.ok) return complain(1, ...config.problem);
  const { databaseUrl } = config.value;
  if (!databaseUrl.startsWith("file:")) return complain(1, ON_A_SERVER);
  const database = resolve(databaseUrl.slice("file:".length));
  if (task === "to") {
    const report = await backUp(database, file);
    return tell(`Backed up ${database} to ${file}.`, report);
  }
  const { report, aside } = await restore(file, database, systemClock.now());
  if (report.faults.length > 0) return tell(`${file} was not restored: nothing changed.`, report);
  const before = aside === null ? "There was none before." : `What was there is now ${aside}.`;
  return tell(`${database} is now what ${file} holds. ${before}`, report);
}

async function check(file: string): Promise<number> {
  const report = await checkFile(file);
  return tell(report.faults.length === 0 ? `${file} is sound.` : `${file} is not sound.`, report);
}

/** What was done and found. The exit code says whether all is well. */
function tell(lead: string, { faults, rows, portions, migrationsToCome }: FileReport): number {
  const { cooked, corrected, inStock, gone } = portions;
  const counted =
    corrected === 0
      ? ""
      : `, ${Math.abs(corrected)} ${corrected > 0 ? "more" : "fewer"} when counted,`;
  const lines = [
    lead,
    ...(faults.length > 0
      ? faults
      : [
          `Portions: ${cooked} cooked${counted} = ${inStock} in stock + ${gone} eaten, given or thrown away.`,
        ]),
    ...(Object.keys(rows).length > 0
      ? [
          `Rows: ${Object.entries(rows)
            .map(([table, count]) => `${table} ${count}`)
            .join(", ")}.`,
        ]
      : []),
    ...(migrationsToCome > 0
      ? ["It is of an older version; the bot brings it up to date when it starts."]
      : []),
  ];
  const stream = faults.length > 0 ? process.stderr : process.stdout;
  stream.write(`${lines.join("\n")}\n`);
  return faults.length > 0 ? 1 : 0;
}

function complain(code: number, ...sentences: readonly string[]): number {
  process.stderr.write(`${sentences.join("\n")}\n`);
  return code;
}

function sentenceFor(error: unknown, { task, file }: Asked): string {
  if (error instanceof FileThere)
    return `${file} is there already. Name another file, or move it away.`;
  if (error instanceof FileTaken)
    return "The bot has the database open. Stop it first, then restore.";
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "SQLITE_NOTADB")
    return `${task === "to" ? "The database" : file} is not a database file.`;
  if (code === "SQLITE_CANTOPEN" || code === "ENOENT") {
    return task === "to"
      ? "The database of DATABASE_URL cannot be opened, or the backup cannot be written. Check that both can be reached."
      : `${file} cannot be opened. Check its name.`;
  }
  return `That did not work (${code === "" ? String(error) : code}). Check that there is room on the disk and that the folders can be written to.`;
}
