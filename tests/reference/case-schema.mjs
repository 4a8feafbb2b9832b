// The schema of case files, made from the rules' own names, so that it cannot fall behind them.

import { readFileSync, readdirSync } from 'node:fs';

const rules = new URL('../../engine/rules/', import.meta.url);
const json = (path) => JSON.parse(readFileSync(new URL(path, rules), 'utf8'));

const orNull = (schema) => ({ anyOf: [schema, { type: 'null' }] });
const object = (properties, more = {}) => ({
  type: 'object',
  additionalProperties: false,
  properties: Object.fromEntries(
    Object.entries(properties).map(([name, schema]) => [name, (more.required ?? []).includes(name) ? schema : orNull(schema)]),
  ),
  ...more,
});
const list = (items, more = {}) => ({ type: 'array', items, ...more });
const oneOf = (names) => ({ enum: [...names] });
const ref = (name) => ({ $ref: `#/$defs/${name}` });
const yesNo = { type: 'boolean' };
const text = { type: 'string' };
const whole = (least, most) => ({ type: 'integer', minimum: least, maximum: most });

const day = '(19|20|21)[0-9]{2}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?';

const years = '(1?[0-9]{1,2}|200)(\\.[0-9]{1,3})?';

const ofType = { 'yes-no': yesNo, count: whole(0, 1_000_000), money: ref('money'), text };

/** Facts a case holds under /circumstances, with their types. */
function circumstances(facts = [], events = []) {
  const held = facts.filter((f) => !f.at || f.at.startsWith('/circumstances/')).map((f) => [f.id, ofType[f.type]]);
  const happened = events.map((e) => [e.id, yesNo]);
  return new Map([...happened, ...held]);
}

/** Fields of a line that its words can fill, as rules/recogniser/facts.json sets them and its sums give them. */
const wordFacts = [...new Set([...json('recogniser/facts.json').rules.flatMap((rule) => Object.keys(rule.set ?? {})), 'parts'])].sort();

