// A short line for each verdict and each state of a date, told apart by how it is drawn, never by colour alone. The word stands beside it.

import { svg, type TemplateResult, html } from 'lit/html.js';
import type { DutyState, Verdict } from '../case/assessment';

const frame = (inside: TemplateResult): TemplateResult =>
  html`<svg class="mark" viewBox="0 0 28 12" width="28" height="12" aria-hidden="true" focusable="false">${inside}</svg>`;

const line = (y: number, width: number, dash = ''): TemplateResult =>
  svg`<path d="M1 ${y}H27" stroke="currentColor" stroke-width=${width} stroke-dasharray=${dash} fill="none" />`;

const verdicts: Record<Verdict, TemplateResult> = {
  // worn thin
  'ordinary-wear': svg`<path d="M1 2.5L27 5.5V6.5L1 9.5Z" fill="currentColor" />`,
  // whole
  'chargeable-damage': svg`<path d="M1 2.5H27V9.5H1Z" fill="currentColor" />`,
  // someone else's: hollow
  'landlord-responsibility': svg`<path d="M1.75 3H26.25V9H1.75Z" fill="none" stroke="currentColor" stroke-width="1.5" />`,
  // one line before, one after
  'pre-existing': svg`${line(3.5, 1.5)}${line(8.5, 1.5)}`,
  // struck through
  barred: svg`<path d="M1 4.5H27V7.5H1Z" fill="currentColor" /><path d="M9 11.5L19 .5" stroke="currentColor" stroke-width="2" />`,
  'non-damage-charge': line(6, 1.5),
  undetermined: line(6, 3, '3 3.5'),
};

export const verdictMark = (v: Verdict): TemplateResult => frame(verdicts[v] ?? verdicts['undetermined']);

const states: Record<DutyState, TemplateResult> = {
  met: svg`<path d="M9 6.5L12.5 10L20 1.5" fill="none" stroke="currentColor" stroke-width="2.4" />`,
  missed: svg`<path d="M9.5 1.5L18.5 10.5M18.5 1.5L9.5 10.5" stroke="currentColor" stroke-width="2.6" />`,
  open: svg`<circle cx="14" cy="6" r="4.6" fill="none" stroke="currentColor" stroke-width="2" />`,
  undetermined: svg`<circle cx="14" cy="6" r="4.6" fill="none" stroke="currentColor" stroke-width="2" stroke-dasharray="2 2.8" />`,
  'not-needed': svg`<path d="M9 6H19" stroke="currentColor" stroke-width="2" />`,
};

export const stateMark = (s: DutyState): TemplateResult => frame(states[s] ?? states['undetermined']);
