import { spawn } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const root = new URL("../../../", import.meta.url).pathname;

interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** `npm start` as a process of its own; what the developer's .env sets is set back. `signalAt`: input stays open, and SIGTERM comes once this is shown. */
function start(
  env: Record<string, string>,
  input: string,
  signalAt: string | null = null,
): Promise<Ended> {
  const none = {
    DISCORD_TOKEN: "",
    DISCORD_APPLICATION_ID: "",
    DISCORD_API_BASE: "",
    LOG_LEVEL: "",
  };
  const child = spawn(process.execPath, ["--import", "tsx", "src/main.ts"], {
    cwd: root,
    env: { PATH: process.env["PATH"] ?? "", TZ: "Europe/Berlin", ...none, ...env },
  });
  const heard = { stdout: "", stderr: "" };
  for (const name of ["stdout", "stderr"] as const) {
    child[name].setEncoding("utf8").on("data", (chunk: string) => {
      heard[name] += chunk;
    });
  }
  if (signalAt === null) {
    child.stdin.end(input);
  } else {
    child.stdin.write(input);
    child.stdout.on("data", () => {
      if (heard.stdout.includes(signalAt)) child.kill("SIGTERM");
    });
  }
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, ...heard }));
  });
}

const freshFile = (): string =>
  `file:${join(mkdtempSync(join(tmpdir(), "clerk-process-")), "a", "x.db")}`;

describe("npm start", () => {
  it("without a token is a chat over standard input, on a real file, in the machine's zone", async () => {
    const url = freshFile();
    const first = await start(
      { DATABASE_URL: url },
      "/meals days:Mon-Fri time:12:30 name:lunch\n/reminders\n",
    );
    expect(first).toMatchObject({ code: 0, stderr: "" });
    expect(first.stdout).toMatch(/ you> \/meals days:Mon-Fri time:12:30 name:lunch\n/u);
    expect(first.stdout).toContain("Europe/Berlin");
    const second = await start({ DATABASE_URL: url }, "/meals\n");
    expect(second.stdout).toMatch(/lunch +Mon-Fri 12:30/u);
  });

  it("with bad settings ends with a sentence for each, and no stack trace", async () => {
    const ended = await start({ DISCORD_TOKEN: "a.b.c", LOG_LEVEL: "loud" }, "");
    expect(ended.code).toBe(1);
    expect(ended.stdout).toBe("");
    expect(ended.stderr.trim().split("\n")).toEqual([
      "DISCORD_TOKEN is set but DISCORD_APPLICATION_ID is not. Set both to run on Discord, or neither.",
      expect.stringContaining("LOG_LEVEL must be one of"),
    ]);
  });

  it("on a file that cannot be opened ends with one sentence", async () => {
    const file = join(mkdtempSync(join(tmpdir(), "clerk-process-")), "file");
    writeFileSync(file, "");
    const ended = await start({ DATABASE_URL: `file:${file}/x.db` }, "");
    expect(ended.code).toBe(1);
    expect(ended.stderr.trim().split("\n")).toHaveLength(1);
    expect(ended.stderr).toContain("DATABASE_URL");
  });

  it("ends in order on SIGTERM, though input is still open", async () => {
    const ended = await start({ DATABASE_URL: freshFile() }, "as Ana\n", "Speaking now: Ana");
    expect(ended).toMatchObject({ code: 0, stderr: "" });
  });
});
