// What the engine answers. The page shows it and adds nothing to it.

export interface Span {
  low: string;
  /** What adjudicators most often allow; null where nothing supports such a sum. */
  likely: string | null;
  high: string;
}

export interface Fault {
  code: string;
  at: string;
  text: string;
  near?: string;
}

export interface Source {
  /** The citation or title. */
  text: string;
  read: string;
  readText: string;
  url: string | null;
}

/** Something that names its sources: ids into the assessment's list, and the same as one readable text. */
export interface Sourced {
  source?: string;
  sourceIds?: string[];
}

/** Days between which something happened; an open end is null. */
export interface Days {
  earliest: string | null;
  latest: string | null;
}

export interface Step extends Sourced {
  code: string;
  text: string;
  from: string | null;
  to: string | null;
  low: string;
  high: string;
}

export interface Worth {
  lifeMonths: { low: number; likely: number; high: number };
  installed: Days | null;
  moveIn: Days | null;
  moveOut: Days | null;
  /** As percentages in words, "8.9%". */
  shareLeft: { low: string; likely: string; high: string };
  method?: string;
  methodText?: string;
}

export type Verdict =
  | 'ordinary-wear'
  | 'chargeable-damage'
  | 'landlord-side'
  | 'already-there'
  | 'barred'
  | 'not-about-condition'
  | 'cannot-tell';

/** A fact that the words of a charge state. */
export interface WordFact {
  /** The field of the charge it would fill, and with what. */
  field: string;
  value: unknown;
  /** The words themselves, what they are about, and both as a sentence. */
  words: string;
  fact: string;
  text: string;
}

export interface JudgedLine {
  id: string;
  claimed: string;
  verdict: Verdict;
  verdictText: string;
  why: string;
  certain: boolean;
  text: string;
  element: string | null;
  finding: string | null;
  thing: string;
  findingText: string | null;
  /** Set where thing and finding were read from the charge's words; confidence from 0 to 100. */
  recognised?: { confidence: number };
  /** Facts taken from the words where the field is empty, and those that a field overrules. */
  fromWords?: WordFact[];
  againstWords?: WordFact[];
  fair: Span;
  steps: Step[];
  /** Other disputes like it, as examples; null where too few are known. `disputes` are keys of rules/precedents/cases.json. */
  alike: {
    likeness: 'same-fault' | 'same-thing' | 'same-kind';
    nothing: number;
    part: number;
    all: number;
    text: string;
    disputes: string[];
  } | null;
  turningPoint: { noChargeIfInstalledBefore: string; text: string } | null;
  value: Worth | null;
  conflicts: (Sourced & { text: string })[];
  /** Papers worth asking for. */
  askFor: string[];
  /** Dangers of what it is about: codes of cautions. */
  hazards?: string[];
  /** The charge by each way of counting worth, where the case asks for them. */
  methods?: (Sourced & { id: string; label: string; text: string; inUse: boolean; fair: Span })[];
  /** What the law says of this charge; the rules themselves stand once, under law.rules. */
  bars?: { rule: string; effect: string; applies: true | null; most: string | null }[];
}

export type DutyState = 'met' | 'missed' | 'open' | 'cannot-tell' | 'not-needed';

export interface LegalDate extends Sourced {
  id: string;
  /** The kind of duty, from the registry: "itemise", "return-deposit" ... */
  duty: string;
  label: string;
  who: 'landlord' | 'tenant';
  last: Days | null;
  /** The first day on which it may be done, where the law sets one. */
  first: Days | null;
  /** The law sets a first day and no last one: a time that opens, not a deadline. */
  notBefore: boolean;
  state: DutyState;
  stateText: string;
  /** What the law says. */
  rule: string;
  /** How the day was counted. */
  text: string;
  ifMissed: string;
  /** The tenant loses a right when it is missed. */
  loud: boolean;
  condition: string | null;
  /** Where the case holds what the state hangs on and is not known; the law's names of them, in the same order. */
  needs: string[];
  needsIds: string[];
  /** The rules of which one applies, where it is open which. */
  alternatives: (Sourced & { id: string; condition: string | null; last: Days | null; rule: string; text: string })[];
  check: string | null;
}

export interface Question {
  asks: string;
  code: string;
  /** The fact or event a law question is about. */
  id: string | null;
  text: string;
  swing: string;
  /** Whether a day was kept hangs on the answer, and something follows if it was not. */
  turnsDay: boolean;
  line: string | null;
}

export interface Totals {
  claimed: string;
  fair: Span;
  /** Which charges the likely sum counts, where not all have one. */
  counted: { lines: number; of: number; restLow: string; restHigh: string; text: string } | null;
  /** Null where no deposit is known, and with it the refund. */
  deposit: string | null;
  interest: Span;
  fairRefund: Span | null;
  paidBack: string;
  /** True where what was paid back is taken from the statement's words. */
  paidBackAssumed: boolean;
  shortfall: Span | null;
  owedByTenant: Span | null;
  ordinaryWear: string;
}

export interface Defect extends Sourced {
  code: string;
  text: string;
  /** False where a paper may be there after all. */
  certain: boolean;
  line: string | null;
  ifMissing: string;
  check: string | null;
}

export interface Remedy extends Sourced {
  rule: string;
  kind: 'forfeit' | 'award';
  certain: boolean;
  text: string;
  least?: string;
  most?: string;
  check: string | null;
}

export interface Remedies extends Sourced {
  /** False where a fact is missing without which no sum can be named. */
  known: boolean;
  least: string;
  most: string;
  mayBeMore: boolean;
  text: string;
  sumDue: Span;
  /** What is due if the landlord has lost the right to keep anything. */
  sumDueForfeited: Span;
  forfeits: 'yes' | 'perhaps' | 'no';
  items: Remedy[];
}

export interface LawRule extends Sourced {
  text: string;
  check: string | null;
}

export interface Law {
  jurisdiction: string;
  name: string;
  reviewed: string | null;
  weak: boolean;
  guide: { title: string; publisher: string; url: string | null } | null;
  /** Where help is found; addresses are text a person can type. */
  help: {
    kind: 'guide' | 'court' | 'legal-aid';
    label: string;
    title: string;
    publisher: string;
    url: string | null;
    read: string;
  }[];
  /** Money of the case that this law does not call a deposit; it is not in the sums. */
  notDeposit: LawRule[];
  checks: { text: string }[];
  /** The rules that charges name, by id. */
  rules: Record<string, LawRule>;
}

export interface Assessment {
  engine: string;
  today: string;
  jurisdiction: string | null;
  lines: JudgedLine[];
  totals: Totals;
  dates: LegalDate[];
  defects: Defect[];
  remedies: Remedies | null;
  /** What the case is silent on and the law's answer took as usual. */
  assumptions: { asks: string; id: string; text: string }[];
  questions: Question[];
  cautions: { code: string; text: string }[];
  audit: { code: string; text: string; lines: string[] }[];
  law: Law | null;
  sources: Record<string, Source>;
  errors: Fault[];
}
