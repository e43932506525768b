import type { Instant } from "../../shared/time.ts";

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** "Sat 24 Oct 18:30" by the wall clock of `zone`; the same on every machine. */
export function wallClock(instant: Instant, zone: string): string {
  const here = instant.toZonedDateTimeISO(zone);
  const time = here.toPlainTime().toString({ smallestUnit: "minute" });
  return `${DAYS[here.dayOfWeek - 1]} ${here.day} ${MONTHS[here.month - 1]} ${time}`;
}
