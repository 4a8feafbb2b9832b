// What a person can take along: the days for a calendar, the charges as a table, the whole case as one report.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { keepFile, nameFor } from '../../app/case-files';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import { asText, isPrivate, toSend } from '../../case/letter';
import type { Assessment, LegalDate } from '../../case/assessment';
import { foldedSection } from '../../parts/fold';
import { hasLetter } from '../letter/has-letter';
import './takeaway.css';

const isAhead = (d: Desk) => (x: LegalDate) => x.state === 'open' && !!x.last?.earliest && x.last.earliest >= d.today;

async function keepDays(d: Desk): Promise<void> {
  const { calendar } = await import('../../out/calendar');
  keepFile(
    `${nameFor(d)}.ics`,
    calendar(d.result!, d.case.title ?? say('page.report.title')),
    'text/calendar;charset=utf-8',
  );
}

async function keepCharges(d: Desk): Promise<void> {
  const { csv } = await import('../../out/csv');
  const head = ['number', 'text', 'claimed', 'verdict', 'low', 'likely', 'high', 'why'].map((c) =>
    say(`page.takeaway.column.${c}`),
  );
  const rows = d.result!.lines.map((l, i) => [
    String(i + 1),
    l.text,
    l.claimed,
    l.verdictText,
    l.fair.low,
    l.fair.likely ?? '',
    l.fair.high,
    l.reason,
  ]);
  keepFile(`${nameFor(d)}.csv`, csv(head, rows), 'text/csv;charset=utf-8');
}

async function keepReport(d: Desk): Promise<void> {
  const { report } = await import('../../out/report');
  const draft = await d.settledLetter();
  const letter = draft && !isPrivate(draft) ? asText(toSend(draft, d.sheet.letter)) : '';
  const text = await report({ subject: d.case, result: d.result!, exhibits: d.sheet.exhibits, letter });
  keepFile(`${nameFor(d)}.html`, text, 'text/html;charset=utf-8');
}

export function takeaway(d: Desk): TemplateResult | typeof nothing {
  if (!d.result || !hasLetter(d)) return nothing;
  return foldedSection(d, 'takeaway', say('page.takeaway.title'), () => ways(d, d.result!));
}

function ways(d: Desk, result: Assessment): TemplateResult {
  const days = result.dates.filter(isAhead(d)).length;
  const way = (name: string, act: () => Promise<void>, disabled = false) =>
    html`<li>
      <button type="button" class="tool" ?disabled=${disabled} @click=${() => void d.settled().then(act)}>${say(`page.takeaway.${name}`)}</button>
      <span>${say(`page.takeaway.${name}.says`)}</span>
    </li>`;
  return html`<ul>
    ${way('report', () => keepReport(d))} ${way('days', () => keepDays(d), days === 0)}
    ${result.lines.length ? way('charges', () => keepCharges(d)) : nothing}
  </ul>`;
}
