// The sections that the rules of a pack rest on, compared with those that the facts gathered for its place give under the same subject
// (../data/sections.json). What was found later, or gathered under another subject, stands in ../data/sections-otherwise.json.
import { readJson } from './world.mjs';

const gathered = readJson(new URL('../data/sections.json', import.meta.url));
const otherwise = readJson(new URL('../data/sections-otherwise.json', import.meta.url));

/** The subjects of the facts under which the rules of a part may stand. */
const SUBJECTS = {
  counting: ['counting', 'deadline'],
  duties: ['deadline', 'pre-move-out-inspection', 'move-in-record'],
  papers: ['statement-must', 'deadline'],
  allows: ['deduction-allowed', 'deduction-barred'],
  bars: ['deduction-barred', 'deduction-allowed'],
  caps: ['deposit-cap', 'deduction-allowed', 'deduction-barred'],
  interest: ['interest'],
  forfeits: ['penalty', 'deadline', 'holder'],
  remedies: ['penalty'],
  records: ['move-in-record'],
  inspection: ['pre-move-out-inspection'],
  demand: ['demand-needed-before-suit'],
  address: ['forwarding-address'],
  wear: ['wear-definition'],
  worth: ['depreciation-rule'],
  holder: ['holder'],
  scope: ['scope'],
  smallClaims: ['small-claims-limit'],
  alsoDeposit: ['deposit-cap', 'scope'],
  notDeposit: ['deposit-cap', 'scope'],
};

/** The numbers of sections a citation names: "A.R.S. § 33-1321(D)" gives 33-1321(D). */
const sections = (cite) => cite.match(/\d[\w.:-]*(\(\w+\))*/g) ?? [];
const within = (a, b) => a === b || a.startsWith(`${b}(`);
const meet = (cite, other) => sections(cite).some((a) => sections(other).some((b) => within(a, b) || within(b, a)));

/** Each source of a rule that no fact of its subject gives, as "part/rule/source". */
export function ungathered(pack) {
  const facts = gathered[pack.jurisdiction];
  const found = [];
  if (!facts) return found;
  for (const [part, subjects] of Object.entries(SUBJECTS)) {
    const cites = [...subjects, 'other'].flatMap((subject) => facts[subject] ?? []);
    for (const rule of pack[part] ?? [])
      for (const source of [rule.source ?? []].flat())
        if (!cites.some((cite) => meet(cite, pack.sources[source]?.cite ?? ''))) found.push(`${part}/${rule.id}/${source}`);
  }
  return found;
}

export function checkSections(pack, problem) {
  const known = new Set(otherwise[pack.jurisdiction] ?? []);
  const found = new Set(ungathered(pack));
  for (const one of found) if (!known.has(one)) problem(`${one}: no fact gathered for ${pack.jurisdiction} gives this section for such a rule (if it is right, add it to data/sections-otherwise.json)`);
  for (const one of known) if (!found.has(one)) problem(`${one} stands in data/sections-otherwise.json without need`);
}
