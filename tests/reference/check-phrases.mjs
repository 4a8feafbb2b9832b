// No text of an answer says nonsense: every text of generated cases and of the letters they lead to, in every place and both languages, is
// searched for phrases that mean nothing.
//   node tests/reference/check-phrases.mjs     'N passed, N failed', exit code 1 on failure
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { fileURLToPath } from 'node:url';
import { probe } from '../built.mjs';
import { paragraphsOf, written } from './letters/written.mjs';
import { caseInVersion2 } from './version-1.mjs';

const at = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const SHOWN = 8, CASES = 6; // a place, twice

// What nobody would say, and why.
const NONSENSE = [
  [/\bthrough (between|on or (before|after)|before|after)\b/, 'two ways to name a day at once'],
  [/\b0 (days|months|weeks|years|hours|rooms|walls|business days)\b/, 'a length of nothing'],
  [/\b0 (días|meses|semanas|años|horas|cuartos|paredes)\b/, 'a length of nothing'],
  [/\b1 (days|months|weeks|years|hours|rooms|walls|charges|disputes)\b|\b1 (días|meses|semanas|años|horas|cuartos|paredes|cobros|disputas)\b/, 'one of many'],
  [/December 31, 2199|31 de diciembre de 2199|January 1, 1900|1 de enero de 1900|2199-12-31/, 'the end of all days'],
  [/Other duty|Otro deber/, 'a duty without a name'],
  [/\b(\d+) (\w+) (charged, )?(of )?\1 \2 (was )?damaged\b|\b1 of 1\b|\b1 de 1\b/, 'all of it told as a share'],
  [/\d square-(foot|metre|meter|yard)\b|\d linear-foot\b/, 'the name of a unit, not the unit'],
  [/about \d+ years and \d+ months|unos \d+ años y \d+ mes/, 'a life to the month'],
  [/\$0\.01\b/, 'a remark about a cent'],
  [/\$-|\$\d+\.\d\b|\$\d+\.\d{3}/, 'a sum written wrong'],
  [/undefined|\bnull\b|\bnan\b|\[object|\{[\w.-]*\}/i, 'a hole in a sentence'],
  [/\b(\w{4,}) \1\b(?! \1)/i, 'a word twice'],
  [/(\$[\d,.]*\d) (would be due instead of|becomes|pasa a|to|a) \1(?![\d,.]*\d)/, 'a sum instead of itself'],
  [/^\s|\s$| {2}|\s[.,;:!?](\s|$)|\.\.(?!\.)|[,;:][.,;:]|\(\s|\s\)|\(\)|""/, 'stray signs'],
  [/[a-z]{3}[.!?] [a-z]\w+ (is|was|were|becomes)\b/, 'a sentence that begins small']
];
// Words that no Spanish sentence has.
const SPANISH_ONLY = /\b(the|landlord|tenant|damaged|becomes|worth)\b/;

function random(seed) {
  let state = seed;
  return (n) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}

const catalogue = JSON.parse(fs.readFileSync(at('engine/rules/wear/catalogue.json'), 'utf8'));
const places = fs.readdirSync(at('engine/rules/law')).filter((f) => f.endsWith('.json')).map((f) => f.slice(0, -5)).filter((f) => /^[A-Z]{2}-[A-Z]{2}$/.test(f));

const charged = JSON.parse(fs.readFileSync(at('tests/reference/corpus/lines.json'), 'utf8')).map((l) => l.text);

function line(pick, n) {
  const element = catalogue.elements[pick(catalogue.elements.length)];
  const maybe = (one, value) => (pick(one) === 0 ? value() : undefined);
  const cents = 1 + pick(300_000);
  const money = (most) => `${pick(most)}.${String(pick(100)).padStart(2, '0')}`;
  const unit = [element.seam?.unit ?? 'room', 'square-foot', 'piece'][pick(4) % 3];
  const count = 1 + pick(4);
  const days = ['2026-07-01', '2026-08-01', '2026-06-15'];
  return {
    id: String(n), amount: `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`,
    // A third are told in words alone.
    ...(pick(3) === 0 ? { text: charged[pick(charged.length)] } : { element: element.id, finding: element.findings[pick(element.findings.length)].id }),
    installed: maybe(2, () => ['2019-08-01', '2026-07-20', '2010', '../2016', '2024-02/2025-01', '2026-07-31'][pick(6)]),
    cause: maybe(3, () => catalogue.causes[pick(catalogue.causes.length)].id), atMoveIn: maybe(3, () => catalogue.atMoveIn[pick(catalogue.atMoveIn.length)].id),
    landlordFactors: maybe(6, () => [catalogue.landlordFactors[pick(catalogue.landlordFactors.length)].id]),
    severity: maybe(4, () => ['light', 'moderate', 'heavy'][pick(3)]), remedy: maybe(4, () => ['replace', 'repair', 'clean', 'dispose'][pick(4)]), betterment: maybe(6, () => true),
    charged: maybe(3, () => ({ count, unit })), damaged: maybe(6, () => ({ count: 1 + pick(count), unit })),
    repairPrice: maybe(8, () => '20.00'), priceNew: maybe(8, () => money(2000)), lifeYears: maybe(9, () => 1 + pick(30)), count: maybe(6, () => 1 + pick(60)),
    hours: maybe(8, () => ({ count: 1 + pick(9), unit: 'hour' })), hourlyRate: maybe(8, () => money(90)), from: maybe(8, () => days[pick(3)]), to: maybe(8, () => '2026-08-31'),
    parts: maybe(9, () => [{ nature: ['materials', 'labour', 'tax', 'markup', 'disposal'][pick(5)], amount: `${Math.floor(cents / 300)}.00` }]),
    credit: maybe(25, () => true), proof: maybe(4, () => ['receipts']), proofMissing: maybe(6, () => ['photos']), inLease: maybe(6, () => pick(2) === 0), onMoveOutRecord: maybe(9, () => pick(2) === 0)
  };
}

const MONEY_HELD = ['security', 'pet', 'last-month', 'cleaning', 'key', 'other'];
function caseOf(pick, jurisdiction, language) {
  const maybe = (one, value) => (pick(one) === 0 ? undefined : value);
  const ends = ['2026-07-31', '2026-06-30/2026-07-31', '2026-07'][pick(3)];
  return {
    wearline: 1, jurisdiction, language, side: ['tenant', 'adviser', 'landlord'][pick(3)], showMethods: pick(6) === 0,
    tenancy: {
      began: maybe(4, ['2024-08-01', '2026-07-30', '2019', '../2023'][pick(4)]), ended: maybe(3, ends), possessionReturned: maybe(3, ends), monthlyRent: maybe(3, '1200.00'),
      forwardingAddressGiven: maybe(2, '2026-07-20'), rentPaidThrough: maybe(2, '2026-07-31'), kind: maybe(2, ['fixed-term', 'periodic'][pick(2)]),
      occupants: maybe(2, 1 + pick(4)), buildingUnits: maybe(2, [1, 4, 5, 24, 25][pick(5)]), ownerOccupied: maybe(2, pick(2) === 0)
    },
    deposits: maybe(4, Array.from({ length: 1 + pick(2) }, (_, i) => ({ kind: i ? MONEY_HELD[pick(MONEY_HELD.length)] : 'security', amount: `${900 + pick(900)}.00`, paid: maybe(2, '2024-08-01') }))),
    statement: {
      sent: maybe(2, ['2026-08-10', '2026-07-31', '2026-09-30', '2026-08'][pick(4)]), refundPaid: maybe(2, ['200.00', '0.00'][pick(2)]), refundSent: maybe(2, '2026-08-10'),
      statedTotal: maybe(2, `${pick(3000)}.00`), statedRefund: maybe(2, `${pick(900)}.00`), how: maybe(2, ['email', 'certified-mail'][pick(2)]),
      enclosed: maybe(2, ['receipts']), missing: maybe(2, ['photos'])
    },
    records: maybe(2, { moveInChecklist: { made: pick(2) === 0 }, photosAtMoveIn: pick(2) === 0, photosAtMoveOut: pick(2) === 0 }),
    lines: Array.from({ length: pick(6) }, (_, i) => line(pick, i + 1))
  };
}

// Every text of an answer: [where, text]. What has no blank is a name, a code or a figure; the charge's own words are its writer's.
const OWN_WORDS = /^\/lines\/\d+\/(text|thing|fromWords\/\d+\/\w+)$/;
function texts(value, where = '', out = []) {
  if (typeof value === 'string') value.includes(' ') && !OWN_WORDS.test(where) && out.push([where, value]);
  else if (value && typeof value === 'object') for (const [key, v] of Object.entries(value)) texts(v, `${where}/${key}`, out);
  return out;
}

// Words that a statute gives for a notice stand as it has them.
const FIXED = JSON.stringify(JSON.parse(fs.readFileSync(at('engine/rules/letters.json'), 'utf8')));
const isFixed = (text) => FIXED.includes(JSON.stringify(text.slice(0, 40)).slice(1, -1));

// What is read out of an answer: its texts, or that it could not be read.
const told = (c, answer) =>
  answer.errors.length ? [[c, '', `errors: ${JSON.stringify(answer.errors[0])}`]] : texts(answer).map(([where, text]) => [c, where, text]);

function main() {
  const pick = random(20261130);
  const cases = places.flatMap((place) => Array.from({ length: CASES }, (_, i) => caseOf(pick, place, i % 2 ? 'es' : 'en')));
  // The words are those of the rules, so the cases are of version 2; the probe of assessments answers in the names of version 1.
  const inputs = cases.map((c) => caseInVersion2(JSON.stringify(c)));
  const { stdout, status, error } = spawnSync(probe('assess'), ['2026-10-15'], { input: inputs.join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 29 });
  if (error || status !== 0) throw error ?? new Error(`wearline_assess_probe ended with ${status}`);
  const letters = written(inputs.map((file, i) => ({ one: { today: '2026-10-15' }, file: JSON.parse(file), options: { language: cases[i].language } })));
  const said = [
    ...stdout.trimEnd().split('\n').flatMap((text, i) => told(cases[i], JSON.parse(text))),
    ...letters.flatMap((letter, i) =>
      letter.errors.length ? told(cases[i], letter) : paragraphsOf(letter, cases[i].language).filter((p) => !isFixed(p.text)).map((p) => [cases[i], `/letter/${p.id}`, p.text]))
  ];
  let failed = 0;
  const look = (why, source, found) => {
    const once = [...new Map(found.map((x) => [x[2], x])).values()];
    console.log(`${once.length ? 'FAIL' : 'ok  '} ${why} (${source})`);
    for (const [c, where, text] of once.slice(0, SHOWN)) console.log(`     ${c.jurisdiction}${where}: ${text}`);
    failed += once.length > 0;
  };
  for (const [pattern, why] of NONSENSE) look(why, pattern.source, said.filter(([, , text]) => pattern.test(text)));
  // A work keeps its title, a court its name, a charge its own words.
  look('English in Spanish', SPANISH_ONLY.source, said.filter(([c, where, text]) => c.language === 'es' && !/ource|title|publisher|^\/sources/.test(where) && SPANISH_ONLY.test(text.replace(/\([^)]*\)|“[^”]*”/g, ''))));
  const read = said.filter(([, , t]) => t.startsWith('errors:'));
  console.log(`${said.length} texts of ${cases.length} cases and as many letters, ${read.length} not read ${read[0]?.[2] ?? ''}`);
  if (said.length < 30_000 || read.length) failed += 1;
  console.log(`${NONSENSE.length + 2 - failed} passed, ${failed} failed`);
  process.exitCode = failed ? 1 : 0;
}

main();
