// The schemas of case files, made from the rules' own names, so that they cannot fall behind them: of the present version, and of version 1
// by the table of what was renamed.

import { readFileSync, readdirSync } from 'node:fs';

const rules = new URL('../../engine/rules/', import.meta.url);
const json = (path) => JSON.parse(readFileSync(new URL(path, rules), 'utf8'));

const orNull = ({ description, ...schema }) => ({ ...(description && { description }), anyOf: [schema, { type: 'null' }] });
/** A schema with words for people. */
const told = (description, schema) => ({ ...schema, description });
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
  const documentNames = papers.flatMap((p) => [p.id, ...(p.aliases ?? [])]);

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

  const document = oneOf(documentNames);
  const element = oneOf(wear.elements.map((e) => e.id));
  const line = object({
    id: told('Its own name among the charges; numbered by position if missing.', text),
    text: told("The charge's own words.", text),
    note: told("The person's own note; not judged.", text),
    location: told('The room or place: "living room".', text),
    quality: told('The grade of the thing, in words.', text),
    amount: told('What was charged, in the currency of the place.', ref('money')),
    kind: told('What kind of charge it is.', ref('lineKind')),
    element: told('What it is about, a name of the wear guide; read from the words if missing.', element),
    finding: told('What is wrong with it, a name of the wear guide under that element.', text),
    installed: told('When the thing was installed or last renewed.', ref('date')),
    conditionAtMoveIn: told('Its condition when the tenant moved in.', oneOf(wear.atMoveIn.map((x) => x.id))),
    cause: told('Who or what did it.', oneOf(wear.causes.map((x) => x.id))),
    severity: told('How bad it is.', oneOf(['light', 'moderate', 'heavy'])),
    count: told('How many of the fault: nail holes, stains.', whole(0, 1_000_000)),
    landlordFactors: told("What on the landlord's side brought it about.", list(oneOf(wear.landlordFactors.map((x) => x.id)))),
    costComponents: told('What the sum is made of; together no more than the charge.', list(
      object(
        { kind: ref('costKind'), amount: ref('money'), depreciates: told('Whether this part loses value with age; if missing, by its kind.', yesNo) },
        { required: ['kind', 'amount'] },
      ),
    )),
    chargedQuantity: told('How much was charged for.', ref('quantity')),
    damagedQuantity: told('How much of it was damaged, in the same unit.', ref('quantity')),
    remedy: told('What was or is to be done.', oneOf(['replace', 'repair', 'clean', 'dispose'])),
    betterment: told('Whether what was put in is better than what was there.', yesNo),
    repairCost: told('What a sound repair would cost.', ref('money')),
    replacementCost: told('What the thing costs new, like for like.', ref('money')),
    usefulLifeYears: told('Its useful life in years, where the person knows better than the tables.', ref('number')),
    usefulLifeSource: told('The table of useful lives to use.', oneOf(new Set(lives.rows.map((r) => r.source)))),
    depreciationMethod: told('The method of depreciation to use.', oneOf(lives.methods.map((m) => m.id))),
    laborDepreciates: told('Whether the labor of a new one loses value with age.', yesNo),
    credit: told("A sum in the tenant's favor.", yesNo),
    supportingDocuments: told('Documents that came for this charge.', list(document)),
    missingDocuments: told('Documents that did not come for this charge.', list(document)),
    onMoveOutRecord: told('Whether the record of the move-out has it.', yesNo),
    inLease: told('Whether the lease has the charge.', yesNo),
    workDone: told('Whether the work was done.', yesNo),
    hours: told('Hours that the landlord worked on it.', ref('quantity')),
    hourlyRate: told('What an hour of that was charged at.', ref('money')),
    periodStart: told('The first day charged (rent, utilities).', ref('date')),
    periodEnd: told('The last day charged.', ref('date')),
    reletOn: told('When the home was let again.', ref('date')),
    ageYears: told('Its age at the move-out, in place of `installed`.', ref('age')),
    ageYearsAtMoveIn: told('Its age at the move-in, in place of `installed`.', ref('age')),
    dismissedFacts: told('Facts in the words of the charge that the person has struck: names of its members.', list(oneOf(wordFacts))),
  });
  const condition = oneOf(['fine', 'worn', 'damaged', 'dirty', 'missing']);
  const walkItem = object(
    {
      id: told('Its own name among the items.', text),
      room: told('The id of its room.', text),
      element: told('What it is, a name of the wear guide.', element),
      finding: told('What is wrong with it, a name of the wear guide under that element.', text),
      conditionAtMoveIn: told('As it was seen when the tenant moved in.', condition),
      conditionAtMoveOut: told('As it was seen before moving out.', condition),
      cause: told('Who or what did it.', oneOf(wear.causes.map((x) => x.id))),
      note: told("The person's own note.", text),
      installed: told('When it was installed.', ref('date')),
      quote: told('What somebody asks for putting it right.', ref('money')),
      inspected: told('When it was looked at.', ref('date')),
      remedied: told('When it was repaired or cleaned.', ref('date')),
      onLandlordList: told("Whether it stands on the landlord's own inspection list.", yesNo),
      line: told('The id of the charge that is about it.', text),
    },
    { required: ['element'] },
  );
  // A finding belongs to its element.
  walkItem.allOf = [ref('findingOfElement')];
  line.allOf = [ref('findingOfElement')];
  const findingOfElement = {
    allOf: wear.elements.map((e) => ({
      if: { required: ['element'], properties: { element: { const: e.id } } },
      then: { properties: { finding: orNull(oneOf(e.findings.map((f) => f.id))) } },
    })),
  };

  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'case.schema.json',
    title: 'Case',
    description:
      'What a person knows about one statement of deductions, version 2 of the format. Every member but wearline and lines may be missing or null: unknown. ' +
      'Made from the rules by tests/reference/check-case-schema.mjs --write; do not edit by hand. ' +
      'The reader also refuses what a schema cannot say: days that do not exist, an end before a beginning, components above their sum, two lines with one id.',
    type: 'object',
    additionalProperties: false,
    required: ['wearline', 'lines'],
    properties: {
      wearline: told('The version of the format.', { const: 2 }),
      ...object({
        jurisdiction: told('The place whose law applies, ISO 3166-2.', oneOf([...Object.keys(places.withPack), ...Object.keys(places.withoutPack)])),
        locality: told('The city or county, where one has rules of its own.', text),
        title: told('A name for the case; not judged.', text),
        showMethods: told('Whether to show each charge by every method of depreciation.', yesNo),
        side: told('Who asks; tenant if missing.', oneOf(['tenant', 'adviser', 'landlord'])),
        language: told('Of the sentences in the answer; en if missing.', oneOf(['en', 'es'])),
        page: { type: 'object', description: 'What the page keeps with a case; not judged.' },
        tenancy: told('The tenancy.', object({
          began: told('Its first day.', ref('date')),
          ended: told('Its last day.', ref('date')),
          possessionReturned: told('When the keys went back.', ref('date')),
          rentPaidThrough: told('The day to which rent is paid.', ref('date')),
          forwardingAddressGiven: told('When the new address was given in writing.', ref('date')),
          kind: told('What kind of tenancy it was.', oneOf(['fixed-term', 'periodic', 'at-will', 'seasonal'])),
          monthlyRent: told("A month's rent at the end.", ref('money')),
          landlordUnits: told('How many homes the landlord lets.', whole(0, 1_000_000)),
          buildingUnits: told('How many homes the building has.', whole(0, 1_000_000)),
          ownerOccupied: told('Whether the landlord lives in the building.', yesNo),
          occupants: told('How many people lived in the home.', whole(1, 1000)),
        })),
        deposits: told('Each deposit.', list(
          object({
            kind: told('What it was for; security if missing.', oneOf(['security', 'pet', 'last-month', 'cleaning', 'key', 'utility', 'furniture', 'other'])),
            amount: told('How much.', ref('money')),
            paid: told('When it was paid.', ref('date')),
            interestPaid: told('Interest on it that was paid to the tenant.', ref('money')),
            bankInterestRate: { type: 'string', pattern: '^0\\.[0-9]{1,6}$', description: 'The yearly rate the bank paid on it, as a decimal: "0.0125" is 1.25 percent.' },
          }),
          { maxItems: 100 },
        )),
        statement: told('The statement of deductions.', object({
          dated: told('The date it bears.', ref('date')),
          sent: told('When it was sent.', ref('date')),
          received: told('When it arrived.', ref('date')),
          refundSent: told('When money was sent back.', ref('date')),
          deliveryMethod: told('How it was sent.', ref('deliveryMethod')),
          statedTotal: told('Its total of the charges.', ref('money')),
          statedRefund: told('What it says is refunded.', ref('money')),
          statedBalanceDue: told('What it says is still owed.', ref('money')),
          refundPaid: told('What was paid back.', ref('money')),
          enclosedDocuments: told('Documents that came with it.', list(document)),
          missingDocuments: told('Documents that did not come with it.', list(document)),
          statementReceived: told('False where it is known that none came at all.', yesNo),
        })),
        records: told('Records of the condition of the home.', object({
          moveInChecklist: told('The checklist of the move-in.', ref('checklist')),
          moveOutChecklist: told('The checklist of the move-out.', ref('checklist')),
          preMoveOutInspection: told('The inspection before the move-out.', object({
            offered: told('Whether the landlord offered it.', yesNo),
            requested: told('Whether the tenant asked for it.', yesNo),
            held: told('Whether it was held.', yesNo),
          })),
          photosAtMoveIn: told('Whether there are photos of the move-in.', yesNo),
          photosAtMoveOut: told('Whether there are photos of the move-out.', yesNo),
        })),
        events: told('What happened on which day.', list(
          object(
            {
              kind: told('What happened.', oneOf([...eventNames, ...ownEvents.keys()])),
              date: told('When.', ref('date')),
              deliveryMethod: told('How it was sent, of what is sent.', ref('deliveryMethod')),
            },
            { required: ['kind', 'date'] },
          ),
        )),
        circumstances: told('Facts that the law of the place asks about.', object(Object.fromEntries(known))),
        walkThrough: told('A walk through the home, room by room.', object({
          date: told('The day of the walk-through.', ref('date')),
          completed: told('Set once the tenant has left.', ref('date')),
          inspectionListGiven: told('Whether the landlord gave a written list after an inspection.', yesNo),
          inspectionListDated: told('The day of that list.', ref('date')),
          builtBefore1978: told('Whether the home was built before 1978.', yesNo),
          rooms: told('The rooms.', list(object({ id: text, kind: text, name: text }), { maxItems: 5000 })),
          items: told('What was looked at.', list(ref('walkItem'), { maxItems: 5000 })),
          moveOutTasks: told('What of the last day is done.', list(text, { maxItems: 100 })),
        })),
      }).properties,
      lines: told('The charges.', list(ref('line'), { maxItems: 5000 })),
    },
    allOf: [
      ...[...own].map(([name, where]) => elsewhere(where, { properties: { circumstances: { properties: { [name]: false } } } })),
      ...[...ownEvents].map(([name, where]) =>
        elsewhere(where, { properties: { events: { items: { properties: { kind: { not: { const: name } } } } } } }),
      ),
    ],
    $defs: {
      line,
      walkItem,
      findingOfElement,
      deliveryMethod: oneOf(['mail', 'first-class-mail', 'certified-mail', 'registered-mail', 'personal-delivery', 'email', 'text-message', 'left-at-door', 'mail-slot', 'fax', 'portal', 'other']),
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
        description: 'A number with at most three decimals, as text or as a JSON number.',
      },
      quantity: object({ count: told('How many of the unit.', ref('number')), unit: told('room, wall, sq-ft, sq-yd, hour, day, month, each ...', text) }, { required: ['count'] }),
      checklist: object({ made: told('Whether one was made.', yesNo), signedByBoth: told('Whether both sides signed it.', yesNo), tenantHasCopy: told('Whether the tenant has a copy.', yesNo) }),
      lineKind: oneOf(['damage', 'cleaning', 'rent', 'fee', 'utility', 'keys', 'disposal', 'other']),
      costKind: oneOf(['materials', 'labor', 'repair-labor', 'treatment', 'cleaning', 'disposal', 'delivery', 'tax', 'service-call', 'markup', 'other']),
    },
  };
}

