// Cross checks of the weights that a schema cannot say. Each check: name and a function (weights, catalogue, papers) -> problems.
import { sourcesKnownAndUsed } from './catalogue-rules.mjs';

const fraction = ([n, d]) => n / d;

function inOrder({ weights }) {
  return weights.flatMap((w) => (fraction(w.least) <= fraction(w.likely) && fraction(w.likely) <= fraction(w.most) && fraction(w.most) <= 1 ? [] : [`${w.id}: least, likely, most are not in order`]));
}

function allThere({ weights }) {
  const ids = weights.map((w) => w.id);
  return ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `${id} stands twice`);
}

const exists = (catalogue, place) => {
  const [element, finding] = place.split('/');
  const elements = catalogue.elements.filter((e) => element === '*' || e.id === element);
  return elements.some((e) => finding === '*' || e.findings.some((f) => f.id === finding));
};

function placesKnown(w, catalogue) {
  const places = [...w.byDays, ...w.byHours, ...w.nothingNamed, ...w.somethingNamed, ...w.smallMarks, ...w.gradual, ...w.inLease.flatMap((x) => x.findings)];
  return places.filter((p) => !exists(catalogue, p)).map((p) => `${p} is not in the catalogue`);
}

// A small mark leaves the thing in use, so it is a finding that ages and is about condition; a lease provides for debts.
function placesFit(w, catalogue) {
  const finding = (place) => catalogue.elements.find((e) => e.id === place.split('/')[0])?.findings.find((f) => f.id === place.split('/')[1]);
  const debts = new Set(catalogue.elements.filter((e) => !e.aboutCondition).map((e) => e.id));
  return [...w.smallMarks.filter((p) => finding(p) && !finding(p).ages).map((p) => `${p}: nothing is renewed, so there is nothing to spare`),
    ...w.inLease.flatMap((x) => x.findings).filter((p) => !debts.has(p.split('/')[0])).map((p) => `${p} is no debt`)];
}

function papersKnown(w, catalogue, papers) {
  const known = new Set(papers.papers.map((p) => p.id));
  return w.weights.flatMap((x) => (x.papers ?? []).filter((p) => !known.has(p)).map((p) => `${x.id}: ${p} is no paper`));
}

// What to ask for: known findings, known papers, no paper without use, and something to ask for everywhere.
function askPlacesKnown(a, catalogue) {
  return a.findings.flatMap((x) => x.at).filter((p) => !exists(catalogue, p)).map((p) => `${p} is not in the catalogue`);
}

function askPapersKnown(a) {
  const ids = a.papers.map((p) => p.id);
  const asked = new Set([...a.usual, ...a.findings].flatMap((x) => x.ask));
  return [...[...asked].filter((id) => !ids.includes(id)).map((id) => `${id} is not a paper`), ...ids.filter((id) => !asked.has(id)).map((id) => `${id} is asked for nowhere`),
    ...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `${id} stands twice`)];
}

function askEverywhere(a, catalogue) {
  const usual = new Set(a.usual.map((x) => x.remedy));
  return catalogue.elements.flatMap((e) => e.findings.filter((f) => !usual.has(f.remedy)).map((f) => `${e.id}/${f.id}: nothing to ask for`));
}

export const askRules = [
  ['ask for: findings are known', askPlacesKnown],
  ['ask for: papers are known and used', askPapersKnown],
  ['ask for: something for every finding', askEverywhere]
];

export const weightsRules = [
  ['weights: sources are known and used', sourcesKnownAndUsed],
  ['weights: in order', inOrder],
  ['weights: each stands once', allThere],
  ['weights: findings are known', placesKnown],
  ['weights: findings fit', placesFit],
  ['weights: papers are known', papersKnown]
];
