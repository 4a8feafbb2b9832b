// The answer of the wear catalogue for one finding and the facts known, read straight from the format: used as a second opinion.

const ALREADY = new Set(['same', 'damaged']);

const oneOf = (wanted, value) => !wanted || wanted.includes(value);
const anyOf = (wanted, values) => !wanted || values.some((v) => wanted.includes(v));
const atLeast = (least, value) => least === undefined || (value !== undefined && value >= least);

// Whether every member of a turn's condition holds; an unknown fact does not hold.
export function holds(test, facts) {
  return anyOf(test.landlordFactor, facts.landlordFactors ?? []) && oneOf(test.severity, facts.severity) && oneOf(test.cause, facts.cause)
    && oneOf(test.atMoveIn, facts.atMoveIn) && atLeast(test.countAtLeast, facts.count) && atLeast(test.stayMonthsAtLeast, facts.stayMonths)
    && atLeast(test.occupantsAtLeast, facts.occupants) && (test.itemPastLife === undefined || test.itemPastLife === facts.itemPastLife);
}

// { verdict: wear | damage | landlord-responsibility | pre-existing | even, certain, turn }
export function answer(finding, facts = {}) {
  if (ALREADY.has(facts.atMoveIn) || (facts.atMoveIn === 'dirty' && finding.remedy === 'clean')) return { verdict: 'pre-existing', certain: true, turn: null };
  const turn = finding.turns.find((t) => holds(t.if, facts));
  if (turn) return { verdict: turn.verdict, certain: true, turn };
  if (finding.verdict !== 'depends') return { verdict: finding.verdict, certain: true, turn: null };
  return { verdict: finding.leans, certain: false, turn: null };
}

// Who bears it: tenant, landlord, or open.
export function bearer(verdict) {
  if (verdict === 'even') return 'open';
  return verdict === 'damage' ? 'tenant' : 'landlord';
}

// "carpet/stains" -> finding, or undefined.
export function lookUp(catalogue, place) {
  const [element, finding] = place.split('/');
  return catalogue.elements.find((e) => e.id === element)?.findings.find((f) => f.id === finding);
}
