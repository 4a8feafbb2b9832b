// Which topics each pack covers, as a Markdown table. A cell says how the rules were read.
const TOPICS = [['duties', 'Dates'], ['counting', 'Counting'], ['papers', 'Papers'], ['allows', 'Allowed'], ['bars', 'Barred'], ['caps', 'Cap'], ['interest', 'Interest'],
  ['forfeits', 'Forfeit'], ['remedies', 'Remedy'], ['records', 'Move-in record'], ['inspection', 'Inspection'], ['demand', 'Demand'], ['address', 'Address'],
  ['wear', 'Wear'], ['worth', 'Worth'], ['holder', 'Holder'], ['scope', 'Scope'], ['smallClaims', 'Small claims']];
const MARKS = { 'statute-text': 'S', 'official-guide': 'G', secondary: '2', memory: 'M' };
export const OPEN = '<!-- coverage: written by tests/reference/check-packs.mjs --write-coverage -->';
export const CLOSE = '<!-- /coverage -->';

function cell(pack, topic) {
  const read = new Set((pack[topic] ?? []).flatMap((r) => r.source ?? []).map((key) => pack.sources[key]?.read));
  const marks = Object.entries(MARKS).filter(([name]) => read.has(name)).map(([, mark]) => mark).join('');
  return marks || (pack.notFound.some((n) => n.topics.includes(topic)) ? '·' : '');
}

export function coverageTable(packs) {
  const rows = [...packs].sort((a, b) => a.jurisdiction.localeCompare(b.jurisdiction)).map((p) =>
    `| ${p.jurisdiction} ${p.name}${p.weak ? ' (weak)' : ''} | ${TOPICS.map(([topic]) => cell(p, topic)).join(' | ')} |`);
  return [
    'S statute text, G official guide, 2 secondary source, M from memory, · looked for and not found; empty: no rule.', '',
    `| Jurisdiction | ${TOPICS.map(([, label]) => label).join(' | ')} |`, `| --- |${' --- |'.repeat(TOPICS.length)}`, ...rows].join('\n');
}

export function replaceBetweenMarkers(text, table) {
  const [from, to] = [text.indexOf(OPEN), text.indexOf(CLOSE)];
  if (from < 0 || to < from) throw new Error('README has no coverage markers');
  return `${text.slice(0, from + OPEN.length)}\n${table}\n${text.slice(to)}`;
}
