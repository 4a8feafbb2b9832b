// A list far longer than that of any tenancy is drawn a stretch at a time, so that the page goes on answering.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { say } from '../say/wording';

/** Rows drawn at a time. */
export const atATime = 200;

/** Where the stretch shown begins, by what the list belongs to and its name. */
const starts = new WeakMap<object, Map<string, number>>();

/** The rows shown of `count`: from the first, up to but without the second. */
export function stretch(of: object, name: string, count: number): [number, number] {
  const wanted = starts.get(of)?.get(name) ?? 0;
  const from = wanted < count ? wanted : 0;
  return [from, Math.min(count, from + atATime)];
}

/** Moves the stretch to where row `index` is. */
export function showRow(of: object, name: string, index: number): void {
  const own = starts.get(of) ?? new Map<string, number>();
  own.set(name, Math.floor(index / atATime) * atATime);
  starts.set(of, own);
}

/** Which rows are shown, and the way to the others; nothing where all are. */
export function stretches(of: object, name: string, count: number, draw: () => void): TemplateResult | typeof nothing {
  if (count <= atATime) return nothing;
  const [from, to] = stretch(of, name, count);
  const go = (index: number) => {
    showRow(of, name, index);
    draw();
  };
  return html`<p class="stretches">
    ${say('page.stretch', { from: from + 1, to, count })}
    <button type="button" class="link" ?disabled=${from === 0} @click=${() => go(from - 1)}>${say('page.stretch.before')}</button>
    <button type="button" class="link" ?disabled=${to === count} @click=${() => go(to)}>${say('page.stretch.after')}</button>
  </p>`;
}
