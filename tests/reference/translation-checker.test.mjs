// Proof that the check of the law packs' translations can fail: one fault put into a sound pair, and the words it must answer with.
import assert from 'node:assert/strict';
import path from 'node:path';
import test from 'node:test';
import { problemsOf, wordsValidator } from './check-translations.mjs';
import { readJson, RULES } from './wordcheck/catalogue.mjs';
import { englishOf, lostNumbers, seal, sealed } from './wordcheck/translations.mjs';

const validate = wordsValidator();

// An invented pack: only what the check reads.
const pack = () => ({
  jurisdiction: 'US-WA',
  duties: [{ id: 'refund', text: 'The landlord must pay within 14 days. Not before!', whenText: 'something is left', ifMissedText: 'The tenant may get twice the sum.', note: 'Not shown.' }],
  papers: [{ id: 'list', text: 'A list is needed above $1,250.50.', ifMissingText: 'Nothing may be kept.', check: 'Read in 2024.' }],
  facts: [{ id: 'garage', question: 'Was there a garage?' }],
  events: [{ id: 'flood', question: 'When was the flood?' }],
  checkThis: [{ text: 'One court saw it otherwise.', rules: ['refund'] }],
});

const sound = () => sealed({
  jurisdiction: 'US-WA',
  rules: {
    refund: { text: 'El propietario debe pagar dentro de 14 días. ¡No antes!', whenText: 'queda algo', ifMissedText: 'El inquilino puede recibir el doble.' },
    list: { text: 'Hace falta una lista si son más de $1,250.50.', ifMissingText: 'No se puede retener nada.', check: 'Se leyó en 2024.' },
  },
  facts: { garage: { question: '¿Había un garaje?' } },
  events: { flood: { question: '¿Cuándo fue la inundación?', day: 'el día de la inundación' } },
  checkThis: [{ text: 'Un tribunal lo vio de otro modo.' }],
}, pack());

const faultsOf = (spoil, spoilPack = () => {}) => {
  const [overlay, english] = [sound(), pack()];
  spoil(overlay);
  spoilPack(english);
  return problemsOf(english, overlay, validate);
};

test('a sound translation passes', () => assert.deepEqual(faultsOf(() => {}), []));

const FAULTS = [
  ['a wrong name of the place', /jurisdiction US-OR is not/, (o) => { o.jurisdiction = 'US-OR'; }],
  ['an unknown member', /additional properties/, (o) => { o.rules.refund.texto = 'x'; }],
  ['a section sign', /pattern/, (o) => { o.rules.refund.text = 'Vea § 14.'; }],
  ['a question without its marks', /pattern/, (o) => { o.facts.garage.question = 'Había un garaje'; }],
  ['an event without its day', /day/, (o) => { delete o.events.flood.day; }],
  ['an unknown rule', /rules\/ghost: the pack has nothing/, (o) => { o.rules.ghost = { text: 'Nada.' }; }],
  ['an unknown fact', /facts\/ghost: the pack has nothing/, (o) => { o.facts.ghost = { question: '¿Sí?' }; }],
  ['a doubt too many', /checkThis\/1: the pack has nothing/, (o) => { o.checkThis.push({ text: 'Nada más.' }); }],
  ['a sentence that the pack has not', /rules\/refund\/check: the pack has no such sentence/, (o) => { o.rules.refund.check = 'Nada.'; }],
  ['a rule that is not translated', /rules\/list is not translated/, (o) => { delete o.rules.list; }],
  ['a sentence that is not translated', /rules\/list\/ifMissingText is not translated/, (o) => { delete o.rules.list.ifMissingText; }],
  ['facts that are not translated', /facts\/garage is not translated/, (o) => { delete o.facts; }],
  ['a doubt that is not translated', /checkThis\/0 is not translated/, (o) => { o.checkThis = []; }],
  ['another number of days', /14 is not in the Spanish/, (o) => { o.rules.refund.text = 'El propietario debe pagar dentro de 41 días.'; }],
  ['a number of its own', /30 is not in the English/, (o) => { o.rules.refund.text += ' Son 30.'; }],
  ['another sum', /1250.5 is not in the Spanish/, (o) => { o.rules.list.text = 'Hace falta una lista si son más de $1,250.'; }],
  ['a number in words that is lost', /refund\/ifMissedText: 2 is not in the Spanish/, (o) => { o.rules.refund.ifMissedText = 'El inquilino puede recibir más.'; }],
  ['English left standing', /still English/, (o) => { o.rules.refund.whenText = 'something is left'; }],
  ['a stray space', /stray space/, (o) => { o.rules.refund.whenText = 'queda  algo'; }],
  ['a sentence too long', /31 words/, (o) => { o.rules.refund.whenText = Array(31).fill('algo').join(' '); }],
  ['no seal', /rules\/refund: not sealed/, (o) => { delete o.rules.refund.of; }],
  ['a wrong seal', /rules\/refund: the English has changed/, (o) => { o.rules.refund.of = '00000000'; }],
];
for (const [name, words, spoil] of FAULTS)
  test(`${name} is named`, () => assert.match(faultsOf(spoil).join('\n'), words));

test('English that changed since is named, and only there', () => {
  const changed = faultsOf(() => {}, (p) => { p.duties[0].whenText = 'something may be left'; });
  assert.deepEqual(changed, ['rules/refund: the English has changed since; read it again, then --seal']);
  assert.deepEqual(faultsOf(() => {}, (p) => { p.duties[0].note = 'Another note.'; }), []);
});

test('a pack without Spanish, and Spanish without a pack, fail', () => {
  assert.deepEqual(problemsOf(pack(), null, validate), ['is not in Spanish yet']);
  assert.deepEqual(problemsOf(null, sound(), validate), ['there is no pack of this name']);
});

test('a small number may be a word on either side, a larger one or another may not', () => {
  assert.deepEqual(lostNumbers('Two months, or 10 days.', 'Dos meses, o diez días.'), []);
  assert.deepEqual(lostNumbers('Two months and a half.', '2 meses y medio.'), []);
  assert.deepEqual(lostNumbers('At most three months.', 'Dos meses como máximo.'), ['3 is not in the Spanish']);
  assert.deepEqual(lostNumbers('Since 2019.', 'Desde hace tiempo.'), ['2019 is not in the Spanish']);
});

test('the seal is the start of the SHA-256 of the sentences', () => {
  assert.equal(seal({ text: 'abc' }), 'ba7816bf'); // FIPS 180-4, the example of one block
  assert.notEqual(seal({ text: 'a', check: 'b' }), seal({ text: 'ab' }));
});

test('every sentence of a real pack is asked for', () => {
  const real = readJson(path.join(RULES, 'law/US-WA.json'));
  const asked = englishOf(real);
  for (const d of real.duties) assert.equal(asked[`rules/${d.id}`].text, d.text);
  assert.equal(asked['facts/own-work'].question, real.facts.find((f) => f.id === 'own-work').question);
  assert.equal(asked['events/belongings-removed'].question, real.events[0].question);
  assert.equal(Object.keys(asked).filter((name) => name.startsWith('checkThis/')).length, real.checkThis.length);
});
