// Decided lines against the engine: the verdict each decision calls for, and the sum it allowed.
import { assess, cents, money } from './program.mjs';

const NOTHING_PRINTED = 100_000; // where no sum is printed, a charge of 1,000.00 stands for it: only shares are compared
const MOVE_OUT = '2026-07-31'; // where no date is printed; ages are counted back from it

// What the line charged and what was allowed, in cents; `allowed` is null where the decision prints no sum that can be compared.
export function sums(line) {
  const base = line.cost_base ?? null;
  if (line.claimed !== null && line.allowed !== null) return { claimed: cents(line.claimed), allowed: cents(line.allowed) };
  if (line.fraction_allowed !== undefined) {
    const claimed = base !== null ? cents(base) : line.claimed !== null ? cents(line.claimed) : NOTHING_PRINTED;
    return { claimed, allowed: base !== null && line.allowed !== null ? cents(line.allowed) : Math.round(claimed * line.fraction_allowed) };
  }
  if (line.allowed === 0) return { claimed: line.claimed !== null ? cents(line.claimed) : NOTHING_PRINTED, allowed: 0 };
  if (line.allowed !== null && /^full/.test(line.reason)) return { claimed: cents(line.allowed), allowed: cents(line.allowed) };
  return { claimed: cents(line.claimed ?? line.allowed ?? NOTHING_PRINTED / 100), allowed: null };
}

const likelyNothing = (r) => r.fair.likely !== null && cents(r.fair.likely) === 0;
const MEETS = {
  charged: (r) => r.verdict === 'chargeable-damage',
  wear: (r) => r.verdict === 'ordinary-wear',
  landlord: (r) => r.verdict === 'landlord-side',
  before: (r) => r.verdict === 'already-there',
  unproven: (r) => r.verdict === 'cannot-tell' || likelyNothing(r),
  nothing: likelyNothing,
  'worn-out': likelyNothing,
  owed: (r) => r.verdict === 'not-about-condition' && !likelyNothing(r),
  'not-owed': (r) => likelyNothing(r),
  barred: (r) => r.verdict === 'barred' || likelyNothing(r)
};

export function caseOf(entry, claimed, extra = {}, tenancy = {}) {
  return {
    wearline: 1,
    ...(entry.place ? { jurisdiction: entry.place } : {}),
    tenancy: { possessionReturned: MOVE_OUT, ...entry.tenancy, ...tenancy },
    lines: [{ id: '1', amount: money(claimed), ...entry.facts, ...extra }]
  };
}

// A third of the decisions is held out: the engine's rules are changed by looking at the others only.
// FNV-1a of the decision's name, so that the choice is nobody's.
export function heldOut(name) {
  let hash = 0x811c9dc5;
  for (const c of Buffer.from(name)) hash = Math.imul(hash ^ c, 0x01000193) >>> 0;
  return hash % 3 === 0;
}

// One judged line: what was expected, what came, and how the sums lie.
function judge(entry, line) {
  const { claimed, allowed } = sums(line);
  const result = assess(caseOf(entry, claimed)).lines[0];
  const [low, likely, high] = ['low', 'likely', 'high'].map((k) => (result.fair[k] === null ? null : cents(result.fair[k])));
  const compared = allowed !== null && entry.sum !== false;
  return {
    name: `${entry.case}#${entry.line}`, thing: line.element, heldOut: heldOut(entry.case), expect: entry.expect, verdict: result.verdict, why: result.why,
    agrees: entry.expect.some((e) => MEETS[e](result)), claimed, low, likely, high,
    allowed: compared ? allowed : null, inside: compared ? low <= allowed && allowed <= high : null, width: compared ? (high - low) / claimed : null
  };
}

// The decision's own age and life instead of the tables': must give the printed sum to the cent (or the printed share of 1,000.00).
function reproduce(entry, line) {
  const { claimed, allowed } = sums(line);
  const base = line.cost_base !== undefined && line.claimed !== null ? cents(line.claimed) : claimed;
  const result = assess(caseOf(entry, base, entry.own, entry.ownTenancy)).lines[0];
  return { name: `${entry.case}#${entry.line}`, thing: line.element, allowed, worth: cents(result.worth.likely), exact: cents(result.worth.likely) === allowed };
}

const median = (list) => {
  const sorted = [...list].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
};

// Figures over some judged lines.
export function figures(judged) {
  const withSum = judged.filter((j) => j.allowed !== null);
  const paid = withSum.filter((j) => j.allowed > 0);
  return {
    lines: judged.length, agree: judged.filter((j) => j.agrees).length,
    sums: withSum.length, inside: withSum.filter((j) => j.inside).length, width: median(withSum.map((j) => j.width)),
    paid: paid.length, paidInside: paid.filter((j) => j.inside).length, paidWidth: median(paid.map((j) => j.width))
  };
}

// Everything about the decided lines. Throws where the map and the decisions do not fit together.
export function measureDecided(decisions, map) {
  const lineOf = ({ case: id, line }) => {
    const found = decisions.find((d) => d.id === id)?.lines[line];
    if (!found) throw new Error(`${id}#${line} is not in decided.json`);
    return found;
  };
  const total = decisions.reduce((n, d) => n + d.lines.length, 0);
  if (new Set(map.lines.map((l) => `${l.case}#${l.line}`)).size !== total || map.lines.length !== total) throw new Error('every decided line must stand once in the map');
  const judged = [], left = [], own = [];
  for (const entry of map.lines) {
    const line = lineOf(entry);
    if (entry.left) left.push({ name: `${entry.case}#${entry.line}`, thing: line.element, reason: entry.left });
    else {
      judged.push(judge(entry, line));
      if (entry.own) own.push(reproduce(entry, line));
    }
  }
  return { total, judged, left, own };
}
