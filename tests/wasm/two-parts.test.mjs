// The engine as the page has it, in two parts, gives the same bytes as the undivided one: whether the second part came ahead or was wanted
// in the middle of an answer.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { source } from '../page/source.mjs';
import { allCases, bundle, fullModule, loadAll, ROOT, rulesIndex } from './engines.mjs';

const ENGINE = path.join(ROOT, 'site/src/generated/engine');
const partOf = (name) => new WebAssembly.Module(fs.readFileSync(path.join(ENGINE, name)));
const { twoParts } = await source('engine/two-parts.ts');
const { default: create } = await import(path.join(ENGINE, 'wearline.mjs'));

/** A module in two parts; `fetched` counts how often the second was wanted before it was there. */
async function inTwo() {
  const state = { fetched: 0 };
  let parts;
  const engine = await create({
    instantiateWasm: (imports, receive) => {
      parts = twoParts(imports, () => {
        state.fetched += 1;
        return fs.readFileSync(path.join(ENGINE, 'rest.wasm'));
      });
      const first = new WebAssembly.Instance(partOf('first.wasm'), parts.imports);
      parts.begun(first);
      receive(first);
      return first.exports;
    },
  });
  return Object.assign(state, { engine, complete: () => parts.complete(partOf('rest.wasm')) });
}

const charge = (text) => JSON.stringify({ wearline: 2, side: 'tenant', language: 'en', lines: [{ id: '1', text, amount: '75.00' }] });

test('the first charge is answered by the first part alone, but for few', async () => {
  // Other words than those by which the module was taken apart.
  const lines = JSON.parse(fs.readFileSync(path.join(ROOT, 'tests/reference/facts/fact-lines.json'), 'utf8')).filter((_, i) => i % 20 === 0);
  const { shared, reading } = rulesIndex();
  let wanted = 0;
  for (const { text } of lines) {
    const parts = await inTwo();
    parts.engine.load(bundle(shared));
    parts.engine.catalogue('en', 2);
    parts.engine.load(bundle(reading));
    assert.deepEqual(JSON.parse(parts.engine.assess(charge(text), '2026-09-01', 2)).errors, []);
    wanted += parts.fetched;
  }
  assert.ok(lines.length >= 10 && wanted <= lines.length / 5, `${wanted} of ${lines.length} charges wanted the second part`);
});

describe('both ways give the bytes of the undivided engine', () => {
  const cases = allCases();
  let whole;
  before(async () => { whole = await fullModule(); });
  for (const [name, ahead] of [['the second part ahead', true], ['wanted in the middle of an answer', false]])
    test(name, async () => {
      const parts = await inTwo();
      if (ahead) parts.complete();
      loadAll(parts.engine);
      for (const [i, { name: which, text, today }] of cases.entries()) {
        if (i % 5) continue;
        assert.equal(parts.engine.assess(text, today), whole.assess(text, today), which);
        assert.equal(parts.engine.letter(text, today, '{}'), whole.letter(text, today, '{}'), which);
      }
      assert.equal(parts.fetched, ahead ? 0 : 1);
    });
});
