// The landlord's statement of every place against that place's own list: what the law wants in it stands in it or has a marked blank, and a
// landlord whose day has passed keeps nothing that the law then takes.
//   node tests/reference/check-statements.mjs     'N passed, N failed', exit code 1 on failure
import { readdirSync, readFileSync } from 'node:fs';
import { written } from './letters/written.mjs';

const LAW = new URL('../../engine/rules/law/', import.meta.url);
const packs = readdirSync(LAW).filter((file) => file.endsWith('.json')).map((file) => JSON.parse(readFileSync(new URL(file, LAW), 'utf8')));

const statement = (place, more = {}) => ({
  wearline: 2, jurisdiction: place, side: 'landlord',
  tenancy: {
    began: '2024-04-01', ended: '2026-03-31', possessionReturned: '2026-03-31', forwardingAddressGiven: '2026-03-30', monthlyRent: '1000.00',
    landlordUnits: 40, buildingUnits: 40, ownerOccupied: false,
  },
  deposits: [{ kind: 'security', amount: '1000.00', paid: '2024-03-25' }],
  statement: { enclosedDocuments: ['photos', 'receipts'] },
  lines: [
    { id: '1', text: 'Hole in bedroom door', amount: '200.00', element: 'interior-door', finding: 'hole', cause: 'tenant', installed: '2025-01', conditionAtMoveIn: 'good', supportingDocuments: ['receipts'] },
    { id: '2', text: 'Oven, baked-on grease', amount: '60.00', element: 'appliance-cleaning', finding: 'oven-baked-on', cause: 'tenant', conditionAtMoveIn: 'clean', hours: { count: 2, unit: 'hour' }, hourlyRate: '30.00' },
    { id: '3', text: 'March rent short', amount: '300.00', element: 'rent', finding: 'balance-short', periodStart: '2026-03-01', periodEnd: '2026-03-31' },
  ],
  ...more,
});

const paragraph = (answer, id) => answer.paragraphs.find((p) => p.id === id && p.included);
const charged = (answer) => (paragraph(answer, 'charges')?.rows ?? []).map((row) => row[0]);
const notice = (answer, id) => answer.paragraphs.some((p) => p.included && (p.id === `wants-${id}` || p.id.startsWith('fixed-')));

/** What shows that a statement has a thing; what is not here only its sender can put in, and a note of the law tells it. */
const has = {
  itemized: (a) => charged(a).length > 1 && charged(a).slice(0, -1).every((row) => /^\d+\. ./.test(row)),
  reasons: (a) => charged(a).slice(0, -1).every((row) => a.paragraphs.some((p) => p.role === 'line' && p.text.startsWith(row) && p.text.length > row.length + 12)),
  'estimated-cost-per-item': (a) => paragraph(a, 'charges').rows.slice(0, -1).every((row) => /\$/.test(row[1])),
  'deposit-shown': (a) => paragraph(a, 'sums').rows.some((row) => row[1] === '$1,000.00'),
  'interest-shown': (a) => /Interest/.test(a.text),
  receipts: (a) => /receipts/.test(paragraph(a, 'enclosures').rows.flat().join(' ')),
  photos: (a) => /photos/.test(paragraph(a, 'enclosures').rows.flat().join(' ')),
  'labor-hours-and-rate': (a) => /2 hours at \$30\.00 an hour/.test(a.text),
  'contractor-contact': (a) => !!paragraph(a, 'wants-contractor'),
  'refund-enclosed': (a) => /payment of \$/.test(paragraph(a, 'enclosures').rows.flat().join(' ')),
  'tenant-rights-notice': (a) => notice(a, 'tenant-rights-notice'),
  sworn: (a) => notice(a, 'sworn'),
  signed: (a) => /______/.test(paragraph(a, 'sign').text),
  'landlord-address': (a) => !!paragraph(a, 'wants-address') || /Write to:|Your objection must be sent to/.test(a.text),
  'tenant-consent': (a) => /I agree that/.test(paragraph(a, 'agreement').text),
  written: () => true,
};

const LIST_OR_MONEY = new Set(['itemize', 'notice-of-claim', 'return-deposit', 'refund-balance']);
function mentions(when, ids) {
  if (Array.isArray(when)) return when.some((part) => mentions(part, ids));
  if (!when || typeof when !== 'object') return false;
  return (ids.has(when.duty) && when.is === 'missed') || Object.values(when).some((part) => mentions(part, ids));
}

/** What a day that has passed costs by the pack itself: "damage", "all" or nothing. */
function lostWhenLate(pack) {
  const days = new Set(pack.duties.filter((d) => d.who === 'landlord' && LIST_OR_MONEY.has(d.duty)).map((d) => d.id));
  const of = pack.forfeits.filter((f) => mentions(f.when, days)).map((f) => f.loses);
  if (of.some((loses) => loses === 'all-deductions' || loses === 'whole-deposit-claim')) return 'all';
  return of.includes('damage-deductions') ? 'damage' : '';
}

const questions = packs.flatMap(({ jurisdiction }) => [
  { one: { today: '2026-04-03' }, file: statement(jurisdiction), options: { kind: 'itemized-statement' } },
  { one: { today: '2026-11-15' }, file: statement(jurisdiction), options: { kind: 'itemized-statement' } },
  { one: { today: '2026-11-15' }, file: statement(jurisdiction), options: { kind: 'late-statement' } },
]);
const answers = written(questions);

let passed = 0;
const failures = [];
const check = (name, fine) => (fine ? passed++ : failures.push(name));
packs.forEach((pack, i) => {
  const [inTime, late, chosen] = answers.slice(3 * i, 3 * i + 3);
  const place = pack.jurisdiction;
  check(`${place}: a paper in time has its charges`, charged(inTime).length === 4);
  for (const rule of pack.papers)
    if (inTime.warnings.some((w) => w.code === `paper-${rule.id}`))
      for (const wanted of rule.requires ?? []) if (has[wanted]) check(`${place} ${rule.id}: ${wanted}`, has[wanted](inTime));
  const lost = lostWhenLate(pack);
  if (!late.warnings.some((w) => w.code === 'late')) return; // its days start with something that has not happened
  if (lost === 'all') check(`${place}: nothing is kept after the day`, charged(late).length === 0 && /You get back \$1,0/.test(late.text));
  if (lost === 'damage') check(`${place}: nothing is kept for damage after the day`, charged(late).join().includes('rent') && !charged(late).join().includes('Hole'));
  if (!lost) return;
  check(`${place}: what it keeps for whoever chooses so`, charged(chosen).join().includes('Hole'));
  check(`${place}: and what that may cost stands first`, chosen.warnings[0].code === 'late' && chosen.warnings.some((w) => /all the same/.test(w.text)));
});
for (const name of failures) console.log(`FAIL ${name}`);
console.log(`${passed} passed, ${failures.length} failed`);
process.exitCode = failures.length ? 1 : 0;
