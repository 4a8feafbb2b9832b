// Conditions of law packs: walk them, and evaluate them under a full assignment of their variables.
// Facts are {key: "fact:id"}, events {key: "event:id"} (a date, or null for "has not happened"),
// duties {key: "duty:id"}, paper rules {key: "defect:id"}.

export function* atoms(condition) {
  if (!condition) return;
  if (condition.all || condition.any) for (const c of condition.all ?? condition.any) yield* atoms(c);
  else if (condition.not) yield* atoms(condition.not);
  else yield condition;
}

export function keyOf(atom) {
  if (atom.fact) return `fact:${atom.fact}`;
  if (atom.event) return `event:${atom.event}`;
  if (atom.duty) return `duty:${atom.duty}`;
  return `defect:${atom.defect}`;
}

export const numberOf = (bound) => Number(bound);

function holdsAtom(atom, value) {
  if (atom.fact) {
    if (atom.in) return atom.in.includes(value);
    const limits = ['atLeast', 'atMost', 'over', 'under'].filter((k) => k in atom);
    if (limits.length === 0) return value === (atom.is ?? true);
    return limits.every((k) => {
      const bound = numberOf(atom[k]);
      return k === 'atLeast' ? value >= bound : k === 'atMost' ? value <= bound : k === 'over' ? value > bound : value < bound;
    });
  }
  if (atom.event) {
    if ('known' in atom && (value !== null) !== atom.known) return false;
    if (atom.from && !(value !== null && value >= atom.from)) return false;
    if (atom.to && !(value !== null && value <= atom.to)) return false;
    return true;
  }
  if (atom.duty) return value === atom.is;
  return value === true;
}

export function holds(condition, assignment) {
  if (!condition) return true;
  if (condition.all) return condition.all.every((c) => holds(c, assignment));
  if (condition.any) return condition.any.some((c) => holds(c, assignment));
  if (condition.not) return !holds(condition.not, assignment);
  return holdsAtom(condition, assignment[keyOf(condition)]);
}
