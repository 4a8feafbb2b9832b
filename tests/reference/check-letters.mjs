// What letters must say and must not say: letters of invented cases and some variants (tests/reference/letters), and what holds for
// every one of them, whatever the case (`rules` below). How many pages they take is measured in tests/browser/letter-pages.test.mjs.
//   node tests/reference/check-letters.mjs            'N passed, N failed', exit code 1 on failure
//   node tests/reference/check-letters.mjs --print 06  the letters of the cases whose names begin so

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { probe } from '../built.mjs';
import { caseOf, list, paragraphsOf, written } from './letters/written.mjs';

const root = new URL('../../', import.meta.url);
const here = new URL('letters/', import.meta.url);
const { never, proposals, letters } = list();
// Cases without a line of their own are written as the engine proposes: they must be readable and say nothing of what is never said.
const named = new Set(letters.map((one) => one.case));
const others = readdirSync(new URL('cases/', here)).map((file) => file.replace(/\.json$/, '')).filter((name) => !named.has(name))
  .map((name) => ({ case: name, kind: 'question-charges', today: '2026-09-15', language: 'en' }));

const questions = [
  ...[...letters, ...others].map((one) => ({ one, options: { kind: one.kind, language: one.language } })),
  ...proposals.map((one) => ({ one, options: {} })),
];
const answers = written(questions);

/** What was read from the words of each charge; no day bears on it. */
const assessed = [...new Set(questions.map(({ one }) => one.case))];
const judgedBy = spawnSync(probe('assess'), ['2026-12-31'],
  { input: assessed.map((name) => JSON.stringify(caseOf(name))).join('\n') + '\n', maxBuffer: 1 << 28 });
if (judgedBy.status !== 0) throw new Error(`the probe of assessments ended with ${judgedBy.status}: ${judgedBy.stderr}`);
const judgements = new Map(judgedBy.stdout.toString().trimEnd().split('\n').map((line, i) => [assessed[i], JSON.parse(line)]));
const judgedOf = (one) => judgements.get(one.case);

/** The words of a letter in the language that is asked for. */
const textOf = (answer, language) => (answer.language === language || !(answer.readingCopy ?? answer.copy) ? answer.text : (answer.readingCopy ?? answer.copy).text);

const tenantsLetters = new Set(['question-charges', 'ask-for-papers', 'after-deadline', 'reply-to-demand', 'accept-and-claim-rest',
  'second-letter', 'objection', 'forwarding-address', 'demand', 'inspection-request']);
const aboutMoney = new Set(['question-charges', 'after-deadline', 'reply-to-demand', 'accept-and-claim-rest', 'second-letter', 'objection', 'demand']);
const { easing } = JSON.parse(readFileSync(new URL('engine/rules/letters.json', root), 'utf8'));
const paragraphs = paragraphsOf;
/** Kinds of money that the law of a place does not call a deposit. */
const apart = (place) => {
  const pack = new URL(`engine/rules/law/${place}.json`, root);
  return existsSync(pack) ? JSON.parse(readFileSync(pack, 'utf8')).notDeposit?.flatMap((rule) => rule.deposits) ?? [] : [];
};

