// Loaded before anything else in a process that is to live at another time: moves what `Date.now` says,
// which is where the bot, its libraries and its rate limiter read the clock.

const real = Date.now.bind(Date);
let aheadMs = Number(process.env["FAULTS_AHEAD_MS"] ?? "0");

Date.now = () => real() + aheadMs;

export function setAhead(ms: number): void {
  aheadMs = ms;
}
