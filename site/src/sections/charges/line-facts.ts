// The facts of one charge: which thing, what was wrong, how old, how much of it, how the price is made up, what proof came.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import type { JudgedLine } from '../../case/assessment';
import type { Line, CostComponent, Quantity } from '../../case/case';
import { aboutCondition, elementOf } from '../../case/catalogue';
import { fieldsAt, natureChoices, seamUnit, unitChoices } from '../../parts/fields';
import { withValueAt } from '../../case/pointer';
import { amountForField, amountFromTyping } from '../../case/typed-money';
import { field, triValue, triWord, yesNoField } from '../../parts/field';
import { thingPicker } from '../../parts/thing-picker';
import { faultsName } from './open-charge';

type Group = readonly [heading: string, members: readonly string[]];

const physical: Group[] = [
  ['age', ['installed', 'conditionAtMoveIn']],
  ['cause', ['cause', 'severity', 'count']],
];
const money: Group = ['price', ['remedy', 'betterment', 'repairCost', 'replacementCost']];
const period: Group = ['period', ['periodStart', 'periodEnd', 'reletOn']];
const lesser = [
  'kind',
  'location',
  'usefulLifeYears',
  'usefulLifeSource',
  'depreciationMethod',
  'laborDepreciates',
  'hours',
  'hourlyRate',
  'note',
];
/** An age said in words may stand in the case in place of a date; there it can be changed. */
const ages = (line: Line): string[] => ['ageYears', 'ageYearsAtMoveIn'].filter((m) => line[m] != null);
const proofs = ['receipts', 'estimate', 'photos', 'labor-hours-and-rate'];

export const replaceLine = (d: Desk, index: number, changes: Partial<Line>): void => {
  const line = { ...d.case.lines[index]!, ...changes };
  const kept = Object.fromEntries(Object.entries(line).filter(([, v]) => v !== undefined && v !== ''));
  d.put(withValueAt(d.case, `/lines/${index}`, kept));
};

