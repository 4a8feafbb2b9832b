// What the law says of charges: each rule with whether it is known to apply, and where it stands.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../app/desk';
import type { JudgedLine } from '../case/assessment';
import { say } from '../say/wording';
import { sources } from './sources';

/** The rules as paragraphs; one that the answer does not hold is left out. */
export function appliedRules(
  d: Desk,
  applied: readonly Pick<JudgedLine['bars'][number], 'rule' | 'applies'>[],
): TemplateResult[] {
  return applied.flatMap(({ rule: id, applies }) => {
    const rule = d.result?.law?.rules[id];
    if (!rule) return [];
    return [
      html`<div class="rule"><p>${applies === null ? html`<em>${say('page.steps.mayApply')}</em> ` : nothing}${rule.text}</p>${sources(d, rule)}</div>`,
    ];
  });
}