/** What version 1 called things: rules/schema/version-1.json. */
const table = json('schema/version-1.json');

/** The schema of version 1: that of the present version in the names it had. */
export function caseSchemaOfVersion1() {
  const present = caseSchema();
  const $defs = {};
  const wordsOf = (place) => Object.assign({}, ...(place.words ?? []).map((l) => table.words[l]),
    Object.fromEntries(Object.entries(table.shapes[place['members-of']] ?? {}).filter(([, m]) => m.was).map(([now, m]) => [now, m.was])));
  const membersOf = (place) => ({ ...table.shapes[place.shape], ...place.members });
  const was = (members, name) => members[name]?.was ?? name;
  const renamed = (schema, place) => {
    if (typeof schema !== 'object' || schema === null) return schema;
    if (Array.isArray(schema)) return schema.map((item) => renamed(item, place));
    const members = membersOf(place);
    const words = wordsOf(place);
    return Object.fromEntries(
      Object.entries(schema).map(([key, value]) => {
        if (key === 'properties') return [key, Object.fromEntries(Object.entries(value).map(([name, inner]) => [was(members, name), renamed(inner, members[name] ?? {})]))];
        if (key === 'required') return [key, value.map((name) => was(members, name))];
        if (key === 'enum') return [key, value.map((word) => words[word] ?? word)];
        if (key === 'const') return [key, words[value] ?? value];
        if (key === '$ref') {
          const name = value.split('/').at(-1);
          $defs[name] ??= renamed(present.$defs[name], place);
          return [key, value];
        }
        return [key, key === 'description' ? value : renamed(value, place)];
      }),
    );
  };
  const { $defs: _, properties, ...rest } = present;
  const whole = renamed({ ...rest, properties: { ...properties, wearline: { ...properties.wearline, const: 1 } } }, table.documents.case);
  return { ...whole, $id: 'case-1.schema.json', title: 'Case of version 1', description: whole.description.replace('version 2', 'version 1'), $defs };
}