/** What holds for every letter. Each rule gives the words that break it. */
const rules = {
  'a citation stands once in its brackets': ({ text }) =>
    [...text.matchAll(/\(([^()]*(?:\([^()]*\)[^()]*)*)\)/g)].map(([, inside]) => inside.replace(/\.$/, '').replace(/^As (?:I|we) read |^Así (?:leo|leemos) /, '').split('; '))
      .filter((cites) => new Set(cites).size < cites.length).map((cites) => cites.join('; ')),
  "a tenant's letter says nothing of the law that eases it for the other side": ({ one, text, answer }) => {
    if (!tenantsLetters.has(one.kind)) return [];
    const said = paragraphs(answer, one.language).filter((p) => p.cites.length || /^(missed|paper|forfeit|penalty)/.test(p.id)).map((p) => p.text).join(' ');
    return easing[one.language].filter((words) => said.includes(words)).map((words) => `${words} (${text.length})`);
  },
  // Citations have full stops of their own.
  'no sentence stands twice': ({ one, answer }) => {
    const said = paragraphs(answer, one.language).filter((p) => p.role !== 'address' && p.id !== 'sign')
      .flatMap((p) => p.cites.reduce((text, cite) => text.replaceAll(cite, ''), p.text).split(/(?<=[.?!])\s+/)).filter((sentence) => sentence.length > 30);
    return said.filter((sentence, i) => said.indexOf(sentence) < i);
  },
  'what the words of a charge say is the list\'s own': ({ one, c, answer, judged }) => {
    if (!tenantsLetters.has(one.kind) || one.language !== 'en') return [];
    return judged.lines.filter((line) => (line.factsFromText ?? line.fromWords ?? []).some((f) => /^(installed|ageYears)/.test(f.field))).flatMap((line) => {
      const said = paragraphs(answer, 'en').filter((p) => p.lines.includes(line.id)).map((p) => p.text).join(' ');
      const own = new RegExp(`For charge ${line.id}: such a thing[^.]*this one was`).exec(said);
      return own ? [own[0]] : [];
    });
  },
  'what is said not to be given, or not to be shown, is asked for': ({ one, c, answer }) => {
    if (!aboutMoney.has(one.kind)) return [];
    const shown = paragraphs(answer, one.language);
    if (shown.some((p) => p.id === 'forfeit' || /^(Even if|Aunque)/.test(p.id === 'charges-intro' ? p.text : ''))) return []; // nothing may be kept: nothing is left to show
    const asked = shown.filter((p) => p.id === 'show').flatMap((p) => [p.text, ...p.rows.flat()]).join(' ');
    const wanted = shown.filter((p) => ['group-age', 'group-no-bill', 'group-unnamed', 'group-no-amount'].includes(p.id)).flatMap((p) => p.lines);
    const worth = (id) => { const { amount } = c.lines.find((line) => line.id === id); return amount === undefined || amount === null || Number(amount) >= 25; };
    return wanted.filter((id) => worth(id) && !new RegExp(`(charges?|cobros?) [^:]*\\b${id}\\b|\\d (to|a) \\d`).test(asked));
  },
  'what is left undisputed stands only in a letter that has to name each charge, or is meant to settle': ({ one, answer }) =>
    aboutMoney.has(one.kind) && !['objection', 'accept-and-claim-rest'].includes(one.kind)
      ? paragraphs(answer, one.language).filter((p) => p.id === 'charges').flatMap((p) => p.rows).filter((row) => row[2] === '$0.00').map((row) => row.join(' ')) : [],
  'one charge is one and several are several': ({ text }) =>
    [...text.matchAll(/charges \d[^:.]*, \$[\d,.]+\. (?:[^.]*\. )?(The charge does|It is on the list|I do not agree to it|Nothing shows that the sum is)/g)].map((m) => m[0]),
  'several deposits are spoken of as several': ({ one, c, text }) =>
    tenantsLetters.has(one.kind) && c.deposits?.filter((d) => d.kind !== 'last-month' && d.amount && !apart(c.jurisdiction).includes(d.kind)).length > 1
      ? [...text.matchAll(/(?:my|our) (?:whole )?(?:security )?deposit\b|de mi depósito\b/g)].map((m) => m[0]) : [],
  'an address to write to stands once in a landlord\'s paper, beside its head': ({ one, answer, c }) =>
    c.side === 'landlord' && one.kind === 'itemized-statement' && one.language === 'en' && paragraphs(answer, 'en').filter((p) => /at the address at the top|Write to/.test(p.text)).length > 1 ? ['twice'] : [],
  'the money letter asks in its first paragraph': ({ one, answer }) => {
    if (!aboutMoney.has(one.kind)) return [];
    const ask = paragraphs(answer, one.language).find((p) => p.role === 'ask');
    return ask ? [] : ['no paragraph that asks'];
  },
  'where an office decides no court is spoken of by the sender': ({ one, c, text, answer }) =>
    c.jurisdiction?.startsWith('CA-') && /small claims court|tribunal de reclamos menores|Go to court/.test(text + answer.warnings.map((w) => w.text).join(' ')) ? ['small claims court'] : [],
  'no word that its own language does not know': ({ one, text }) =>
    one.language === 'es' ? ['lista de cargos', 'del cobros', 'Nombre al propietario'].filter((words) => text.includes(words)) : [],
};

function brokenRules({ one }, answer, judged) {
  const found = { one, c: caseOf(one.case), answer, text: textOf(answer, one.language), judged };
  return Object.entries(rules).flatMap(([rule, broken]) => broken(found).map((words) => `${rule}: "${words}"`));
}

function problems({ one, options }, answer) {
  if (answer.errors.length) return [answer.errors[0].text];
  if (!options.kind) {
    if (one.none) return answer.proposed.length || answer.noLetter?.code !== one.none ? [`proposes ${answer.proposed.map((p) => p.kind)}, not none (${one.none})`] : [];
    return answer.proposed[0]?.kind === one.first ? [] : [`proposes ${answer.proposed[0]?.kind} first, not ${one.first}`];
  }
  const text = textOf(answer, one.language);
  return [
    ...brokenRules({ one }, answer, judgedOf(one)),
    ...(one.must ?? []).filter((words) => !text.includes(words)).map((words) => `does not say "${words}"`),
    ...[...(one.mustNot ?? []), ...never].filter((words) => text.includes(words)).map((words) => `says "${words}"`),
  ];
}

const shown = process.argv.includes('--print') ? process.argv[process.argv.indexOf('--print') + 1] : undefined;
let failed = 0;
questions.forEach((question, i) => {
  const { one, options } = question;
  const name = `${one.case} ${options.kind ?? 'proposed'} ${one.today} ${one.language ?? ''}`;
  if (shown !== undefined && one.case.startsWith(shown) && options.kind) console.log(`=== ${name}\n${textOf(answers[i], one.language)}`);
  const found = problems(question, answers[i]);
  if (found.length) console.log([`FAIL ${name}`, ...found.map((p) => `     ${p}`)].join('\n'));
  failed += found.length > 0;
});
console.log(`${questions.length - failed} passed, ${failed} failed`);
process.exitCode = failed ? 1 : 0;
