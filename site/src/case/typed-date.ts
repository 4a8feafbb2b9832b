// What people type for a date, as the case file writes it (EDTF, ISO 8601-2:2019, the subset of the case format).
// Text that is not plainly a date is left as typed: the engine then says what is wrong.

/** Words of one language that may stand in a typed date; each pattern is a list of alternatives joined by "|". */
export interface DateWords {
  months: string[];
  shortMonths: string[];
  about: string;
  before: string;
  by: string;
  after: string;
  since: string;
  until: string;
  fillers: string;
}

const two = (n: number | string): string => String(n).padStart(2, '0');
const fullYear = (y: string): string => (y.length === 2 ? `20${y}` : y);
const edtf = /^(?:\d{4}(?:-\d{2}(?:-\d{2})?)?~?|\.\.)(?:\/(?:\d{4}(?:-\d{2}(?:-\d{2})?)?~?|\.\.))?$/;

function monthNumber(word: string, words: DateWords): number {
  const w = word.replace(/\.$/, '');
  const exact = words.months.indexOf(w);
  if (exact >= 0) return exact + 1;
  if (w.length < 3) return 0;
  return words.months.findIndex((m, i) => m.startsWith(w) || words.shortMonths[i] === w) + 1;
}

/** One day, month or year: "8/1/2022", "aug 1 2022", "1 de agosto de 2022", "june 2019", "2019". Empty if it is none of these. */
function single(text: string, words: DateWords): string {
  if (/^\d{4}(-\d{2}){0,2}$/.test(text)) return text;
  let m = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{2}|\d{4})$/.exec(text);
  if (m) {
    // American order, unless only the other order can be a date. The page reads every date back with the month as a word.
    const [month, day] = Number(m[1]) > 12 && Number(m[2]) <= 12 ? [m[2]!, m[1]!] : [m[1]!, m[2]!];
    return `${fullYear(m[3]!)}-${two(month)}-${two(day)}`;
  }
  m = /^(\d{4})[/.](\d{1,2})[/.](\d{1,2})$/.exec(text);
  if (m) return `${m[1]}-${two(m[2]!)}-${two(m[3]!)}`;
  m = /^(\d{1,2})[/.-](\d{4})$/.exec(text);
  if (m) return `${m[2]}-${two(m[1]!)}`;
  m = /^(\p{L}+\.?) (?:(\d{1,2})(?:st|nd|rd|th)? )?(\d{4})$/u.exec(text);
  const day = m ? undefined : /^(\d{1,2})(?:st|nd|rd|th|\.)? (\p{L}+\.?) (\d{4})$/u.exec(text);
  const month = monthNumber(m?.[1] ?? day?.[2] ?? '', words);
  if (!month) return '';
  const date = m?.[2] ?? day?.[1];
  return `${m?.[3] ?? day?.[3]}-${two(month)}${date ? `-${two(date)}` : ''}`;
}

const ledBy = (by: string): RegExp => new RegExp(`^(?:${by})\\s+(.+)$`, 'u');

/** The day, month or year next to `date`: "before 2020" ends with 2019. */
function beside(date: string, by: -1 | 1): string {
  const [y, m, d] = date.split('-').map(Number) as [number, number?, number?];
  if (m === undefined) return String(y + by);
  const moved = new Date(Date.UTC(y, d === undefined ? m - 1 + by : m - 1, d === undefined ? 1 : d + by));
  return moved.toISOString().slice(0, date.length);
}

/** Signs of what may be a date; more are left as typed, unread. */
const longestDate = 80;

/** What was typed as the case file writes it; unreadable text as it was typed; undefined for nothing. */
export function dateFromTyping(typed: string, words: DateWords): string | undefined {
  if (typed.trim() === '') return undefined;
  const compact = typed.trim();
  if (compact.length > longestDate) return compact;
  if (edtf.test(compact)) return compact;
  const text = compact
    .toLowerCase()
    .replace(new RegExp(`(?<!\\p{L})(?:${words.fillers})(?!\\p{L})`, 'gu'), ' ')
    .replace(/,/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const exact = single(text, words);
  if (exact) return exact;
  const about = single(ledBy(words.about).exec(text)?.[1] ?? /^(.+)~$/.exec(text)?.[1] ?? '', words);
  if (about && about.length <= 7) return `${about}~`;
  const led = (by: string): string => single(ledBy(by).exec(text)?.[1] ?? '', words);
  const [before, by, after, since] = [led(words.before), led(words.by), led(words.after), led(words.since)];
  if (before) return `../${beside(before, -1)}`;
  if (by) return `../${by}`;
  if (after) return `${beside(after, 1)}/..`;
  if (since) return `${since}/..`;
  const ends = text.split(
    new RegExp(`\\s+(?:${words.until})\\s+|\\s*[–—]\\s*|\\s+-\\s+|(?<=^\\d{4})\\s*-\\s*(?=\\d{4}$)`, 'u'),
  );
  if (ends.length === 2) {
    const [first, last] = [single(ends[0]!, words), single(ends[1]!, words)];
    if (first && last) return `${first}/${last}`;
  }
  return compact;
}

/** The other day that numbers alone can mean where people write the day first: "5/10/2026" is May 10 or October 5. Undefined where none. */
export function otherDay(typed: string, day: unknown): string | undefined {
  const m = /^\s*(\d{1,2})[/.-](\d{1,2})[/.-](?:\d{2}|\d{4})\s*$/.exec(typed);
  if (
    !m ||
    typeof day !== 'string' ||
    !/^\d{4}-\d\d-\d\d$/.test(day) ||
    Number(m[1]) > 12 ||
    Number(m[2]) > 12 ||
    Number(m[1]) === Number(m[2])
  )
    return undefined;
  const [y, mm, dd] = day.split('-');
  return `${y}-${dd}-${mm}`;
}
