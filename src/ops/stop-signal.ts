const SIGNALS = ["SIGINT", "SIGTERM"] as const;

/**
 * Aborted by the first SIGINT or SIGTERM. A second one, of either kind, ends the process at once, as
 * the system does with a process that does not listen.
 */
export function stopSignal(): AbortSignal {
  const controller = new AbortController();
  const stop = (): void => {
    for (const signal of SIGNALS) process.removeListener(signal, stop);
    controller.abort();
  };
  for (const signal of SIGNALS) process.once(signal, stop);
  return controller.signal;
}
