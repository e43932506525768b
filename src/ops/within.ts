/** What the work gives, or "late" when that takes longer; the work itself goes on. Rejects as it does. */
export async function within<T>(ms: number, work: Promise<T>): Promise<T | "late"> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<"late">((resolve) => {
    timer = setTimeout(() => resolve("late"), ms);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
