// Civil dates as text. A date is good only if the calendar has it (2026-02-30 is not).
const DAY = 86_400_000;

export function isCivilDate(text) {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

export function plusDays(text, days) {
  return new Date(Date.parse(`${text}T00:00:00Z`) + days * DAY).toISOString().slice(0, 10);
}

// The subset of EDTF (ISO 8601-2:2019) that case files use: year, month or day, "~", and "a/b" with ".." for an open end.
export function isUncertainDate(text) {
  if (typeof text !== 'string') return false;
  const one = (t) => {
    const bare = t.replace(/~$/, '');
    if (/^\d{4}$/.test(bare)) return true;
    if (/^\d{4}-\d{2}$/.test(bare)) return isCivilDate(`${bare}-01`);
    return isCivilDate(bare);
  };
  const ends = text.split('/');
  if (ends.length === 1) return one(text);
  return ends.length === 2 && ends.some((e) => e !== '..') && ends.every((e) => e === '..' || one(e));
}
