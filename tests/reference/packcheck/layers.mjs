// Federal and local rules as they lie over a pack: the same that the engine makes of them (engine/src/law/pack_loader.cpp, lay_over).
import fs from 'node:fs';
import path from 'node:path';
import { jsonFiles, readJson, RULES } from './world.mjs';
import { PARTS } from './references.mjs';

export const LAYERS = path.join(RULES, 'law-layers');
export const allLayers = () => (fs.existsSync(LAYERS) ? jsonFiles(LAYERS).map((f) => ({ file: f.replace(/\.json$/, ''), layer: readJson(path.join(LAYERS, f)) })) : []);
export const fits = (layer, pack) => pack.jurisdiction === layer.jurisdiction || pack.jurisdiction.startsWith(`${layer.jurisdiction}-`);

const MEMBERS = ['id', 'jurisdiction', 'reviewed', 'place', 'sources', 'facts', 'events', 'drops', ...PARTS];
const PLACE = ['name', 'localities', 'inside', 'ask'];
const both = (a, b) => (a && b ? { all: [a, b] } : a ?? b);
const windowOf = (rule) => (rule.from || rule.to ? { event: rule.by, ...(rule.from && { from: rule.from }), ...(rule.to && { to: rule.to }) } : null);

/** The layer in the shape of a pack, for the pack's schema. */
export function asPack(layer, pack) {
  const rules = Object.fromEntries(PARTS.map((part) => [part, (layer[part] ?? []).map(({ replaces, ...rule }) => rule)]));
  const plain = Object.fromEntries(Object.entries(pack).filter(([name]) => !PARTS.includes(name)));
  return { ...plain, sources: layer.sources, facts: layer.facts ?? [], events: layer.events ?? [], ...rules, counting: rules.counting.length ? rules.counting : pack.counting, duties: rules.duties.length ? rules.duties : pack.duties, checkThis: [] };
}

export function ownProblems({ file, layer }) {
  const problems = [];
  if (layer.id !== file) problems.push(`id ${layer.id} is not the file's name`);
  for (const name of Object.keys(layer)) if (!MEMBERS.includes(name)) problems.push(`/${name}: no such member`);
  if (!layer.place) return problems;
  for (const name of Object.keys(layer.place)) if (!PLACE.includes(name)) problems.push(`/place/${name}: no such member`);
  for (const name of ['name', 'inside']) if (!layer.place[name]?.en || !layer.place[name]?.es) problems.push(`/place/${name}: in English and Spanish`);
  if (!layer.place.localities?.length) problems.push('/place/localities: the name that a case gives the place');
  return problems;
}

/** A pack with one layer over it. Sources of the layer have the layer's name before theirs. */
export function laidOver(pack, layer, problem) {
  const inside = layer.place ? { fact: 'locality', in: layer.place.localities } : null;
  const key = (k) => (layer.sources[k] ? `${layer.id}.${k}` : k);
  const out = structuredClone(pack);
  for (const [k, v] of Object.entries(layer.sources)) out.sources[`${layer.id}.${k}`] = v;
  out.facts = [...(pack.facts ?? []), ...(layer.facts ?? [])];
  out.events = [...(pack.events ?? []), ...(layer.events ?? [])];
  const asides = (layer.drops ?? []).map((id) => [id, inside]);
  for (const part of PARTS)
    for (const { replaces, ...rule } of layer[part] ?? []) {
      const when = both(inside, rule.when);
      for (const id of replaces ?? []) asides.push([id, both(when, windowOf(rule))]);
      out[part] = [...(out[part] ?? []), { ...rule, ...(when && { when }), source: rule.source.map(key) }];
    }
  for (const [id, while_] of asides) {
    const found = PARTS.flatMap((part) => out[part] ?? []).filter((rule) => rule.id === id);
    if (!found.length) problem(`there is no rule ${id} to replace`);
    for (const rule of found) rule.when = both({ not: while_ }, rule.when);
  }
  return out;
}

export const LEAST_LAYER_CASES = 2;
const factsIn = (condition) => (!condition || typeof condition !== 'object' ? [] : [...(condition.fact ? [condition.fact] : []), ...Object.values(condition).flatMap(factsIn)]);

/** Whether a worked case stands in the layer: in the place by its name; for rules of every place, in circumstances that they ask about. */
export function standsIn(layer, { jurisdiction, locality, circumstances = {} }) {
  if (!fits(layer, { jurisdiction })) return false;
  if (layer.place) return layer.place.localities.includes(locality);
  const asked = PARTS.flatMap((part) => layer[part] ?? []).flatMap((rule) => factsIn(rule.when));
  return asked.some((fact) => circumstances[fact] === true);
}

/** Every layer has cases worked by hand. `cases` are the case files of all places, as objects. */
export function uncovered(layer, cases) {
  const own = cases.filter((c) => standsIn(layer, c.case ?? {})).length;
  return own < LEAST_LAYER_CASES ? [`${own} worked cases stand in it, at least ${LEAST_LAYER_CASES} are needed (tests/reference/law, by /case/locality)`] : [];
}

/** Sentences of the law below that still call the place unknown. */
export function calledUnknown(layer, pack) {
  const name = layer.place?.name?.en?.replace(/ \(.*/, '');
  const sentences = Object.values(pack).filter(Array.isArray).flat().flatMap((rule) => `${rule?.text ?? ''} ${rule?.check ?? ''}`.split(/(?<=\.) /));
  return sentences.filter((t) => name && t.includes(name) && /not (researched|looked)|does not know/.test(t)).map((t) => `${pack.jurisdiction} says: ${t}`);
}
