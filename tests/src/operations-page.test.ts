import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readConfig } from "../../src/config.ts";
import { createMetrics } from "../../src/ops/metrics.ts";
import { opsPages } from "../../src/ops/pages.ts";

// The operations page of the README says what is so: every name on it is one of the code's, and none is
// missing.

const readme = readFileSync("README.md", "utf8");
const [, page = ""] = /\n## Operations\n(.*?)\n## /su.exec(readme) ?? [];

/** All that a pattern's first group finds in a text, each once, in order of the alphabet. */
function found(text: string, pattern: RegExp): readonly string[] {
  return [...new Set([...text.matchAll(pattern)].map((match) => match[1] ?? ""))].toSorted();
}

/** Names in the first column of the table under such a heading. */
function firstColumn(heading: string): readonly string[] {
  const [, table = ""] =
    new RegExp(`\\n\\| ${heading} \\|.*?\\n(.*?)\\n\\n`, "su").exec(page) ?? [];
  const cells = table.split("\n").map((row) => row.split("|")[1] ?? "");
  return found(cells.join(" "), /`(\w+)`/gu);
}

const settings = firstColumn("setting");

describe("the settings on the operations page", () => {
  it("are those that the bot reads, each with a fault of its own that names it", () => {
    const broken = readConfig(Object.fromEntries(settings.map((name) => [name, "!"])));
    if (broken.ok) throw new Error("a faulty setting was taken");
    expect(found(broken.problem.join("\n"), /^([A-Z_]+) /gmu)).toEqual(settings);
    expect(broken.problem).toHaveLength(settings.length);
  });

  it("are all that the bot reads, and all of the example", () => {
    const code = readFileSync("src/config.ts", "utf8");
    expect(found(code, /^ {4}([A-Z_]{4,}): /gmu)).toEqual(settings);
    expect(found(readFileSync(".env.example", "utf8"), /^(?:# )?([A-Z_]+)=/gmu)).toEqual(settings);
  });

  it("are given in the container file and the unit as the bot takes them", () => {
    for (const url of found(page, /DATABASE_URL=(file:[\w./-]+\w)/gu)) {
      expect(readConfig({ DATABASE_URL: url })).toMatchObject({ value: { databaseUrl: url } });
    }
    for (const shards of ["0-3/8", "0/2", "1/2"]) {
      expect(page).toContain(`\`${shards}\``);
      expect(readConfig({ DISCORD_SHARDS: shards }).ok).toBe(true);
    }
  });
});

const metrics = createMetrics([]);
const nowhere = () => Promise.reject(new Error("nobody asks"));

describe("the metrics on the operations page", () => {
  it("are those that the bot shows besides Node's own", async () => {
    const standing = { due: 0, oldestDueSeconds: 0, isDatabaseUp: true, isGatewayUp: true };
    const shown = await metrics.text(standing);
    expect(firstColumn("metric").length).toBeGreaterThan(5);
    expect(firstColumn("metric")).toEqual(found(shown, /^# TYPE (batch_clerk_\w+) /gmu));
  });

  it("answer under the addresses it names", () => {
    const vitals = {
      askDatabase: nowhere,
      isGatewayUp: () => false,
      sweepSilence: () => null,
      isStopping: () => false,
      upSeconds: () => 0,
    };
    const clock = {
      now: () => {
        throw new Error("nobody asks");
      },
    };
    const pages = opsPages({ vitals, metrics, upkeep: { backlog: nowhere }, clock });
    expect(found(page, /`(\/(?:healthz|readyz|metrics))`/gu)).toEqual(
      Object.keys(pages).toSorted(),
    );
  });
});

describe("the commands on the operations page", () => {
  const { scripts }: { scripts: Record<string, string> } = JSON.parse(
    readFileSync("package.json", "utf8"),
  );

  it("are scripts that there are", () => {
    const named = found(readme, /npm run (?:-s |--silent )?([\w:]+)/gu);
    expect(named).toContain("backup");
    expect(named.filter((name) => scripts[name] === undefined)).toEqual([]);
  });

  it("start the bot in the container and as a service the way `npm start` does", () => {
    const start = scripts["start"] ?? "";
    expect(page).toContain(`ExecStart=/usr/bin/${start}\n`);
    expect(page).toContain(`CMD ${JSON.stringify(start.split(" ")).replaceAll(",", ", ")}\n`);
  });

  it("copy into the container what there is", () => {
    const copied = [...page.matchAll(/^ {4}COPY ([\w. -]+) \S+$/gmu)].flatMap(([, files = ""]) =>
      files.split(" "),
    );
    expect(copied).toContain("src");
    expect(copied.filter((file) => !existsSync(file))).toEqual([]);
  });
});
