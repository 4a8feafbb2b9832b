// How what the review shows compares with what a page says.
import { money } from './contents.mjs';

const cents = (amount) => Math.round(Number(amount) * 100);

const pairsOf = (text) => {
  const bare = text.toLowerCase().replace(/[^\p{L}\d]+/gu, ' ').trim();
  return Array.from({ length: Math.max(0, bare.length - 1) }, (_, i) => bare.slice(i, i + 2));
};
/** How alike two texts are, 0 to 1 (Dice's coefficient over pairs of letters). */
function alike(a, b) {
  const [p, q] = [pairsOf(a), pairsOf(b)];
  let both = 0;
  const left = [...q];
  for (const pair of p) { const at = left.indexOf(pair); if (at >= 0) { both++; left.splice(at, 1); } }
  return p.length + q.length ? (2 * both) / (p.length + q.length) : 0;
}

/**
 * `rows`: { text, amount, open } as the review has them; `facts`: { at, amount, open }; `confirmed`: it says the total is met.
 * right: sums as printed; marked: others that stand there to be checked or typed in; extra: more of these than charges; missing: no row; wrong: rows no charge has, without a
 * mark; mixed: a sum without a mark beside the words of another charge.
 */
export function score(page, rows, facts, confirmed) {
  const left = rows.map((r) => ({ ...r, cents: r.amount === '' || r.amount === '-' ? undefined : cents(r.amount) }));
  const own = new Map();
  const rest = [];
  for (const charge of page.charges) {
    const same = left.filter((r) => r.cents === charge.cents).sort((a, b) => alike(b.text, charge.text) - alike(a.text, charge.text))[0];
    if (!same) { rest.push(charge); continue; }
    left.splice(left.indexOf(same), 1);
    own.set(charge, same);
  }
  const marked = left.filter((r) => r.open).length;
  const mixed = [...own].filter(([c, r]) => !r.open && page.charges.some((o) => o !== c && alike(o.text, r.text) > alike(c.text, r.text) + 0.15)).length;
  const { total, deposit, rest: back } = page.stated;
  const stated = { amount: deposit, interestPaid: 0, statedTotal: total, statedRefund: back, statedBalanceDue: -back };
  const factsWrong = facts.filter((f) => !f.open && cents(f.amount) !== stated[f.at]).length;
  const wrong = left.length - marked;
  const result = {
    sums: page.charges.length, right: own.size, asked: [...own.values()].filter((r) => r.open).length, marked: Math.min(rest.length, marked), extra: Math.max(0, marked - rest.length),
    missing: Math.max(0, rest.length - marked), wrong, mixed, factsWrong, confirmedWrongly: confirmed && own.size < page.charges.length ? 1 : 0,
  };
  return { ...result, whole: result.missing + wrong + mixed + factsWrong + result.confirmedWrongly === 0 ? 1 : 0 };
}

export const shown = (c) => `${c.cents < 0 ? '-' : ''}${money(c.cents)}`;
