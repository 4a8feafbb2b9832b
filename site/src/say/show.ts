// Money and dates as people read them. Money never becomes a floating-point number: only its digits are grouped.

import { grouped } from '../case/typed-money';
import { language, say } from './wording';

let currency = 'USD';
export const useCurrency = (code: string): void => {
  currency = code;
};

const locale = (): string => (language() === 'es' ? 'es-US' : 'en-US');

const symbols: Record<string, string> = { USD: '$', CAD: '$' };

/** "1240.00" -> "$1,240.00". Text that is not an amount is returned as it is. */
export function money(amount: string | null | undefined): string {
  if (amount == null) return '';
  const parts = /^(-?)(\d+)\.(\d\d)$/.exec(amount);
  if (!parts) return amount;
  return `${parts[1] ? '\u2212' : ''}${symbols[currency] ?? currency + '\u00a0'}${grouped(parts[2]!)}.${parts[3]}`;
}

/** The same without cents when they are zero, for headlines and pictures. */
export const shortMoney = (amount: string | null | undefined): string => money(amount).replace(/\.00$/, '');

/** The likely sum; where nothing supports one, the least and the most. */
export const middle = (s: { low: string; likely: string | null; high: string }): string =>
  s.likely === null ? say('page.charges.range', { low: money(s.low), high: money(s.high) }) : money(s.likely);

export const isZero = (amount: string | null | undefined): boolean => amount == null || /^-?0+\.00$/.test(amount);

const noon = (iso: string): Date => new Date(`${iso}T12:00:00Z`);

const formatted = (iso: string, options: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(locale(), { timeZone: 'UTC', ...options }).format(noon(iso));

/** "2026-08-31" -> "August 31, 2026". */
export const longDay = (iso: string): string => formatted(iso, { year: 'numeric', month: 'long', day: 'numeric' });
/** "2026-08-31" -> "Monday, August 31, 2026". */
export const fullDay = (iso: string): string =>
  formatted(iso, { weekday: 'long', year: 'numeric', month: 'long', day: 'numeric' });
/** "2026-08-31" -> "Monday, August 31", with its year where that is not today's. */
export const nearDay = (today: string, iso: string): string =>
  today.slice(0, 4) === iso.slice(0, 4)
    ? formatted(iso, { weekday: 'long', month: 'long', day: 'numeric' })
    : fullDay(iso);
/** "2026-08-31" -> "Aug 31, 2026". */
export const shortDay = (iso: string): string => formatted(iso, { year: 'numeric', month: 'short', day: 'numeric' });
/** "2019-06" -> "June 2019". */
export const monthOf = (iso: string): string => formatted(`${iso}-15`, { year: 'numeric', month: 'long' });

/** A moment (RFC 3339) on the person's own clock: "Nov 25, 3:05 PM". */
export const shortTime = (moment: string): string =>
  new Intl.DateTimeFormat(locale(), { month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit' }).format(
    new Date(moment),
  );

/** Whole days from `a` to `b`. */
export const daysBetween = (a: string, b: string): number =>
  Math.round((noon(b).getTime() - noon(a).getTime()) / 86_400_000);

/** The person's own date today, as YYYY-MM-DD. */
export function localToday(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Month names of the page's language in order, for reading typed dates. */
export function monthNames(style: 'long' | 'short'): string[] {
  const name = new Intl.DateTimeFormat(locale(), { month: style, timeZone: 'UTC' });
  return Array.from({ length: 12 }, (_, m) =>
    name
      .format(new Date(Date.UTC(2021, m, 15)))
      .replace(/\.$/, '')
      .toLowerCase(),
  );
}
