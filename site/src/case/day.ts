// Civil days, YYYY-MM-DD.

/** True for a day that exists, as YYYY-MM-DD. */
export const isDay = (d: unknown): d is string => typeof d === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(d) && realDay(d);

/** True if such a YYYY-MM-DD is in the calendar. */
export const realDay = (d: string): boolean => {
  const t = new Date(`${d}T12:00:00Z`);
  return !Number.isNaN(t.getTime()) && t.toISOString().slice(0, 10) === d;
};

/** The day `count` days after a day. */
export const addDays = (day: string, count: number): string =>
  new Date(Date.parse(`${day}T12:00:00Z`) + count * 86_400_000).toISOString().slice(0, 10);
