// Published worked examples against the engine, to the cent.
import { assess, cents, money } from './program.mjs';

const COST = '1000.00'; // where the source gives a share of the cost
const MOVE_OUT = '2026-07-31';

function document({ place, tenancy, deposit, line, lines }) {
  return {
    wearline: 1,
    ...(place ? { jurisdiction: place } : {}),
    tenancy: { possessionReturned: MOVE_OUT, ...tenancy },
    ...(deposit ? { deposits: [deposit], statement: { sent: MOVE_OUT, refundSent: MOVE_OUT } } : {}),
    lines: (lines ?? (line ? [line] : [])).map((l, i) => ({ id: String(i + 1), kind: 'damage', amount: COST, ...l }))
  };
}

const LOOK = {
  worth: (r) => r.lines[0].worth,
  interest: (r) => r.totals.interest,
  owed: (r) => r.totals.owedByTenant
};

// What the source says, in cents: a printed sum, or the exact share of 1,000.00 where the row says which share the printed decimal stands for.
function published(row, example) {
  if (row.share) return Math.round((100_000 * row.share[0]) / row.share[1]);
  return example.result_kind === 'amount' ? cents(example.result) : Math.round(100_000 * example.result);
}

// The share a row names must be the printed one, but for the rounding of its decimals; with a printed sum, that share of its cost.
function shareIsPrinted(row, example) {
  if (!row.share) return true;
  const cost = example.result_kind === 'amount' ? example.inputs.replacement_cost : 1;
  return cost === undefined || Math.abs((cost * row.share[0]) / row.share[1] - example.result) < 0.00005;
}

// One row: { id, state: reproduced | differs | not | broken, text }.
function runRow(row, example) {
  if (row.not) return { id: row.id, state: 'not', text: row.not };
  if (!shareIsPrinted(row, example)) return { id: row.id, state: 'broken', text: 'the share is not the printed result' };
  const wanted = published(row, example);
  for (const c of row.cases) {
    const got = LOOK[row.check ?? 'worth'](assess(document(c)));
    const likely = cents(got.likely);
    if (likely !== cents(c.expect)) return { id: row.id, state: 'broken', text: `gives ${got.likely}, ${c.expect} was expected` };
    if (!row.differs && likely !== wanted) return { id: row.id, state: 'broken', text: `gives ${got.likely}, the source ${money(wanted)}` };
    if (row.differs && likely === wanted) return { id: row.id, state: 'broken', text: 'no longer differs: drop the note' };
    if (row.differs && row.inside !== (cents(got.low) <= wanted && wanted <= cents(got.high))) return { id: row.id, state: 'broken', text: `${money(wanted)} lies ${row.inside ? 'outside' : 'inside'} ${got.low} to ${got.high}` };
  }
  return row.differs ? { id: row.id, state: 'differs', text: row.differs } : { id: row.id, state: 'reproduced', text: row.why };
}

// Every row of the published examples, in their order; a row without an entry is broken.
export function measureWorked(examples, map) {
  const results = examples.map((example) => {
    const row = map.rows.find((r) => r.id === example.id);
    return { ...(row ? runRow(row, example) : { id: example.id, state: 'broken', text: 'is not mapped' }), source: example.source.publisher, what: example.what };
  });
  for (const row of map.rows) if (!examples.some((e) => e.id === row.id)) results.push({ id: row.id, state: 'broken', text: 'is no published row', source: '', what: '' });
  return results;
}
