// Which facts can be entered, where the case holds each, and the words for it. A question of the engine finds its field here too.

import type { Desk } from '../app/desk';
import { askedBy } from '../engine/rules';
import { canSay, say, unitIds } from '../say/wording';
import type { Field, FieldKind } from './field';
import type { Question } from '../case/assessment';
import { elementOf, type Named, placeOfFact } from '../case/catalogue';

/** Names of choices whose words are in the page's catalogue. */
const named = (list: string, ids: readonly string[]): Named[] =>
  ids.map((id) => ({ id, label: say(`page.${list}.${id}`) }));

const kindsOfTenancy = ['fixed-term', 'periodic', 'at-will', 'seasonal'] as const;
const waysOfSending = [
  'first-class-mail',
  'certified-mail',
  'registered-mail',
  'mail',
  'personal-delivery',
  'email',
  'text-message',
  'portal',
  'left-at-door',
  'mail-slot',
  'fax',
  'other',
] as const;
export const kindsOfDeposit = [
  'security',
  'pet',
  'last-month',
  'cleaning',
  'key',
  'utility',
  'furniture',
  'other',
] as const;
const kindsOfLine = ['damage', 'cleaning', 'rent', 'fee', 'utility', 'keys', 'disposal', 'other'] as const;
export const naturesOfPart = [
  'materials',
  'labor',
  'repair-labor',
  'treatment',
  'cleaning',
  'disposal',
  'delivery',
  'tax',
  'service-call',
  'markup',
  'other',
] as const;

export const unitChoices = (): Named[] => unitIds.map((id) => ({ id, label: say(`unit.${id}.many`) }));
export const natureChoices = (): Named[] => named('nature', naturesOfPart);
export const depositKindChoices = (): Named[] => named('depositKind', kindsOfDeposit);

interface Shape {
  kind: FieldKind;
  choices?: (d: Desk, at: string) => Named[];
}

/** Every member the page has a field for, by its place; "*" stands for a line's or deposit's number. */
const shapes: Record<string, Shape> = {
  '/title': { kind: 'text' },
  '/tenancy/began': { kind: 'date' },
  '/tenancy/ended': { kind: 'date' },
  '/tenancy/possessionReturned': { kind: 'date' },
  '/tenancy/forwardingAddressGiven': { kind: 'date' },
  '/tenancy/rentPaidThrough': { kind: 'date' },
  '/tenancy/monthlyRent': { kind: 'money' },
  '/tenancy/kind': { kind: 'choice', choices: () => named('tenancyKind', kindsOfTenancy) },
  '/tenancy/landlordUnits': { kind: 'count' },
  '/tenancy/buildingUnits': { kind: 'count' },
  '/tenancy/occupants': { kind: 'count' },
  '/tenancy/ownerOccupied': { kind: 'yes-no' },
  '/deposits/*/kind': { kind: 'choice', choices: depositKindChoices },
  '/deposits/*/amount': { kind: 'money' },
  '/deposits/*/paid': { kind: 'date' },
  '/deposits/*/interestPaid': { kind: 'money' },
  '/deposits/*/bankInterestRate': { kind: 'text' },
  '/statement/statementReceived': { kind: 'yes-no' },
  '/statement/dated': { kind: 'date' },
  '/statement/sent': { kind: 'date' },
  '/statement/received': { kind: 'date' },
  '/statement/refundSent': { kind: 'date' },
  '/statement/deliveryMethod': { kind: 'choice', choices: () => named('how', waysOfSending) },
  '/statement/statedTotal': { kind: 'money' },
  '/statement/statedRefund': { kind: 'money' },
  '/statement/statedBalanceDue': { kind: 'money' },
  '/statement/refundPaid': { kind: 'money' },
  '/records/moveInChecklist/made': { kind: 'yes-no' },
  '/records/moveInChecklist/signedByBoth': { kind: 'yes-no' },
  '/records/moveInChecklist/tenantHasCopy': { kind: 'yes-no' },
  '/records/moveOutChecklist/made': { kind: 'yes-no' },
  '/records/preMoveOutInspection/offered': { kind: 'yes-no' },
  '/records/preMoveOutInspection/requested': { kind: 'yes-no' },
  '/records/preMoveOutInspection/held': { kind: 'yes-no' },
  '/records/photosAtMoveIn': { kind: 'yes-no' },
  '/records/photosAtMoveOut': { kind: 'yes-no' },
  '/lines/*/kind': { kind: 'choice', choices: () => named('kind', kindsOfLine) },
  '/lines/*/location': { kind: 'text' },
  '/lines/*/installed': { kind: 'date' },
  '/lines/*/ageYears': { kind: 'years' },
  '/lines/*/ageYearsAtMoveIn': { kind: 'years' },
  '/lines/*/conditionAtMoveIn': { kind: 'choice', choices: (d) => d.catalogue.conditionsAtMoveIn },
  '/lines/*/cause': { kind: 'choice', choices: (d) => d.catalogue.causes },
  '/lines/*/severity': { kind: 'choice', choices: () => named('severity', ['light', 'moderate', 'heavy']) },
  '/lines/*/count': { kind: 'count' },
  '/lines/*/remedy': { kind: 'choice', choices: () => named('remedy', ['replace', 'repair', 'clean', 'dispose']) },
  '/lines/*/betterment': { kind: 'yes-no' },
  '/lines/*/repairCost': { kind: 'money' },
  '/lines/*/replacementCost': { kind: 'money' },
  '/lines/*/usefulLifeYears': { kind: 'years' },
  '/lines/*/usefulLifeSource': { kind: 'choice', choices: (d) => d.catalogue.usefulLifeSources },
  '/lines/*/depreciationMethod': { kind: 'choice', choices: (d) => d.catalogue.depreciationMethods },
  '/lines/*/laborDepreciates': { kind: 'yes-no' },
  '/lines/*/hours': { kind: 'hours' },
  '/lines/*/hourlyRate': { kind: 'money' },
  '/lines/*/periodStart': { kind: 'date' },
  '/lines/*/periodEnd': { kind: 'date' },
  '/lines/*/reletOn': { kind: 'date' },
  '/lines/*/onMoveOutRecord': { kind: 'yes-no' },
  '/lines/*/inLease': { kind: 'yes-no' },
  '/lines/*/workDone': { kind: 'yes-no' },
  '/lines/*/note': { kind: 'text' },
};

