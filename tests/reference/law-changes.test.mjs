// The change log of law says what a person would have to be told, and nothing else.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { changeLog, changesOfPack } from './law-changes.mjs';

const pack = (duty, extra = {}) => ({ name: 'A place', jurisdiction: 'US-XX', sources: { s: { cite: 'Law § 1', read: 'secondary' } }, duties: duty ? [{ id: 'refund', source: ['s'], text: 'Pay back.', legs: [{ count: 30, unit: 'calendar-day', after: ['tenancy-ended'] }], ...duty }] : [], ...extra });

test('a changed number of days is said with both numbers and the source', () => {
  const [line] = changesOfPack(pack({}), pack({ legs: [{ count: 21, unit: 'calendar-day', after: ['tenancy-ended'] }] }));
  assert.match(line, /was 30 days after tenancy ended, is 21 days after tenancy ended/);
  assert.match(line, /Law § 1/);
});
test('a new rule and one that is gone', () => {
  assert.match(changesOfPack(pack(null), pack({}))[0], /^- New: Pay back\./);
  assert.match(changesOfPack(pack({}), pack(null))[0], /^- Gone: Pay back\./);
});
test('a note for maintainers and the order of members are no change', () => {
  assert.deepEqual(changesOfPack(pack({ note: 'old' }), pack({ note: 'new' })), []);
});
test('a source that was read better is said', () => {
  const now = pack({});
  now.sources.s = { cite: 'Law § 1', read: 'statute-text' };
  assert.match(changesOfPack(pack({}), now)[0], /now statute text, before secondary/);
});
test('a condition that changed is said in its words', () => {
  assert.match(changesOfPack(pack({}), pack({ when: { fact: 'furnished' }, whenText: 'the home was furnished' }))[0], /when it applies: the home was furnished/);
});
test('the log has a heading for each place that changed and none for the others', () => {
  const before = new Map([['engine/rules/law/US-XX.json', pack({})], ['engine/rules/law/US-YY.json', pack({})]]);
  const after = new Map([['engine/rules/law/US-XX.json', pack({ metBy: 'posting' })], ['engine/rules/law/US-YY.json', pack({})]]);
  const log = changeLog(before, after);
  assert.equal(log.match(/^## /gm).length, 1);
  assert.match(log, /what counts as done: was nothing said, is posting/);
});
