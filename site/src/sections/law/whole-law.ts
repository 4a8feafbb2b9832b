// The whole law of a place as it was read: every rule in plain words, when it applies, what follows, in what it is doubtful, and its source.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import en from '../../../../engine/rules/wording/en/judgement.json';
import { type LawFile, lawOf, type Rule } from '../../engine/rules';
import { longDay } from '../../say/show';
import { learn, say } from '../../say/wording';
import type { Source } from '../../case/assessment';
import { sourceList } from '../../parts/sources';

/** The engine's words for how a source was read. */
export const wordsThere = learn(en, { es: () => import('../../../../engine/rules/wording/es/judgement.json') });

/** In the order in which a person meets them. */
const chapters = [
  'duties',
  'counting',
  'papers',
  'allows',
  'bars',
  'wear',
  'worth',
  'records',
  'inspection',
  'address',
  'demand',
  'forfeits',
  'remedies',
  'interest',
  'caps',
  'notDeposit',
  'alsoDeposit',
  'holder',
  'smallClaims',
  'scope',
  'others',
  'notFound',
] as const;

function sourcesOf(law: LawFile, rule: Rule): TemplateResult | typeof nothing {
  const all = (rule.source ?? []).map((id): Source | string => {
    const s = law.sources[id];
    return s
      ? { text: s.cite, basis: s.read as Source['basis'], basisText: say(`read.${s.read}`), url: s.url ?? null }
      : id;
  });
  return all.length ? sourceList(all) : nothing;
}

const line = (text: string | undefined): TemplateResult | typeof nothing => (text ? html`<p>${text}</p>` : nothing);

function force(rule: Rule): string | undefined {
  if (rule.from && rule.to) return say('page.law.force', { from: longDay(rule.from), to: longDay(rule.to) });
  if (rule.from) return say('page.law.from', { day: longDay(rule.from) });
  return rule.to && say('page.law.to', { day: longDay(rule.to) });
}

function ruleOf(law: LawFile, rule: Rule): TemplateResult {
  const missed = rule.ifMissedText ?? rule.ifMissingText;
  return html`<li>
  <p>${rule.text}</p>
  ${line(rule.whenText && say('page.days.condition', { condition: rule.whenText }))} ${line(missed && say('page.law.ifMissed', { what: missed }))}
  ${line(force(rule))} ${rule.check ? html`<p class="check">${say('page.check')} ${rule.check}</p>` : nothing}
  ${sourcesOf(law, rule)}
</li>`;
}

export function wholeLaw(place: string | undefined): TemplateResult | typeof nothing {
  const law = lawOf(place);
  if (!law) return nothing;
  return html`${chapters
    .filter((name) => law[name]?.length)
    .map(
      (name) => html`<h3>${say(`page.law.part.${name}`)}</h3>
        <ul class="rules">${law[name]!.map((rule) => ruleOf(law, rule))}</ul>`,
    )}`;
}
