// How far off a day is, in words.

import type { LegalDate } from '../case/assessment';
import { daysBetween } from './show';
import { say } from './wording';

/** "That is tomorrow.", for an open day that lies ahead; else empty. */
export function nearness(today: string, date: LegalDate): string {
  if (date.state !== 'open' || date.notBefore || !date.last?.earliest) return '';
  const left = daysBetween(today, date.last.earliest);
  if (left < 0) return '';
  return left === 0
    ? say('page.days.today')
    : left === 1
      ? say('page.days.tomorrow')
      : say('page.days.left', { days: left });
}

export { addDays } from '../case/day';
