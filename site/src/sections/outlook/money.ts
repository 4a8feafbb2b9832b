// The money in one line: a range while something is open, a sum once it is certain; never a guess as a debt.

import type { Desk } from '../../app/desk';
import type { Range, Totals } from '../../case/assessment';
import { livesThere } from '../../case/next-step';
import { knowsPaidBack, sortLines } from '../../case/outcome';
import { isZero, money, shortMoney } from '../../say/show';
import { cents } from '../../case/cents';
import { say } from '../../say/wording';

export interface Headline {
  /** The sum or range, or empty where a sum is not the message. */
  sum: string;
  says: string;
  /** One line beneath, or empty. */
  beside: string;
}

/** "$1,178", "between $688 and $1,223", "up to $600". */
export function spanWords(s: Range): string {
  if (s.low === s.high) return shortMoney(s.high);
  return isZero(s.low)
    ? say('page.outlook.upTo', { high: shortMoney(s.high) })
    : say('page.outlook.between', { low: shortMoney(s.low), high: shortMoney(s.high) });
}

const side = (d: Desk): string => (d.side === 'tenant' ? 'tenant' : 'other');

/** What was kept and no charge entered so far explains. */
function unexplained(d: Desk, t: Totals): number {
  if (!t.deposit || d.case.lines.length === 0 || d.side === 'landlord') return 0;
  if (d.case.statement?.['refundPaid'] === undefined) return 0;
  return cents(t.deposit) - cents(t.paidBack) - cents(t.claimed);
}

const plain = (sum: number): string => `${Math.trunc(sum / 100)}.${String(sum % 100).padStart(2, '0')}`;

export function headlineOf(d: Desk): Headline | null {
  const a = d.result;
  if (!a) return null;
  const t = a.totals;
  const silent = d.case.lines.length === 0;
  if (livesThere(d.case, d.today)) return null;
  if (!t.shortfall || !t.deposit) {
    if (silent) return null;
    // A range would call "up to" a charge fair that its own row calls not fair: what is not fair is named.
    const open = t.fair.low !== t.fair.high;
    const notFair = open ? sortLines(a).sum['not-fair'] : '0.00';
    const [sum, what] = !isZero(notFair)
      ? [shortMoney(notFair), 'notFair']
      : [spanWords(t.fair), open ? 'fairPerhaps' : 'fairOnly'];
    return {
      sum,
      says: say(`page.outlook.${what}`, { claimed: shortMoney(t.claimed) }),
      beside: say('page.outlook.needsDeposit'),
    };
  }
  const r = a.remedies;
  if (r && r.forfeiture === 'yes' && !isZero(r.amountDueIfForfeited.high)) {
    const counted = spanWords(t.shortfall);
    return {
      sum: spanWords(r.amountDueIfForfeited),
      says: say(`page.outlook.forfeited.${side(d)}`),
      beside:
        silent || counted === spanWords(r.amountDueIfForfeited) ? '' : say('page.outlook.counted', { sum: counted }),
    };
  }
  // Nobody said what came back: what should come back in all can be told, what is still due cannot.
  if (!knowsPaidBack(d.case, t) && t.fairRefund && !isZero(t.fairRefund.high)) {
    const what = isZero(t.fairRefund.low) ? 'inAll.maybe' : 'inAll';
    return { sum: spanWords(t.fairRefund), says: say(`page.outlook.${what}.${side(d)}`), beside: '' };
  }
  if (!isZero(t.shortfall.high)) {
    const open = unexplained(d, t);
    const maybe = r?.forfeiture === 'possible' && cents(r.amountDueIfForfeited.high) > cents(t.shortfall.high);
    return {
      sum: spanWords(t.shortfall),
      says: say(
        `page.outlook.${isZero(t.shortfall.low) ? 'maybe' : isZero(t.paidBack) ? 'dueWhole' : 'due'}.${side(d)}`,
      ),
      beside:
        open > 0
          ? say('page.outlook.unexplained', { sum: money(plain(open)) })
          : maybe
            ? say('page.outlook.perhapsForfeited', { sum: shortMoney(r!.amountDueIfForfeited.high) })
            : '',
    };
  }
  if (t.owedByTenant && !isZero(t.owedByTenant.high)) {
    const what = isZero(t.owedByTenant.low) ? 'mayOwe' : 'owes';
    return { sum: spanWords(t.owedByTenant), says: say(`page.outlook.${what}.${side(d)}`), beside: '' };
  }
  // What was left out may hold anything.
  if (d.sheet.faults.length) return { sum: '', says: say('page.outlook.settledSoFar'), beside: '' };
  return { sum: '', says: say(`page.outlook.settled.${side(d)}`), beside: '' };
}
