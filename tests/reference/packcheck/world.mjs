// What packs may name: shared facts, events, duties, papers, the wear catalogue and the holiday files.
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv2020 from 'ajv/dist/2020.js';

const HERE = path.dirname(fileURLToPath(import.meta.url));
export const RULES = path.join(HERE, '../../../engine/rules');
export const CASES = path.join(HERE, '../law');

export const readJson = (file) => JSON.parse(fs.readFileSync(file, 'utf8'));
export const jsonFiles = (dir) => (fs.existsSync(dir) ? fs.readdirSync(dir).filter((f) => f.endsWith('.json')).sort() : []);
const byId = (list) => new Map(list.map((x) => [x.id, x]));

// States at move-in that a line may have.
function statesAtMoveIn() {
  return new Set(jsonFiles(path.join(RULES, 'wear')).flatMap((f) => readJson(path.join(RULES, 'wear', f)).atMoveIn ?? []).map((s) => s.id));
}

// The wear catalogue: element -> findings; null until there is one.
function catalogue() {
  const found = new Map();
  for (const file of jsonFiles(path.join(RULES, 'wear'))) for (const e of readJson(path.join(RULES, 'wear', file)).elements ?? [])
    found.set(e.element ?? e.id, new Set((e.findings ?? []).map((f) => f.finding ?? f.id)));
  return found.size ? found : null;
}

export function sharedWorld() {
  const { facts, events } = readJson(path.join(RULES, 'facts.json'));
  const holidays = jsonFiles(path.join(RULES, 'holidays')).map((f) => f.replace(/\.json$/, ''));
  return {
    facts: byId(facts), events: byId(events), duties: byId(readJson(path.join(RULES, 'duties.json')).duties),
    papers: byId(readJson(path.join(RULES, 'papers.json')).papers), catalogue: catalogue(), atMoveIn: statesAtMoveIn(), holidays: holidays.length ? new Set(holidays) : null
  };
}

export function withOwn(world, pack, problem) {
  for (const f of pack.facts ?? []) if (world.facts.has(f.id)) problem(`fact ${f.id} is a shared one already`);
  for (const e of pack.events ?? []) if (world.events.has(e.id)) problem(`event ${e.id} is a shared one already`);
  return { ...world, facts: new Map([...world.facts, ...byId(pack.facts ?? [])]), events: new Map([...world.events, ...byId(pack.events ?? [])]) };
}

export function schemaProblems(validate, pack) {
  if (validate(pack)) return [];
  const deep = validate.errors.filter((e) => e.keyword !== 'oneOf' && e.keyword !== 'if');
  return (deep.length ? deep : validate.errors).map((e) => `${e.instancePath || '/'} ${e.message}${e.params.additionalProperty ?? e.params.unevaluatedProperty ? `: ${e.params.additionalProperty ?? e.params.unevaluatedProperty}` : ''}`);
}

export function schemaValidator() {
  return new Ajv2020({ allErrors: true, strict: true, strictTypes: false, strictRequired: false, allowUnionTypes: true }).compile(readJson(path.join(RULES, 'schema/law-pack.schema.json')));
}
