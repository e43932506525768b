import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { type WorldTold, worldTold } from "./load/talk.ts";

const PLATFORM = fileURLToPath(new URL("./load/platform.ts", import.meta.url));

/** Plays Discord in a process of its own, with so many servers and people in each. */
export async function startPlatform(
  groups: number,
  peopleEach: number,
): Promise<{ readonly child: ChildProcess; readonly world: WorldTold }> {
  const child = fork(PLATFORM, [String(groups), String(peopleEach)], {
    execArgv: ["--import", "tsx"],
  });
  const [told] = await once(child, "message");
  return { child, world: worldTold.parse(told) };
}

/** Processor time that this process uses while the work is done, as a share of one core, and how long it took. */
export async function ownCpu(
  work: () => Promise<unknown>,
): Promise<{ readonly share: number; readonly seconds: number }> {
  const began = process.cpuUsage();
  const beganMs = performance.now();
  await work();
  const { user, system } = process.cpuUsage(began);
  const tookMs = performance.now() - beganMs;
  return { share: (user + system) / 1_000 / tookMs, seconds: tookMs / 1_000 };
}