const pattern = (at: string): string => at.replace(/\/\d+(?=\/|$)/g, '/*');
const wordsFor = (at: string): string => `page.field${pattern(at).replace(/\/\*/g, '').replace(/\//g, '.')}`;

/** The field for a place of the case, or undefined where the page has none. */
export function fieldAt(d: Desk, at: string): Field | undefined {
  const shape = shapes[pattern(at)];
  if (!shape) return undefined;
  const words = wordsFor(at);
  // A landlord has not sent it yet: some facts are asked in other words.
  const own = (key: string): string => (d.side === 'landlord' && canSay(`${key}.landlord`) ? `${key}.landlord` : key);
  return {
    at,
    kind: shape.kind,
    label: say(own(words)),
    help: canSay(`${words}.help`) ? say(own(`${words}.help`)) : undefined,
    choices: shape.choices?.(d, at),
  };
}

/** Several fields at once, in the order given. */
export const fieldsAt = (d: Desk, places: string[]): Field[] =>
  places.map((p) => fieldAt(d, p)).filter((f): f is Field => f !== undefined);

/** The field for a fact of the registry or of the law pack, under the question that settles it. */
export function fieldOfFact(d: Desk, id: string): Field | undefined {
  const fact = d.catalogue.facts.find((f) => f.id === id);
  if (!fact || fact.derived) return undefined;
  const choices = fact.choices?.map((c) => ({
    id: c,
    label: canSay(`page.tenancyKind.${c}`) ? say(`page.tenancyKind.${c}`) : c,
  }));
  const kind: FieldKind = fact.type === 'text' ? (choices ? 'choice' : 'text') : fact.type;
  return { at: placeOfFact(fact), kind, label: fact.question, choices };
}

export function fieldOfEvent(d: Desk, id: string): Field | undefined {
  const event = d.catalogue.events.find((e) => e.id === id);
  if (!event) return undefined;
  return event.at
    ? { at: event.at, kind: 'date', label: event.question }
    : { at: '', event: id, kind: 'date', label: event.question };
}

/** How an event was sent, once its day is known; an event with a place of its own in the case has none. */
export const fieldOfHow = (d: Desk, id: string): Field | undefined =>
  d.eventOn(id) === undefined
    ? undefined
    : {
        at: '',
        event: id,
        how: true,
        kind: 'choice',
        label: say('page.letter.sentHow'),
        choices: named('how', waysOfSending),
      };

/** The field in which a question of the engine can be answered where it is asked. */
export function fieldOfQuestion(d: Desk, q: Question): Field | undefined {
  const found =
    fieldAt(d, q.asks === '/deposits' ? '/deposits/0/amount' : q.asks) ??
    (q.id ? (fieldOfFact(d, q.id) ?? fieldOfEvent(d, q.id)) : undefined);
  return found && { ...found, label: q.text, help: undefined };
}

/** Its box keeps its own name. */
export const keepsName = (q: Question): boolean => q.code === 'finding' || q.code === 'date-order';
/**
 * What the box beside a question is called. A finding asks in its own words, often for more than one box holds, and of two days that
 * cannot both be right one is meant: those keep their names.
 */
export const answerName = (d: Desk, q: Question): string =>
  (keepsName(q) && fieldAt(d, q.asks)?.label) || say('page.next.answer');

/** The circumstances and events the law of the place asks about and the page has no other field for. */
export function fieldsOfLaw(d: Desk): Field[] {
  const asked = askedBy(d.case.jurisdiction);
  if (!asked) return [];
  // Every letter hangs on whether the lease goes on with another tenant, whatever the law of the place asks.
  const facts = [...new Set([...asked.facts, 'roommate-stays'])]
    .map((id) => fieldOfFact(d, id))
    .filter((f) => f?.at.startsWith('/circumstances/'));
  const events = [...asked.events].map((id) => fieldOfEvent(d, id)).filter((f) => f?.event);
  return [...facts, ...events].filter((f): f is Field => f !== undefined);
}

/** Where a line's thing counts in natural pieces, the unit of the piece. */
export const seamUnit = (d: Desk, element: unknown): string =>
  elementOf(d.catalogue, typeof element === 'string' ? element : undefined)?.repairableArea?.unit ?? 'item';
