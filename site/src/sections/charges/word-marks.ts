// What the words of a charge themselves say, as small marks beside it: each is kept, and is then a fact of the case, or struck.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { JudgedLine, FactFromText } from '../../case/assessment';
import type { Line } from '../../case/case';
import { withFactKept, withFactStruck, withWordsReadAgain } from '../../case/edits';
import { say } from '../../say/wording';

function mark(d: Desk, index: number, f: FactFromText, against: boolean): TemplateResult {
  const act = (name: 'keep' | 'strike', sign: string, change: () => void) =>
    html`<button type="button" class="word-act" title=${say(`page.words.${against ? 'against.' : ''}${name}`)} @click=${change}>
      <span aria-hidden="true">${sign}</span><span class="unseen">${say(`page.words.${against ? 'against.' : ''}${name}`)}: ${f.text} ${say('page.charges.of', { n: index + 1 })}</span>
    </button>`;
  const strike = () => {
    d.put(withFactStruck(d.case, index, f.field));
    d.tell(say('page.notice.struck', { words: f.quote }), true);
  };
  return html`<li class="word-mark" data-against=${against ? 'yes' : nothing} data-field=${f.field}>
    <span title=${f.text}>${f.label}: <q>${f.quote}</q></span>
    ${act('keep', '✓', () => d.put(withFactKept(d.case, index, f.field, f.value)))} ${act('strike', '×', strike)}
  </li>`;
}

export function wordMarks(
  d: Desk,
  line: Line,
  index: number,
  judged: JudgedLine | undefined,
): TemplateResult | typeof nothing {
  const used = judged?.factsFromText ?? [];
  const against = judged?.overruledFacts ?? [];
  const struck = (line['dismissedFacts'] as string[] | undefined)?.length ?? 0;
  if (used.length + against.length + struck === 0) return nothing;
  return html`<ul class="word-marks" aria-label=${say('page.words.label', { n: index + 1 })}>
    ${used.map((f) => mark(d, index, f, false))} ${against.map((f) => mark(d, index, f, true))}
    ${
      struck
        ? html`<li><button type="button" class="link" @click=${() => d.put(withWordsReadAgain(d.case, index))}>${say('page.words.again')}<span class="unseen"> ${say('page.charges.of', { n: index + 1 })}</span></button></li>`
        : nothing
    }
  </ul>`;
}
