// What a measure read wrong, written down beside its sets: a change of code or rules that turns a right reading wrong fails the measure, and
// one that mends a reading asks for the list to be renewed.
import fs from 'node:fs';

/** How sure a reading was says nothing of whether it is right. */
const plain = (note) => note.replace(/ \(\d+\)$/, '').replace(/\s+/g, ' ').trim();

/**
 * Compares `notes` with those in `file`, or writes them there. True if nothing is read wrong that was read right, and nothing right that is
 * still listed.
 */
export function asWrittenDown(file, notes, write) {
  const now = notes.map(plain);
  if (write) fs.writeFileSync(file, `${now.join('\n')}\n`);
  const before = fs.readFileSync(file, 'utf8').trimEnd().split('\n').filter(Boolean);
  const missing = (some, from) => {
    const left = new Map();
    for (const one of from) left.set(one, (left.get(one) ?? 0) + 1);
    return some.filter((one) => (left.get(one) ? !left.set(one, left.get(one) - 1) : true));
  };
  const lost = missing(now, before), mended = missing(before, now);
  for (const note of lost) console.log(`read wrong now: ${note}`);
  for (const note of mended) console.log(`listed as wrong and no longer so: ${note}`);
  if (mended.length > 0) console.log('Renew the list with --write.');
  return lost.length === 0 && mended.length === 0;
}
