// The wear line: how much of a charge stands. Full height up to the lowest fair sum, thinning to the highest, a hair's breadth for the rest.

import { html, svg, type TemplateResult } from 'lit/html.js';
import { cents } from '../case/cents';
import type { Range } from '../case/assessment';

/** `longest` is the largest charge of the statement, so that lengths compare. Decoration: the sums stand beside it in figures. */
export function wearLine(claimed: string, fair: Range, longest: number): TemplateResult {
  const x = (amount: string): number => (longest > 0 ? Math.min(100, (cents(amount) / longest) * 100) : 0);
  const [whole, low, likely, high] = [Math.max(x(claimed), 0.6), x(fair.low), x(fair.likely ?? fair.low), x(fair.high)];
  return html`<svg class="wear-line" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" focusable="false">
    <path class="wear-line-rest" d="M0 4.4H${whole}V5.6H0Z" />
    <path class="wear-line-fair" d="M0 0H${low}L${high} 4.2V5.8L${low} 10H0Z" />
    ${high > low && fair.likely !== null ? svg`<path class="wear-line-likely" d="M${Math.max(0, likely - 0.35)} 0h.7v10h-.7Z" />` : ''}
  </svg>`;
}
