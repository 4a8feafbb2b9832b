// Variants of one rule must not contradict each other: no case in which two apply, none in which no return of the deposit is due,
// no condition that can never (or must always) hold, no hole between an old rule and the new one.
import { assignments, LIMIT } from './assignments.mjs';
import { holds } from './conditions.mjs';
import { plusDays } from './dates.mjs';

const windowOf = (rule) => (rule.from || rule.to ? { event: rule.by, ...(rule.from && { from: rule.from }), ...(rule.to && { to: rule.to }) } : null);
const fullCondition = (rule) => {
  const parts = [rule.when, windowOf(rule)].filter(Boolean);
  return parts.length > 1 ? { all: parts } : parts[0] ?? null;
};
const say = (assignment) => Object.entries(assignment).map(([k, v]) => `${k} = ${v === null ? 'not happened' : v}`).join(', ') || 'any case';

function group(rules, key) {
  const groups = new Map();
  for (const r of rules) groups.set(key(r), [...(groups.get(key(r)) ?? []), r]);
  return groups;
}

function sets(rules, facts, problem, visit) {
  const cases = assignments(rules.map(fullCondition), facts);
  if (!cases) return problem(`${rules.map((r) => r.id).join(', ')}: more than ${LIMIT} cases, cannot be checked; simplify the conditions`);
  visit(cases);
}

function overlaps(label, rules, facts, problem) {
  sets(rules, facts, problem, (cases) => {
    const told = new Set();
    for (const a of cases) {
      const on = rules.filter((r) => holds(fullCondition(r), a));
      for (let i = 0; i < on.length; i++) for (let j = i + 1; j < on.length; j++) {
        const [x, y] = [on[i], on[j]];
        if (x.beside?.includes(y.id) || y.beside?.includes(x.id) || told.has(x.id + y.id)) continue;
        told.add(x.id + y.id);
        problem(`${label}: ${x.id} and ${y.id} both apply when ${say(a)} (exclusive conditions, or "beside")`);
      }
    }
  });
}

function gaps(rules, facts, problem) {
  sets(rules, facts, problem, (cases) => {
    const bare = cases.find((a) => a['fact:balance-due'] !== false && !rules.some((r) => holds(fullCondition(r), a)));
    if (bare) problem(`no duty to return the deposit or its balance when ${say(bare)}`);
  });
}

function reach(rule, facts, problem) {
  for (const name of ['when', 'unless']) {
    if (!rule[name]) continue;
    const cases = assignments([rule[name]], facts);
    if (!cases) { problem(`${rule.id}: ${name} has too many cases to check`); continue; }
    const yes = cases.filter((a) => holds(rule[name], a)).length;
    if (yes === 0) problem(`${rule.id}: ${name} can never hold`);
    if (yes === cases.length) problem(`${rule.id}: ${name} always holds`);
  }
}

// An old rule must hand over to a new one of its part on the next day, by the same event, unless the law simply ended.
function handover(part, rules, problem) {
  for (const r of rules) {
    if (r.from && r.to && r.from > r.to) problem(`${r.id}: from is after to`);
    if (!r.to || part === 'others' || part === 'scope') continue;
    const near = rules.filter((n) => n !== r && n.from && n.by === r.by);
    if (near.length && !near.some((n) => n.from === plusDays(r.to, 1)) && !near.every((n) => n.to && n.to < r.to))
      problem(`${r.id}: ends on ${r.to} by ${r.by}, but no rule of ${part} starts on ${plusDays(r.to, 1)} by that event`);
  }
}

/** The pack with the conditions of scope rules put into the rules they turn off, as the engine does. */
function withScope(pack) {
  const off = new Map();
  for (const s of pack.scope) for (const id of s.turnsOff ?? []) off.set(id, [...(off.get(id) ?? []), { not: s.when }]);
  const narrowed = (rule) => (off.has(rule.id) ? { ...rule, when: [rule.when, ...off.get(rule.id)].filter(Boolean).reduce((a, b) => ({ all: [a, b] })) } : rule);
  return Object.fromEntries(Object.entries(pack).map(([part, rules]) => [part, Array.isArray(rules) && part !== 'scope' ? rules.map(narrowed) : rules]));
}

export function checkVariants(given, facts, problem) {
  const pack = withScope(given);
  for (const [name, rules] of group(pack.duties, (d) => `${d.who} ${d.duty}`))
    if (rules.length > 1 && !name.endsWith(' other')) overlaps(`duties ${name}`, rules, facts, problem);
  gaps(pack.duties.filter((d) => d.who === 'landlord' && ['return-deposit', 'refund-balance'].includes(d.duty)), facts, problem);
  for (const [key, rules] of group(pack.caps, (c) => c.deposits.join('+'))) if (rules.length > 1) overlaps(`caps ${key}`, rules, facts, problem);
  for (const [, rules] of group(pack.interest.filter((r) => !r.alongside), (r) => (r.deposits ?? []).join('+'))) if (rules.length > 1) overlaps('interest', rules, facts, problem);
  for (const [part, rules] of Object.entries(pack)) {
    if (!Array.isArray(rules) || ['facts', 'events', 'checkThis'].includes(part)) continue;
    for (const r of rules) reach(r, facts, problem);
    handover(part, rules, problem);
  }
}
