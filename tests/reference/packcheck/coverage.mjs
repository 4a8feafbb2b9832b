// Which topics each pack covers and how its rules were read, as a Markdown table, the weakest first. A cell says how the rules were read.
import { rulesOf } from './references.mjs';

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

const PRIMARY = ['statute-text', 'official-guide'];
const WEAK_BELOW = 2 / 3; // from a third of rules that nobody read in the law or an official guide on, letters take more care

/** The share of a pack's rules with at least one source that is statute text or an official guide. */
export function shareRead(pack) {
  const rules = rulesOf(pack).filter(({ part }) => part !== 'notFound').map(({ rule }) => rule);
  const read = rules.filter((r) => (r.source ?? []).some((key) => PRIMARY.includes(pack.sources[key]?.read)));
  return rules.length ? read.length / rules.length : 0;
}

/** "weak" is not an opinion: it follows from that share. */
export function checkWeak(pack, problem) {
  const weak = shareRead(pack) < WEAK_BELOW;
  if (pack.weak !== weak) problem(`weak must be ${weak}: ${percent(pack)} of its rules were read in the law or an official guide`);
}

const percent = (pack) => `${Math.floor(shareRead(pack) * 100)} %`;

export function coverageTable(packs) {
  const rows = [...packs].sort((a, b) => shareRead(a) - shareRead(b) || a.jurisdiction.localeCompare(b.jurisdiction)).map((p) =>
    `| ${p.jurisdiction} ${p.name}${p.weak ? ' (weak)' : ''} | ${percent(p)} | ${TOPICS.map(([topic]) => cell(p, topic)).join(' | ')} |`);
  return [
    'S statute text, G official guide, 2 secondary source, M from memory, · looked for and not found; empty: no rule. Read: the share of the rules with a source',
    'that is statute text or an official guide, the weakest first; under two thirds a pack is weak.', '',
    `| Jurisdiction | Read | ${TOPICS.map(([, label]) => label).join(' | ')} |`, `| --- | --- |${' --- |'.repeat(TOPICS.length)}`, ...rows].join('\n');
}

export function replaceBetweenMarkers(text, table) {
  const [from, to] = [text.indexOf(OPEN), text.indexOf(CLOSE)];
  if (from < 0 || to < from) throw new Error('README has no coverage markers');
  return `${text.slice(0, from + OPEN.length)}\n${table}\n${text.slice(to)}`;
}
