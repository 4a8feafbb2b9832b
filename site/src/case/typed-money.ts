// What people type for a sum, as the case file writes it. Anything not plainly a sum is left as typed: the engine then says what is wrong.

const withCents = (whole: string, part = ''): string => `${whole.replace(/^0+(?=\d)/, '')}.${part.padEnd(2, '0')}`;

/** Signs of what may be a sum; more are left as typed, unread. */
const longestSum = 60;

/** Digits in threes: "1240" -> "1,240". */
export function grouped(digits: string): string {
  const first = digits.length % 3;
  const threes = digits.slice(first).match(/\d{3}/g) ?? [];
  return [...(first ? [digits.slice(0, first)] : []), ...threes].join(',');
}

/** "$1,240" -> "1240.00"; "1.240,50" -> "1240.50"; "12 or so" -> "12 or so"; "" -> undefined. */
export function amountFromTyping(typed: string): string | undefined {
  if (typed.length > longestSum) return typed.trim() || undefined;
  const text = typed
    .trim()
    .replace(/^(?:US|CA?|USD|CAD)?\s*\$?\s*/i, '')
    .replace(/\s*(?:\$|USD|CAD)$/i, '')
    .replace(/[\s\u00a0\u202f](?=\d{3}\b)/g, '');
  if (typed.trim() === '') return undefined;
  const plain = /^(\d+)(?:\.(\d{0,2}))?$/.exec(text);
  if (plain) return withCents(plain[1]!, plain[2]);
  const american = /^(\d{1,3}(?:,\d{3})+)(?:\.(\d{0,2}))?$/.exec(text);
  if (american) return withCents(american[1]!.replace(/,/g, ''), american[2]);
  const comma = /^(\d{1,3}(?:\.\d{3})*|\d+),(\d{2})$/.exec(text);
  if (comma) return withCents(comma[1]!.replace(/\./g, ''), comma[2]);
  return typed.trim();
}

const minus = /^\s*[-\u2212]\s*(?=[$\d.])/;
/** True for a sum typed with a minus sign. */
export const isBelowZero = (typed: unknown): boolean => typeof typed === 'string' && minus.test(typed.slice(0, 60));
export const withoutMinus = (typed: string): string => typed.replace(minus, '');

/** The sum of a charge as its field shows it; a credit bears the minus sign it has on paper. */
export const shownAmount = (line: { amount?: unknown; credit?: unknown }): string => {
  const sum = amountForField(line.amount);
  return line.credit === true && sum ? `\u2212${sum}` : sum;
};

/** "1240.00" -> "1,240.00" for a field; other text is returned as it is. */
export const amountForField = (amount: unknown): string =>
  typeof amount !== 'string' ? '' : amount.replace(/^(\d+)(\.\d\d)$/, (_, w: string, c: string) => grouped(w) + c);
