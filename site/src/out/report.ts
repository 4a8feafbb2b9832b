// The whole case as one HTML file to keep, print or hand over: facts, charges with their steps, days, papers, questions, cautions, letter,
// exhibits. The case itself lies within, so that the report can be opened here again.

import { html, nothing, render, type TemplateResult } from 'lit/html.js';
import { longDay, middle, money } from '../say/show';
import { language, say } from '../say/wording';
import type { Assessment, JudgedLine, Sourced, Range } from '../case/assessment';
import type { CaseFile } from '../case/case';
import { ownBars } from '../case/outcome';
import { spanInWords } from '../say/date-words';
import type { Exhibit } from '../case/exhibit';
import { inert, toHandOut } from '../case/saved';
import css from './report.css?inline';

export interface ReportOf {
  subject: CaseFile;
  result: Assessment;
  exhibits: Exhibit[];
  /** The letter as text; empty where there is none. */
  letter: string;
}

const range = (s: Range): string =>
  s.low === s.high || s.likely === null
    ? middle(s)
    : say('page.report.range', { likely: money(s.likely), low: money(s.low), high: money(s.high) });

function named(a: Assessment, of: Sourced): TemplateResult | typeof nothing {
  const ids = of.sourceIds ?? [];
  const text = ids.length ? ids.map((id) => a.sources[id]?.text ?? id).join('; ') : of.source;
  return text ? html`<span class="quiet">[${text}]</span>` : nothing;
}

/** What the law says, with where it stands; a rule that the answer does not hold is left out. */
function lawSays(a: Assessment, applied: readonly { rule: string; applies: boolean | null }[]): TemplateResult[] {
  return applied.flatMap(({ rule: id, applies }) => {
    const rule = a.law?.rules[id];
    return rule
      ? [html`<p>${applies === null ? say('page.steps.mayApply') : ''} ${rule.text} ${named(a, rule)}</p>`]
      : [];
  });
}

function charge(a: Assessment, l: JudgedLine, n: number): TemplateResult {
  return html`<h3><span>${n}. ${l.text || say('page.charges.untitled')}</span><span class="sum">${money(l.claimed)}</span></h3>
    <p><strong>${say('page.report.fair', { sum: range(l.fair) })}</strong> ${l.verdictText}. ${l.reason}</p>
    <ol>${l.steps.map((s) => html`<li>${s.text} ${named(a, s)}</li>`)}</ol>
    ${l.turningPoint ? html`<p>${l.turningPoint.text}</p>` : nothing}
    ${lawSays(a, ownBars(a, l))}`;
}

function sums(a: Assessment): TemplateResult {
  const t = a.totals;
  const row = (key: string, figure: string) =>
    html`<tr><th scope="row">${say(`page.sums.${key}`)}</th><td class="sum">${figure}</td></tr>`;
  return html`<table>
    <tbody>
      ${t.deposit === null ? nothing : row('deposit', money(t.deposit))} ${row('claimed', money(t.claimed))} ${row('fair', range(t.fair))}
      ${t.fairRefund ? row('fairRefund', range(t.fairRefund)) : nothing} ${row('paidBack', money(t.paidBack))}
      ${t.shortfall ? row('shortfall', range(t.shortfall)) : nothing}
    </tbody>
  </table>`;
}

const part = (heading: string, body: TemplateResult | TemplateResult[], any = true): TemplateResult | typeof nothing =>
  any ? html`<h2>${heading}</h2>${body}` : nothing;

function exhibits(of: ReportOf, pictures: Map<number, string>): TemplateResult {
  const charged = (x: Exhibit) => of.subject.lines.find((l) => l.id === x.line)?.text ?? say('page.evidence.whole');
  return html`<ol>
    ${of.exhibits.map(
      (x) => html`<li>
        <strong>${x.name}</strong>: ${say(`page.evidence.shows.${x.shows}`)}, ${charged(x)}${x.taken ? `, ${longDay(x.taken)}` : ''}${x.note ? `. ${x.note}` : ''}
        ${pictures.has(x.id) ? html`<img src=${pictures.get(x.id)!} alt=${x.note || x.name} />` : nothing}
      </li>`,
    )}
  </ol>`;
}

const page = (of: ReportOf, pictures: Map<number, string>): TemplateResult => {
  const a = of.result;
  return html`<h1>${of.subject.title ?? say('page.report.title')}</h1>
    <p class="quiet">${say('page.report.made', { day: longDay(a.today), place: a.law?.name ?? '' })}</p>
    ${part(say('page.cautions.title'), html`<ul>${a.cautions.map((c) => html`<li>${c.text}</li>`)}</ul>`)}
    ${part(say('page.sums.title'), sums(a))} ${part(
      say('page.charges.title'),
      a.lines.map((l, i) => charge(a, l, i + 1)),
    )}
    ${part(say('page.charges.shared'), lawSays(a, a.law?.sharedRules ?? []), (a.law?.sharedRules ?? []).length > 0)}
    ${part(
      say('page.days.title'),
      html`<table><tbody>
        ${a.dates.map(
          (d) => html`<tr>
          <th scope="row">${d.label}</th><td>${d.last ? spanInWords(d.last) : ''}</td><td>${d.stateText} ${d.rule} ${d.text} ${named(a, d)}</td>
        </tr>`,
        )}
      </tbody></table>`,
      a.dates.length > 0,
    )}
    ${part(
      say('page.papers.missing'),
      html`<ul>${a.audit.map((x) => html`<li>${x.text}</li>`)}${a.defects.map((x) => html`<li>${x.text} ${x.ifMissing} ${named(a, x)}</li>`)}</ul>`,
      a.audit.length + a.defects.length > 0,
    )}
    ${part(say('page.unknowns.title'), html`<ul>${a.questions.map((q) => html`<li>${q.text}</li>`)}</ul>`, a.questions.length > 0)}
    ${part(
      say('page.law.assumed', { count: a.assumptions.length }),
      html`<ul>${a.assumptions.map((x) => html`<li>${x.text}</li>`)}</ul>`,
      a.assumptions.length > 0,
    )}
    ${a.remedies?.text ? part(say('page.added.title'), html`<p>${a.remedies.text} ${named(a, a.remedies)}</p>`) : nothing}
    ${part(say('page.evidence.title'), exhibits(of, pictures), of.exhibits.length > 0)}
    ${of.letter ? part(say('page.letter.label'), html`<div class="letter">${of.letter}</div>`) : nothing}`;
};

/** A picture small enough to carry along, as a data address; empty if the browser cannot draw it. */
async function small(x: Exhibit): Promise<string> {
  if (!x.type.startsWith('image/')) return '';
  try {
    const bitmap = await createImageBitmap(x.data);
    const scale = Math.min(1, 1000 / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(bitmap.width * scale);
    canvas.height = Math.round(bitmap.height * scale);
    canvas.getContext('2d')!.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL('image/jpeg', 0.8);
  } catch {
    return '';
  }
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');

export async function report(of: ReportOf): Promise<string> {
  const drawn = await Promise.all(of.exhibits.map(async (x) => [x.id, await small(x)] as const));
  const box = document.createElement('div');
  render(page(of, new Map(drawn.filter(([, src]) => src))), box);
  const body = box.innerHTML.replace(/<!--.*?-->/gs, '');
  const held = inert(toHandOut(of.subject));
  return `<!doctype html>
<html lang="${language()}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<title>${escaped(of.subject.title ?? say('page.report.title'))}</title>
<style>${css}</style>
</head>
<body>
${body}
<script type="application/json" id="wearline-case">${held}</script>
</body>
</html>
`;
}
