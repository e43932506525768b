import type { Clock } from "../clock.ts";
import type { Upkeep } from "../jobs/ports.ts";
import { ASK_WITHIN_MS, type Health, healthOf, isAlive, isReady, type Vitals } from "./health.ts";
import type { Metrics, Standing } from "./metrics.ts";
import type { OpsServerParts, Page } from "./server.ts";
import { within } from "./within.ts";

export interface PagesParts {
  readonly vitals: Vitals;
  readonly metrics: Metrics;
  readonly upkeep: Pick<Upkeep, "backlog">;
  readonly clock: Clock;
}

/** The pages that are served: is it alive, is it ready, and the figures. */
export function opsPages(parts: PagesParts): OpsServerParts["pages"] {
  const health = async (isFine: (health: Health) => boolean): Promise<Page> => {
    const found = await healthOf(parts.vitals);
    return {
      status: isFine(found) ? 200 : 503,
      type: "application/json; charset=utf-8",
      body: `${JSON.stringify(found)}\n`,
    };
  };
  return {
    "/healthz": () => health(isAlive),
    "/readyz": () => health(isReady),
    "/metrics": async () => {
      const body = await parts.metrics.text(await standing(parts));
      return { status: 200, type: parts.metrics.contentType, body };
    },
  };
}

async function standing({ vitals, upkeep, clock }: PagesParts): Promise<Standing> {
  const now = clock.now();
  const backlog = await within(ASK_WITHIN_MS, upkeep.backlog(now)).catch(() => "late" as const);
  const isGatewayUp = vitals.isGatewayUp();
  if (backlog === "late") {
    return { due: null, oldestDueSeconds: null, isDatabaseUp: false, isGatewayUp };
  }
  const { due, oldestDueAt } = backlog;
  const waitedMs = oldestDueAt === null ? 0 : now.epochMilliseconds - oldestDueAt.epochMilliseconds;
  return { due, oldestDueSeconds: waitedMs / 1_000, isDatabaseUp: true, isGatewayUp };
}
