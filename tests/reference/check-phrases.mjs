// No text of an assessment says nonsense: every text of generated cases, in every place and both languages, is searched for phrases that mean nothing.
//   node tests/reference/check-phrases.mjs     'N passed, N failed', exit code 1 on failure
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { fileURLToPath } from 'node:url';
import { caseInVersion2 } from './version-1.mjs';

const at = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const PROBE = process.env.WEARLINE_ASSESS_PROBE ?? at('build/native/tests/engine/wearline_assess_probe');
const SHOWN = 8, CASES = 6; // a place, twice

// What nobody would say, and why.
const NONSENSE = [
  [/\bthrough (between|on or before)\b/, 'two ways to name a day at once'],
  [/\b0 (days|months|weeks|years|business days)\b/, 'a length of nothing'],
  [/\b0 (días|meses|semanas|años)\b/, 'a length of nothing'],
  [/December 31, 2199|31 de diciembre de 2199|January 1, 1900/, 'the end of all days'],
  [/Other duty|Otro deber/, 'a duty without a name'],
  [/\b1 of 1\b|\b1 de 1\b/, 'one of one'],
  [/\d square-foot\b|\d square-metre\b|\d linear-foot\b/, 'the name of a unit, not the unit'],
  [/about \d+ years and \d+ months/, 'a life to the month'],
  [/\$0\.01\b/, 'a remark about a cent'],
  [/undefined|\bnull\b|\bNaN\b|\{\w+\}/, 'a hole in a sentence'],
  [/\b(\w{4,}) \1\b(?! \1)/i, 'a word twice'],
  [/ {2}|\s[.,;:](\s|$)|\.\.(?!\.)/, 'stray signs']
];

function random(seed) {
  let state = seed;
  return (n) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}

const catalogue = JSON.parse(fs.readFileSync(at('engine/rules/wear/catalogue.json'), 'utf8'));
const places = fs.readdirSync(at('engine/rules/law')).filter((f) => f.endsWith('.json')).map((f) => f.slice(0, -5)).filter((f) => /^[A-Z]{2}-[A-Z]{2}$/.test(f));

function line(pick, n) {
  const element = catalogue.elements[pick(catalogue.elements.length)];
  const maybe = (one, value) => (pick(one) === 0 ? value() : undefined);
  const cents = 1 + pick(300_000);
  const unit = element.seam?.unit ?? 'room';
  const count = 1 + pick(4);
  return {
    id: String(n), amount: `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`, element: element.id, finding: element.findings[pick(element.findings.length)].id,
    installed: maybe(2, () => ['2019-08-01', '2026-07-20', '2010', '../2016', '2024-02/2025-01', '2026-07-31'][pick(6)]),
    cause: maybe(3, () => catalogue.causes[pick(catalogue.causes.length)].id), atMoveIn: maybe(3, () => catalogue.atMoveIn[pick(catalogue.atMoveIn.length)].id),
    severity: maybe(4, () => ['light', 'moderate', 'heavy'][pick(3)]), remedy: maybe(4, () => ['replace', 'repair', 'clean'][pick(3)]),
    charged: maybe(3, () => ({ count, unit })), damaged: maybe(6, () => ({ count: 1 + pick(count), unit })),
    repairPrice: maybe(8, () => '20.00'), proof: maybe(4, () => ['receipts']), proofMissing: maybe(6, () => ['photos']), inLease: maybe(6, () => pick(2) === 0)
  };
}

function caseOf(pick, jurisdiction, language) {
  const maybe = (one, value) => (pick(one) === 0 ? undefined : value);
  const ends = ['2026-07-31', '2026-06-30/2026-07-31', '2026-07'][pick(3)];
  return {
    wearline: 1, jurisdiction, language, side: ['tenant', 'adviser', 'landlord'][pick(3)],
    tenancy: { began: maybe(4, ['2024-08-01', '2026-07-30', '2019', '../2023'][pick(4)]), ended: maybe(3, ends), possessionReturned: maybe(3, ends), monthlyRent: maybe(3, '1200.00'), forwardingAddressGiven: maybe(2, '2026-07-20') },
    deposits: maybe(4, [{ amount: '1200.00', paid: maybe(2, '2024-08-01') }]),
    statement: { sent: maybe(2, ['2026-08-10', '2026-07-31', '2026-09-30', '2026-08'][pick(4)]), refundPaid: maybe(2, '200.00'), refundSent: maybe(2, '2026-08-10') },
    lines: Array.from({ length: 1 + pick(4) }, (_, i) => line(pick, i + 1))
  };
}

// Every text of a result: [where, text]. Names and codes are no texts.
const TEXTS = new Set(['text', 'why', 'verdictText', 'stateText', 'label', 'thing', 'findingText', 'rule', 'ifMissed', 'condition', 'ifMissing', 'methodText', 'check']);
function texts(value, where = '', out = []) {
  if (Array.isArray(value)) value.forEach((v, i) => (typeof v === 'string' ? where.endsWith('/askFor') && out.push([where, v]) : texts(v, `${where}/${i}`, out)));
  else if (value && typeof value === 'object')
    for (const [key, v] of Object.entries(value)) {
      if (typeof v === 'string') TEXTS.has(key) && !where.startsWith('/sources') && out.push([`${where}/${key}`, v]);
      else texts(v, `${where}/${key}`, out);
    }
  return out;
}

function main() {
  const pick = random(20261130);
  const cases = places.flatMap((place) => Array.from({ length: CASES }, (_, i) => caseOf(pick, place, i % 2 ? 'es' : 'en')));
  // The words are those of the rules, so the cases are of version 2; the probe answers in the names of version 1.
  const input = cases.map((c) => caseInVersion2(JSON.stringify(c))).join('\n') + '\n';
  const { stdout, status, error } = spawnSync(PROBE, ['2026-10-15'], { input, encoding: 'utf8', maxBuffer: 1 << 29 });
  if (error || status !== 0) throw error ?? new Error(`wearline_assess_probe ended with ${status}`);
  const results = stdout.trimEnd().split('\n').map((t) => JSON.parse(t));
  const said = results.flatMap((r, i) => (r.errors.length ? [[`case ${i}`, `errors: ${JSON.stringify(r.errors[0])}`]] : texts(r).map(([w, t]) => [`${cases[i].jurisdiction}${w}`, t])));
  let failed = 0;
  for (const [pattern, why] of NONSENSE) {
    const found = [...new Map(said.filter(([, t]) => pattern.test(t)).map((x) => [x[1], x])).values()];
    console.log(`${found.length ? 'FAIL' : 'ok  '} ${why} (${pattern.source})`);
    for (const [where, text] of found.slice(0, SHOWN)) console.log(`     ${where}: ${text}`);
    failed += found.length > 0;
  }
  const read = said.filter(([, t]) => t.startsWith('errors:')).length;
  console.log(`${said.length} texts of ${cases.length} cases, ${read} not read`);
  if (said.length < 20_000 || read) failed += 1;
  console.log(`${NONSENSE.length + 1 - failed} passed, ${failed} failed`);
  process.exitCode = failed ? 1 : 0;
}

main();
