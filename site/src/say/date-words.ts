// A case-file date in the page's words, so that a person sees how what they typed was read.

import { isDay, realDay } from '../case/day';
import { fullDay, longDay, monthNames, monthOf } from './show';
import { say } from './wording';
import type { Days } from '../case/assessment';
import type { DateWords } from '../case/typed-date';

export const dateWords = (): DateWords => ({
  months: monthNames('long'),
  shortMonths: monthNames('short'),
  about: say('page.date.words.about'),
  before: say('page.date.words.before'),
  by: say('page.date.words.by'),
  after: say('page.date.words.after'),
  since: say('page.date.words.since'),
  until: say('page.date.words.until'),
  fillers: say('page.date.words.fillers'),
});

/** "2019" -> "2019", "2019-06" -> "June 2019", "2019-06-14" -> "June 14, 2019"; empty if it is no date. */
function plain(d: string): string {
  if (/^\d{4}$/.test(d)) return d;
  if (/^\d{4}-\d{2}$/.test(d)) return realDay(`${d}-01`) ? monthOf(d) : '';
  return isDay(d) ? longDay(d) : '';
}

/** A case-file date in words; empty for text that is no date. */
export function inWords(date: unknown): string {
  if (typeof date !== 'string') return '';
  if (/^\d{4}-\d{2}-\d{2}$/.test(date)) return isDay(date) ? fullDay(date) : '';
  const [first, last] = date.split('/') as [string, string?];
  if (last === undefined) {
    const base = plain(first.replace(/~$/, ''));
    if (!base) return '';
    if (first.endsWith('~'))
      return say(first.length > 5 ? 'page.date.aboutMonth' : 'page.date.aboutYear', { date: base });
    return say('page.date.within', { date: base });
  }
  const [a, b] = [plain(first.replace(/~$/, '')), plain(last.replace(/~$/, ''))];
  if (first === '..' && b) return say('page.date.upTo', { date: b });
  if (last === '..' && a) return say('page.date.from', { date: a });
  return a && b ? say('page.date.between', { first: a, last: b }) : '';
}

/** A stretch of days in words: one day, "between ... and ...", or with an open end. */
export function spanInWords(span: Days, show: (d: string) => string = longDay): string {
  if (span.earliest === null) return span.latest === null ? '' : say('page.date.upTo', { date: show(span.latest) });
  if (span.latest === null) return say('page.date.from', { date: show(span.earliest) });
  if (span.earliest === span.latest) return show(span.earliest);
  return say('page.date.between', { first: show(span.earliest), last: show(span.latest) });
}

/** A case-file date as it stands in a field: a day in American order, other dates as the case file writes them. */
export function dateForField(date: string): string {
  const day = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  return day ? `${Number(day[2])}/${Number(day[3])}/${day[1]}` : date;
}