export function caseSchema() {
  const { facts, events } = json('facts.json');
  const { papers } = json('papers.json');
  const places = json('jurisdictions.json');
  const wear = json('wear/catalogue.json');
  const lives = json('lives/lives.json');
  const filesOf = (folder) => readdirSync(new URL(`${folder}/`, rules)).filter((f) => f.endsWith('.json')).map((f) => json(`${folder}/${f}`));
  const states = filesOf('law');
  // What a layer declares belongs to every place it lies over.
  const over = (layer) => states.filter((p) => p.jurisdiction === layer.jurisdiction || p.jurisdiction.startsWith(`${layer.jurisdiction}-`));
  const packs = [...states, ...filesOf('law-layers').flatMap((layer) => over(layer).map((p) => ({ ...layer, jurisdiction: p.jurisdiction })))];
  const paperNames = papers.flatMap((p) => [p.id, ...(p.aliases ?? [])]);

  const known = circumstances(facts, events);
  const eventNames = new Set(events.map((e) => e.id));
  /** name -> places whose law knows it, for what is not shared. */
  const own = new Map();
  const ownEvents = new Map();
  for (const pack of packs) {
    for (const [name, schema] of circumstances(pack.facts, pack.events)) {
      if (known.has(name) && !own.has(name)) continue;
      known.set(name, schema);
      own.set(name, [...(own.get(name) ?? []), pack.jurisdiction]);
    }
    for (const { id } of pack.events ?? []) {
      if (eventNames.has(id)) continue;
      ownEvents.set(id, [...(ownEvents.get(id) ?? []), pack.jurisdiction]);
    }
  }
  const elsewhere = (jurisdictions, then) => ({
    if: { not: { required: ['jurisdiction'], properties: { jurisdiction: oneOf(jurisdictions) } } },
    then,
  });

  const line = object({
    id: text, text, note: text, place: text, quality: text,
    amount: ref('money'), kind: ref('lineKind'), element: oneOf(wear.elements.map((e) => e.id)), finding: text,
    installed: ref('date'), atMoveIn: oneOf(wear.atMoveIn.map((x) => x.id)), cause: oneOf(wear.causes.map((x) => x.id)),
    severity: oneOf(['light', 'moderate', 'heavy']), count: whole(0, 1_000_000),
    landlordFactors: list(oneOf(wear.landlordFactors.map((x) => x.id))),
    parts: list(object({ nature: ref('nature'), amount: ref('money'), ages: yesNo }, { required: ['nature', 'amount'] })),
    charged: ref('quantity'), damaged: ref('quantity'), remedy: oneOf(['replace', 'repair', 'clean']),
    repairPrice: ref('money'), priceNew: ref('money'), lifeYears: ref('number'),
    lifeSource: oneOf(new Set(lives.rows.map((r) => r.source))), method: oneOf(lives.methods.map((m) => m.id)),
    labourAges: yesNo, credit: yesNo, proof: list(oneOf(paperNames)), proofMissing: list(oneOf(paperNames)),
    onMoveOutRecord: yesNo, inLease: yesNo, workDone: yesNo, hours: ref('quantity'), hourlyRate: ref('money'),
    from: ref('date'), to: ref('date'), reletOn: ref('date'),
    ageYears: ref('age'), ageYearsAtMoveIn: ref('age'), notFromWords: list(oneOf(wordFacts)),
  });
  const seen = oneOf(['fine', 'worn', 'damaged', 'dirty', 'missing']);
  const seenThing = object(
    {
      id: text, room: text, element: oneOf(wear.elements.map((e) => e.id)), finding: text, moveIn: seen, moveOut: seen,
      cause: oneOf(wear.causes.map((x) => x.id)), note: text, installed: ref('date'), quote: ref('money'), seen: ref('date'),
      putRight: ref('date'), onTheirList: yesNo, line: text,
    },
    { required: ['element'] },
  );
  // A finding belongs to its element.
  seenThing.allOf = [ref('findingOfElement')];
  line.allOf = [ref('findingOfElement')];
  const findingOfElement = {
    allOf: wear.elements.map((e) => ({
      if: { required: ['element'], properties: { element: { const: e.id } } },
      then: { properties: { finding: orNull(oneOf(e.findings.map((f) => f.id))) } },
    })),
  };

  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'https://wearline.example/schema/case.schema.json',
    title: 'A Wearline case, version 1',
    description:
      'What a person knows about one statement of deductions. Made from the rules by tests/reference/check-case-schema.mjs --write; do not edit by hand. ' +
      'The reader also refuses what a schema cannot say: days that do not exist, an end before a beginning, parts above their sum, two lines with one id.',
    type: 'object',
    additionalProperties: false,
    required: ['wearline', 'lines'],
    properties: {
      wearline: { const: 1 },
      ...object({
        jurisdiction: oneOf([...Object.keys(places.withPack), ...Object.keys(places.withoutPack)]),
        locality: text, title: text, showMethods: yesNo, side: oneOf(['tenant', 'adviser', 'landlord']), language: oneOf(['en', 'es']),
        page: { type: 'object', description: 'What the page keeps with a case; not judged.' },
        tenancy: object({
          began: ref('date'), ended: ref('date'), possessionReturned: ref('date'), rentPaidThrough: ref('date'), forwardingAddressGiven: ref('date'),
          kind: oneOf(['fixed-term', 'periodic', 'at-will', 'seasonal']), monthlyRent: ref('money'),
          landlordUnits: whole(0, 1_000_000), buildingUnits: whole(0, 1_000_000), ownerOccupied: yesNo, occupants: whole(1, 1000),
        }),
        deposits: list(
          object({
            kind: oneOf(['security', 'pet', 'last-month', 'cleaning', 'key', 'utility', 'furniture', 'other']),
            amount: ref('money'), paid: ref('date'), interestPaid: ref('money'), bankRate: { type: 'string', pattern: '^0\\.[0-9]{1,6}$' },
          }),
          { maxItems: 100 },
        ),
        statement: object({
          dated: ref('date'), sent: ref('date'), received: ref('date'), refundSent: ref('date'),
          how: ref('way'),
          statedTotal: ref('money'), statedRefund: ref('money'), statedBalanceDue: ref('money'), refundPaid: ref('money'),
          enclosed: list(oneOf(paperNames)), missing: list(oneOf(paperNames)), came: yesNo,
        }),
        records: object({
          moveInChecklist: ref('checklist'), moveOutChecklist: ref('checklist'),
          preMoveOutInspection: object({ offered: yesNo, requested: yesNo, held: yesNo }), photosAtMoveIn: yesNo, photosAtMoveOut: yesNo,
        }),
        events: list(object({ what: oneOf([...eventNames, ...ownEvents.keys()]), on: ref('date'), how: ref('way') }, { required: ['what', 'on'] })),
        circumstances: object(Object.fromEntries(known)),
        walkThrough: object({
          on: ref('date'), finished: ref('date'), listGiven: yesNo, listDated: ref('date'), builtBefore1978: yesNo,
          rooms: list(object({ id: text, kind: text, name: text }), { maxItems: 5000 }),
          things: list(ref('seenThing'), { maxItems: 5000 }),
          leaving: list(text, { maxItems: 100 }),
        }),
      }).properties,
      lines: list(ref('line'), { maxItems: 5000 }),
    },
    allOf: [
      ...[...own].map(([name, where]) => elsewhere(where, { properties: { circumstances: { properties: { [name]: false } } } })),
      ...[...ownEvents].map(([name, where]) =>
        elsewhere(where, { properties: { events: { items: { properties: { what: { not: { const: name } } } } } } }),
      ),
    ],
    $defs: {
      line,
      seenThing,
      findingOfElement,
      way: oneOf(['mail', 'first-class-mail', 'certified-mail', 'registered-mail', 'personal-delivery', 'email', 'text', 'left-at-door', 'mail-slot', 'fax', 'portal', 'other']),
      money: { type: 'string', pattern: '^[0-9]{1,10}(\\.[0-9]{1,2})?$', description: "Decimal text in the case's currency, such as \"1240.00\"." },
      age: {
        anyOf: [
          { type: 'number', minimum: 0, exclusiveMaximum: 201, multipleOf: 0.001 },
          { type: 'string', pattern: `^(${years}~?|${years}/(${years}|\\.\\.)|\\.\\./${years})$` },
        ],
        description: 'Years: a number, or text for an age that is not certain: "5~" (about), "7/.." (at least), "../3" (at most), "5/6" (between).',
      },
      date: {
        type: 'string',
        pattern: `^(${day}|(19|20|21)[0-9]{2}(-(0[1-9]|1[0-2]))?~|(${day})/(${day})|\\.\\./(${day})|(${day})/\\.\\.)$`,
        description: 'A day, or an uncertain date in EDTF (ISO 8601-2:2019): "2019", "2019-06", "2019/2021", "../2020", "2019/..", "2019~".',
      },
      number: {
        anyOf: [
          { type: 'string', pattern: '^[0-9]{1,7}(\\.[0-9]{1,3})?$' },
          { type: 'number', minimum: 0, maximum: 9999999, multipleOf: 0.001 },
        ],
      },
      quantity: object({ count: ref('number'), unit: text }, { required: ['count'] }),
      checklist: object({ made: yesNo, signedByBoth: yesNo, tenantHasCopy: yesNo }),
      lineKind: oneOf(['damage', 'cleaning', 'rent', 'fee', 'utility', 'keys', 'disposal', 'other']),
      nature: oneOf(['materials', 'labour', 'repair-labour', 'treatment', 'cleaning', 'disposal', 'delivery', 'tax', 'call-out', 'mark-up', 'other']),
    },
  };
}
