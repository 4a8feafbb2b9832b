// What came with the statement: a list to tick. What the law wants and did not come is called missing only once that is known.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { askedBy } from '../../engine/rules';
import { say } from '../../say/wording';
import type { Defect } from '../../case/assessment';
import type { Named } from '../../case/catalogue';
import { foldedSection } from '../../parts/fold';
import { oneOf } from '../../parts/field';
import { sources } from '../../parts/sources';
import './papers.css';

/** Papers asked about where no law pack names its own. */
const usualPapers = ['itemized', 'reasons', 'receipts', 'photos'];

function listed(d: Desk): Named[] {
  const needed = askedBy(d.case.jurisdiction)?.papers;
  return d.catalogue.documents.filter((p) => (needed?.size ? needed.has(p.id) : usualPapers.includes(p.id)));
}

/** Came, did not come, or not known: kept in the two lists of the case. */
function choose(d: Desk, id: string, came: string): void {
  const { enclosedDocuments = [], missingDocuments = [], ...others } = d.case.statement ?? {};
  const without = (list: string[]) => list.filter((p) => p !== id);
  const rest = { enclosedDocuments: without(enclosedDocuments), missingDocuments: without(missingDocuments) };
  if (came) rest[came === 'yes' ? 'enclosedDocuments' : 'missingDocuments'].push(id);
  const lists = Object.fromEntries(Object.entries(rest).filter(([, l]) => l.length));
  d.put({ ...d.case, statement: { ...others, ...lists } });
}

function paper(d: Desk, p: Named): TemplateResult {
  const { enclosedDocuments: enclosed = [], missingDocuments: missing = [] } = d.case.statement ?? {};
  const answers = ['yes', 'no', ''].map((id) => ({ id, label: say(`page.papers.answer.${id || 'open'}`) }));
  const state = enclosed.includes(p.id) ? 'yes' : missing.includes(p.id) ? 'no' : '';
  return html`<fieldset class="paper">
    <legend>${p.label}</legend>
    ${oneOf(`paper-${p.id}`, answers, state, (id) => choose(d, p.id, id))}
  </fieldset>`;
}

const gap = (d: Desk, x: Defect, saysConsequence: boolean): TemplateResult =>
  html`<li>
    <p>${x.text}${saysConsequence && x.ifMissing ? ` ${x.ifMissing}` : ''}</p>
    ${x.caveat ? html`<p class="check">${say('page.check')} ${x.caveat}</p>` : nothing} ${sources(d, x)}
  </li>`;

/** What did not come, once that is known: the papers by name, then what the law says is wrong for certain; each consequence once. */
function gaps(d: Desk, absent: Named[], found: Defect[]): TemplateResult | typeof nothing {
  if (absent.length + found.length === 0) return nothing;
  const firsts = found.map((x) => found.findIndex((y) => y.ifMissing === x.ifMissing));
  return html`<h3>${say('page.papers.missing')}</h3>
    <ul class="papers-list">
      ${found.length ? found.map((x, i) => gap(d, x, firsts[i] === i)) : absent.map((p) => html`<li><p>${p.label}</p></li>`)}
    </ul>`;
}

export function papers(d: Desk): TemplateResult | typeof nothing {
  if (!d.result || d.case.statement?.['statementReceived'] === false) return nothing;
  const list = listed(d);
  if (list.length === 0) return nothing;
  const { enclosedDocuments: enclosed = [], missingDocuments: missing = [] } = d.case.statement ?? {};
  const absent = list.filter((p) => missing.includes(p.id));
  const answered = absent.length + list.filter((p) => enclosed.includes(p.id)).length;
  const certain = d.result.defects.filter((x) => x.certain);
  const open = d.result.defects.filter((x) => !x.certain);
  const consequence = open.find((x) => x.ifMissing)?.ifMissing ?? '';
  return foldedSection(
    d,
    'papers',
    say(`page.papers.title.${d.side === 'landlord' ? 'landlord' : 'tenant'}`),
    () =>
      html`<p>${say('page.papers.says')} ${consequence}</p>
        ${list.map((p) => paper(d, p))} ${gaps(d, absent, certain)}`,
    say('page.papers.answered', { answered, all: list.length }) +
      (absent.length ? ` · ${say('page.papers.missingCount', { count: absent.length })}` : ''),
  );
}
