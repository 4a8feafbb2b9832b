// The decided lines as data of the engine: engine/rules/precedents/outcomes.json (what counts) and cases.json (who decided what, where).
//   node tests/reference/precedents.mjs [--write]     without --write: fails where the files are not what the decisions say
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { cents } from './measure-agreement/program.mjs';
import { sums } from './measure-agreement/decided.mjs';
import { wordNow } from './version-1.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const RULES = path.join(HERE, '../../engine/rules');
const read = (file) => JSON.parse(fs.readFileSync(path.join(HERE, file), 'utf8'));

// How the likely share is worked out from the counts; ../../engine/rules/precedents/README.md says why these numbers.
const SHRINKAGE = 4, SHOWN = 5, FEWEST = 3;

// The same order as in engine/src/judging/precedents.cpp.
function stateOf(facts) {
  if (facts.proofMissing?.length || facts.onMoveOutRecord === false || facts.atMoveIn === 'not-recorded') return 'proof-missing';
  if (['tenant', 'guest', 'pet'].includes(facts.cause)) return 'tenants-hand';
  if (facts.landlordFactors?.length || facts.cause) return 'landlords-part';
  if (['worn', 'fair', 'same', 'damaged', 'dirty'].includes(facts.atMoveIn)) return 'there-before';
  return facts.inLease === true ? 'agreed' : facts.inLease === false ? 'not-agreed' : 'plain';
}

// Percent of what was claimed; null where something was allowed and nobody knows how much; undefined where nobody knows anything.
function percentOf(line) {
  if (line.fraction_allowed !== undefined && line.fraction_allowed !== null) return Math.round(100 * line.fraction_allowed);
  const { claimed, allowed } = sums(line);
  if (allowed !== null) return Math.min(100, Math.round((100 * allowed) / claimed));
  return line.upheld || (line.allowed ?? 0) > 0 || /allowed|full|liable/.test(line.reason) ? null : undefined;
}

function gather() {
  const weights = JSON.parse(fs.readFileSync(path.join(RULES, 'wear/weights.json'), 'utf8'));
  const named = (element, finding) => {
    const among = (places) => places.some((p) => p === `${element}/${finding}` || p === `*/${finding}` || p === `${element}/*`);
    return !among(weights.nothingNamed) || among(weights.somethingNamed);
  };
  const catalogue = JSON.parse(fs.readFileSync(path.join(RULES, 'wear/catalogue.json'), 'utf8'));
  // What the guide calls a fault, where it does not depend.
  const usual = (element, finding) => {
    const { verdict } = catalogue.elements.find(({ id }) => id === element)?.findings.find(({ id }) => id === finding) ?? {};
    return verdict === 'wear' || verdict === 'damage' ? { usual: verdict } : {};
  };
  const lines = [], cases = {};
  for (const [data, map] of [['data/decided.json', 'decided/lines.json'], ['data/decided-more.json', 'decided/more-lines.json']]) {
    const decisions = new Map(read(data).map((d) => [d.id, d]));
    for (const entry of read(map).lines) {
      if (entry.left) continue;
      const decision = decisions.get(entry.case), line = decision.lines[entry.line];
      const percent = percentOf(line);
      if (percent === undefined) continue;
      // The collections were written with the names of version 1.
      const was = { ...line.case, ...entry.facts };
      const facts = { ...was, element: wordNow('element', was.element), finding: wordNow('finding', was.finding) };
      const id = `${entry.case}#${entry.line}`;
      lines.push({ id, kind: facts.kind, element: facts.element, finding: facts.finding, ...(named(facts.element, facts.finding) ? {} : { namesFault: false }), ...usual(facts.element, facts.finding), ...(stateOf(facts) === 'plain' ? {} : { state: stateOf(facts) }), ...(percent === null ? {} : { percent }) });
      cases[id] = {
        forum: decision.forum, citation: decision.citation ?? decision.id, place: decision.jurisdiction, read: decision.basis === 'read-decision' ? 'opening of the decision' : 'a report of the decision',
        charge: line.words_en ?? line.words ?? `${line.element}: ${line.finding}`, currency: decision.facts?.currency ?? null,
        claimed: line.claimed === null ? null : Number(line.claimed).toFixed(2), allowed: line.allowed === null ? null : Number(line.allowed).toFixed(2), percent, reason: line.reason
      };
    }
  }
  return { lines, cases };
}

export function files() {
  const { lines, cases } = gather();
  const outcomes = `{\n  "about": "What was allowed of decided charges, as percent of what was claimed; no percent: something was allowed, how much is not known. cases.json says who decided. README.md says how the likely share follows. Written by tests/reference/precedents.mjs.",\n  "shrinkage": ${SHRINKAGE}, "shown": ${SHOWN}, "fewest": ${FEWEST},\n  "lines": [\n${lines.map((l) => `    ${JSON.stringify(l)}`).join(',\n')}\n  ]\n}\n`;
  const all = `{\n  "about": "The decided charges behind outcomes.json. 'read' says how each was read; evidence of what is usual, not law. Written by tests/reference/precedents.mjs.",\n  "cases": {\n${Object.entries(cases).map(([id, c]) => `    ${JSON.stringify(id)}: ${JSON.stringify(c)}`).join(',\n')}\n  }\n}\n`;
  return { 'precedents/outcomes.json': outcomes, 'precedents/cases.json': all };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  let stale = 0;
  for (const [file, text] of Object.entries(files())) {
    const at = path.join(RULES, file);
    if (process.argv.includes('--write')) fs.writeFileSync(at, text);
    const same = fs.existsSync(at) && fs.readFileSync(at, 'utf8') === text;
    console.log(`${same ? 'ok  ' : 'FAIL'} ${file}`);
    stale += !same;
  }
  console.log(`${2 - stale} passed, ${stale} failed`);
  process.exitCode = stale ? 1 : 0;
}
