// All the cases that a set of conditions can tell apart. Each variable gets the values at which an answer may change:
// yes and no, each named text and one other, each limit with a value below and above, each date with the days around it.
import { atoms, keyOf, numberOf } from './conditions.mjs';
import { plusDays } from './dates.mjs';

export const LIMIT = 200_000;

function factDomain(fact, used) {
  if (fact.type === 'yes-no') return [true, false];
  if (fact.type === 'text') {
    const named = used.flatMap((a) => a.in ?? (a.is !== undefined ? [a.is] : []));
    return [...new Set([...(fact.choices ?? []), ...named, ...(fact.choices ? [] : ['(another)'])])];
  }
  const bounds = used.flatMap((a) => ['atLeast', 'atMost', 'over', 'under', 'is'].filter((k) => k in a).map((k) => numberOf(a[k])));
  const step = fact.type === 'count' ? 1 : 0.01;
  return [...new Set(bounds.flatMap((b) => [b - step, b, b + step]))].filter((v) => v >= 0);
}

function eventDomain(used) {
  const dates = used.flatMap((a) => [a.from, a.to].filter(Boolean)).flatMap((d) => [plusDays(d, -1), d, plusDays(d, 1)]);
  const unknown = used.some((a) => 'known' in a) || dates.length === 0 ? [null] : [];
  return [...new Set([...(dates.length ? dates : ['2026-01-01']), ...unknown])];
}

// Facts that cannot be true together, so that no impossible case is held against a pack.
const IMPLIES = [
  ['damage-claimed', true, 'deductions-made', true],
  ['only-rent-claimed', true, 'deductions-made', true],
  ['only-rent-claimed', true, 'damage-claimed', false],
  ['only-rent-claimed', true, 'carpet-cleaning-claimed', false],
  ['carpet-cleaning-claimed', true, 'deductions-made', true],
  ['claims-over-deposit', true, 'deductions-made', true],
  ['checklist-signed', true, 'checklist-made', true],
  ['checklist-copy', true, 'checklist-made', true],
  ['deductions-made', false, 'balance-due', true],
  ['claims-over-deposit', true, 'balance-due', false]
];

const possible = (a) => IMPLIES.every(([f, v, g, w]) => a[`fact:${f}`] !== v || !(`fact:${g}` in a) || a[`fact:${g}`] === w);

/** Every possible assignment for the variables in `conditions`; null if there are more than LIMIT. */
export function assignments(conditions, facts) {
  const byKey = new Map();
  for (const c of conditions) for (const a of atoms(c)) byKey.set(keyOf(a), [...(byKey.get(keyOf(a)) ?? []), a]);
  const domains = [...byKey].map(([key, used]) => {
    if (key.startsWith('fact:')) return [key, factDomain(facts.get(used[0].fact) ?? { type: 'yes-no' }, used)];
    if (key.startsWith('event:')) return [key, eventDomain(used)];
    return [key, key.startsWith('duty:') ? ['met', 'missed', 'open'] : [true, false]];
  });
  if (domains.reduce((n, [, d]) => n * d.length, 1) > LIMIT) return null;
  let all = [{}];
  for (const [key, domain] of domains) all = all.flatMap((a) => domain.map((v) => ({ ...a, [key]: v })));
  return all.filter(possible);
}