function thing(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult {
  const id = `thing-${line.id}`;
  const known = line.element ?? judged?.element ?? '';
  return html`<div class="field field-wide">
      <label id="${id}-label" for=${id}>${say('page.thing.label')}</label>
      <p class="help" id="${id}-help">${say('page.thing.help')}</p>
      ${thingPicker(d, id, known, `${id}-label`, `${id}-help`, (chosen, finding) =>
        replaceLine(d, index, {
          element: chosen,
          finding: finding || (chosen === line.element ? line.finding : ''),
          kind: chosen ? (elementOf(d.catalogue, chosen)?.kind ?? line.kind) : line.kind,
        }),
      )}
    </div>
    ${line.element && !d.open.has(faultsName(line)) ? findings(d, line, index, line.element, '') : nothing}`;
}

/** The faults a thing can have, to choose from; `read` is the one its words were read as. */
export function findings(
  d: Desk,
  line: Line,
  index: number,
  thingId: string,
  read: string,
): TemplateResult | typeof nothing {
  const element = elementOf(d.catalogue, thingId);
  if (!element?.findings.length) return nothing;
  const choose = (finding: string) => replaceLine(d, index, { element: element.id, finding });
  const option = (id: string, label: string, description: string) =>
    html`<label class="finding">
      <input type="radio" name="finding-${line.id}" value=${id} .checked=${live((line.finding ?? read) === id)} @change=${() => choose(id)} />
      <span><span class="finding-name">${label}</span> ${description ? html`<span class="finding-says">${description}</span>` : nothing}</span>
    </label>`;
  return html`<fieldset class="field field-wide findings">
    <legend>${say('page.finding.label')}</legend>
    ${element.findings.map((f) => option(f.id, f.label, f.description))} ${option('', say('page.finding.unknown'), '')}
  </fieldset>`;
}

/** A count with its unit, such as "1 room". */
function quantity(d: Desk, line: Line, index: number, member: 'chargedQuantity' | 'damagedQuantity'): TemplateResult {
  const id = `${member}-${line.id}`;
  const at = `/lines/${index}/${member}`;
  const q = line[member] as Quantity | undefined;
  const other = line[member === 'chargedQuantity' ? 'damagedQuantity' : 'chargedQuantity'] as Quantity | undefined;
  const unit = q?.unit ?? other?.unit ?? seamUnit(d, line.element);
  const faults = d.sheet.faults.filter((f) => f.at === at || f.at.startsWith(`${at}/`));
  const put = (typed: string) => {
    const text = typed.trim();
    d.set(
      at,
      text === '' ? undefined : { count: /^\d{1,7}(\.\d{1,3})?$/.test(text) ? Number(text) : text, unit },
      true,
    );
  };
  return html`<div class="field">
    <label for=${id}>${say(`page.quantity.${member}`)}</label>
    <p class="help" id="${id}-help">${say(`page.quantity.${member}.help`)}</p>
    <span class="quantity">
      <input
        id=${id}
        class="entry"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-describedby="${id}-help${faults.length ? ` ${id}-fault` : ''}"
        aria-invalid=${faults.length ? 'true' : nothing}
        .value=${live(d.typing.get(at) ?? String(q?.count ?? ''))}
        @input=${(e: Event) => {
          d.typing.set(at, (e.target as HTMLInputElement).value);
          put((e.target as HTMLInputElement).value);
        }}
        @change=${() => {
          d.typing.delete(at);
          d.draw();
        }}
      />
      <select
        class="entry"
        aria-label=${say(`page.quantity.${member}.unit`)}
        @change=${(e: Event) => {
          const chosen = (e.target as HTMLSelectElement).value;
          const both = (['chargedQuantity', 'damagedQuantity'] as const).filter((m) => line[m] || m === member);
          replaceLine(
            d,
            index,
            Object.fromEntries(
              both.map((m) => [m, { count: (line[m] as Quantity | undefined)?.count ?? 1, unit: chosen }]),
            ),
          );
        }}
      >
        ${unitChoices().map((u) => html`<option value=${u.id} .selected=${live(u.id === unit)}>${u.label}</option>`)}
        ${unitChoices().some((u) => u.id === unit) ? nothing : html`<option value=${unit} selected>${unit}</option>`}
      </select>
    </span>
    ${
      faults.length
        ? html`<p class="fault" id="${id}-fault">${faults.map((f) => (f.code === 'bad-number' ? say('page.fault.count') : f.text)).join(' ')}</p>`
        : nothing
    }
  </div>`;
}

/** What the sum was spent on: a row a part and one more to begin the next. */
function parts(d: Desk, line: Line, index: number): TemplateResult {
  const known = line.costComponents ?? [];
  const unused = natureChoices().find((n) => !known.some((p) => p.kind === n.id))?.id ?? 'other';
  const faults = d.sheet.faults.filter((f) => f.at.startsWith(`/lines/${index}/costComponents`));
  const put = (next: CostComponent[], touched = '') =>
    d.put(withValueAt(d.case, `/lines/${index}/costComponents`, next.length ? next : undefined), touched);
  const row = (p: CostComponent, i: number) => {
    const at = `/lines/${index}/costComponents/${i}/amount`;
    return html`<div class="part">
      <select
        class="entry"
        aria-label=${say('page.part.nature', { n: i + 1 })}
        @change=${(e: Event) => {
          if (known[i]) put(known.map((x, j) => (j === i ? { ...x, kind: (e.target as HTMLSelectElement).value } : x)));
        }}
      >
        ${natureChoices().map((n) => html`<option value=${n.id} .selected=${known[i] ? live(n.id === p.kind) : n.id === p.kind}>${n.label}</option>`)}
      </select>
      <input
        class="entry entry-money"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label=${say('page.part.amount', { n: i + 1 })}
        .value=${live(d.typing.get(at) ?? amountForField(p.amount))}
        @input=${(e: Event) => {
          const box = e.target as HTMLInputElement;
          const kind = (box.previousElementSibling as HTMLSelectElement).value;
          d.typing.set(at, box.value);
          const amount = amountFromTyping(box.value);
          if (amount !== undefined) put([...known.slice(0, i), { kind, amount }, ...known.slice(i + 1)], at);
        }}
        @change=${(e: Event) => {
          d.typing.delete(at);
          if ((e.target as HTMLInputElement).value.trim() === '') put(known.filter((_, j) => j !== i));
          else d.draw();
        }}
      />
    </div>`;
  };
  return html`<fieldset class="field field-wide parts">
    <legend>${say('page.part.title')}</legend>
    <p class="help">${say('page.part.help')}</p>
    ${[...known, { kind: unused, amount: '' }].map(row)}
    ${faults.length ? html`<p class="fault">${[...new Set(faults.map((f) => (f.code === 'bad-amount' ? say('page.fault.money') : f.text)))].join(' ')}</p>` : nothing}
  </fieldset>`;
}

function proof(d: Desk, line: Line, index: number): TemplateResult {
  const came = (line['supportingDocuments'] as string[] | undefined) ?? [];
  const lacks = (line['missingDocuments'] as string[] | undefined) ?? [];
  const ids = [...new Set([...proofs, ...came, ...lacks])];
  const choose = (id: string, value: boolean | undefined) => {
    const next = { supportingDocuments: came.filter((p) => p !== id), missingDocuments: lacks.filter((p) => p !== id) };
    if (value !== undefined) next[value ? 'supportingDocuments' : 'missingDocuments'].push(id);
    replaceLine(d, index, {
      supportingDocuments: next.supportingDocuments.length ? next.supportingDocuments : undefined,
      missingDocuments: next.missingDocuments.length ? next.missingDocuments : undefined,
    });
  };
  const label = (id: string) => d.catalogue.documents.find((p) => p.id === id)?.label ?? id;
  return html`${repeat(
    ids,
    (id) => id,
    (id) =>
      yesNoField(
        `proof-${line.id}-${id}`,
        label(id),
        came.includes(id) ? true : lacks.includes(id) ? false : null,
        (v) => choose(id, triValue(triWord(v))),
      ),
  )}`;
}

function factors(d: Desk, line: Line, index: number): TemplateResult {
  const chosen = (line['landlordFactors'] as string[] | undefined) ?? [];
  const toggle = (id: string) => {
    const next = chosen.includes(id) ? chosen.filter((f) => f !== id) : [...chosen, id];
    replaceLine(d, index, { landlordFactors: next.length ? next : undefined });
  };
  return html`<fieldset class="field field-wide">
    <legend>${say('page.factor.title')}</legend>
    <p class="help">${say('page.factor.help')}</p>
    <span class="checks"
      >${d.catalogue.landlordFactors.map(
        (f) => html`<label class="check"
          ><input type="checkbox" .checked=${live(chosen.includes(f.id))} @change=${() => toggle(f.id)} /><span>${f.label}</span></label
        >`,
      )}</span
    >
  </fieldset>`;
}

const group = (heading: string, body: unknown): TemplateResult =>
  html`<div class="fact-group"><h4>${say(`page.facts.${heading}`)}</h4><div class="fields">${body}</div></div>`;

const fold = (d: Desk, name: string, body: () => unknown): TemplateResult => html`<details
  class="fold"
  ?open=${d.folds.has(name)}
  @toggle=${(e: Event) => {
    if ((e.target as HTMLDetailsElement).open !== d.folds.has(name)) d.toggleFold(name);
  }}
>
  <summary>${say(`page.facts.${name.split(':')[0]}`)}</summary>
  <div class="fields">${d.folds.has(name) ? body() : nothing}</div>
</details>`;

export function lineFacts(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult {
  const kind = elementOf(d.catalogue, line.element ?? judged?.element ?? undefined)?.kind ?? line.kind;
  const fields = (members: readonly string[]) =>
    fieldsAt(
      d,
      members.map((m) => `/lines/${index}/${m}`),
    ).map((f) => field(d, f));
  return html`<div class="facts">
    <div class="fields">${thing(d, line, index, judged)}</div>
    ${
      aboutCondition(kind)
        ? html`${physical.map(([heading, members]) => group(heading, fields([...members, ...(heading === 'age' ? ages(line) : [])])))}
          <div class="fact-group">
            <h4>${say('page.facts.amount')}</h4>
            <div class="fields">${quantity(d, line, index, 'chargedQuantity')}${quantity(d, line, index, 'damagedQuantity')}${fields(money[1])}</div>
          </div>
          ${fold(d, `parts:${line.id}`, () => parts(d, line, index))}
          ${fold(d, `factors:${line.id}`, () => factors(d, line, index))}`
        : group(period[0], fields(period[1]))
    }
    ${fold(d, `proof:${line.id}`, () => html`${proof(d, line, index)}${fields(['workDone', 'inLease', 'onMoveOutRecord'])}`)}
    ${fold(d, `lesser:${line.id}`, () => fields(lesser))}
  </div>`;
}
