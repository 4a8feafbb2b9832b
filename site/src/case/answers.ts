// What the engine answers, as the schemas of engine/rules/schema say it. Made by tests/reference/check-schemas.mjs --write; do not edit by hand.

/**
 * The version of the format: that of the case's file; without a case, the one asked for.
 */
export type Version = 2;
/**
 * A day, YYYY-MM-DD.
 */
export type Day = string;
/**
 * English or Spanish.
 */
export type Language = 'en' | 'es';
/**
 * The value of a fact read from words, as the case's line would hold it.
 */
export type FactValue = string | number | boolean | Quantity | string[] | CostComponents;
/**
 * What a part of a charged sum was spent on.
 */
export type CostKind =
  | 'materials'
  | 'labor'
  | 'repair-labor'
  | 'treatment'
  | 'cleaning'
  | 'disposal'
  | 'delivery'
  | 'tax'
  | 'service-call'
  | 'markup'
  | 'other';
/**
 * A sum as decimal text, two decimals, in the currency of the answer; negative where it is in the other side's favor.
 */
export type Money = string;
/**
 * What a charged sum is made of.
 */
export type CostComponents = {
  kind: CostKind;
  amount: Money;
}[];
/**
 * Where words stand: code points of the text, [from, to), end exclusive.
 *
 * @minItems 2
 * @maxItems 2
 */
export type Span = [number, number];
/**
 * ordinary-wear: wear that no tenant pays for. chargeable-damage: damage the tenant may owe for. landlord-responsibility: what the landlord has to bear. pre-existing: there at move-in. barred: the law does not let it be taken. non-damage-charge: rent, fees, utilities and other sums that are not about the home's condition. undetermined: the facts do not tell yet.
 */
export type Verdict =
  | 'ordinary-wear'
  | 'chargeable-damage'
  | 'landlord-responsibility'
  | 'pre-existing'
  | 'barred'
  | 'non-damage-charge'
  | 'undetermined';
/**
 * The first of them as readable text, with how many more there are; "" for none.
 */
export type SourceText = string;
/**
 * The works this rests on: names of members of `sources`.
 */
export type SourceIds = string[];
/**
 * How the work was read: the text of the law, an official guide, another work about it, from memory only, or common practice.
 */
export type Basis = 'statute-text' | 'official-guide' | 'secondary' | 'memory' | 'practice';
/**
 * A doubt about the rule itself: what to check before relying on it.
 */
export type Caveat = string | null;
/**
 * met: done in time. missed: not done in time. open: it can still be done. undetermined: the facts do not tell. not-needed: it was not called for.
 */
export type DutyState = 'met' | 'missed' | 'open' | 'undetermined' | 'not-needed';
/**
 * A JSON Pointer (RFC 6901) into the case file.
 */
export type Pointer = string;
/**
 * Empty where the input was read.
 */
export type Errors = Fault[];

export interface Answers {
  assessment?: Assessment;
  letter?: Letter;
  reading?: Reading;
  recognition?: Recognition;
  catalogue?: Catalogue;
}
/**
 * The answer to a case, version 2 of the format: each charge judged with its fair range, the legal days, what may be owed, and what is still to find out. A case that cannot be read has only its errors.
 */
export interface Assessment {
  wearline: Version;
  /**
   * Version of the engine, "0.1.0".
   */
  engine: string;
  /**
   * The day from which it is judged.
   */
  today?: Day;
  /**
   * The place whose law was used, ISO 3166-2; null without one.
   */
  jurisdiction?: string | null;
  /**
   * Of the sentences.
   */
  language?: Language;
  /**
   * Who asks.
   */
  side?: 'tenant' | 'adviser' | 'landlord';
  /**
   * ISO 4217, of every sum; "" where the place does not tell.
   */
  currency?: 'USD' | 'CAD' | '';
  /**
   * The charges, in the order of the case.
   */
  lines?: JudgedLine[];
  totals?: Totals;
  /**
   * The law that was used; null without one.
   */
  law?: Law | null;
  /**
   * Legal days, the most urgent first.
   */
  dates?: LegalDate[];
  /**
   * What the statement lacks that the law asks for.
   */
  defects?: Defect[];
  /**
   * What the law gives the tenant for what was missed; null without a law.
   */
  remedies?: Remedies | null;
  /**
   * What the case is silent on and was taken as usual.
   */
  assumptions?: Assumption[];
  /**
   * What does not come out in the statement's own sums, or is charged twice.
   */
  audit?: AuditNote[];
  /**
   * What would settle more, the largest effect first.
   */
  questions?: Question[];
  /**
   * What to know before relying on this.
   */
  cautions?: Caution[];
  /**
   * Every work that was named, by its id.
   */
  sources?: {
    [k: string]: Source;
  };
  errors: Errors;
}
/**
 * One charge, judged.
 */
export interface JudgedLine {
  /**
   * The charge's id in the case.
   */
  id: string;
  /**
   * The charge's own words.
   */
  text: string;
  /**
   * What it is about, a name of the wear guide.
   */
  element: string | null;
  /**
   * What is said to be wrong with it, a name of the wear guide.
   */
  finding: string | null;
  /**
   * What it is about, as sentences name it.
   */
  elementText: string;
  /**
   * The finding, in words.
   */
  findingText: string | null;
  /**
   * Where element and finding were read from the charge's words: how sure that is.
   */
  recognition?: {
    /**
     * From 0 to 100.
     */
    confidence: number;
  };
  /**
   * Facts taken from the charge's words where the case has none.
   */
  factsFromText?: FactFromText[];
  /**
   * Facts of the charge's words that the case overrules.
   */
  overruledFacts?: FactFromText[];
  /**
   * What was charged.
   */
  claimed: Money;
  verdict: Verdict;
  /**
   * The verdict, in words.
   */
  verdictText: string;
  /**
   * False where the verdict may change with what is not known.
   */
  certain: boolean;
  /**
   * Why, in one sentence or two.
   */
  reason: string;
  /**
   * What a tenant may fairly be asked to pay.
   */
  fair: Range;
  /**
   * What the damaged part was still worth, before the law and the facts of the charge limit it.
   */
  depreciatedValue: Range;
  /**
   * From the charge to the fair sum, step by step.
   */
  steps: Step[];
  /**
   * Decided disputes like it, as examples; null where too few are known.
   */
  comparableDecisions: ComparableDecisions | null;
  /**
   * The day of installing that decides; null where none does.
   */
  turningPoint: {
    /**
     * Installed before this day, nothing of its value is left.
     */
    noChargeIfInstalledBefore: Day;
    /**
     * What may be charged even then.
     */
    remainingCharge: Money;
    /**
     * The same as a sentence.
     */
    text: string;
  } | null;
  /**
   * Where its value stands over its useful life; null where it does not lose value with age.
   */
  depreciation: Depreciation | null;
  /**
   * The charge by each method of depreciation, where the case asks to see them.
   */
  methods?: MethodFair[];
  /**
   * Documents worth asking for, in words.
   */
  documentsToRequest: string[];
  /**
   * Dangers of what it is about: codes of cautions.
   */
  hazards: string[];
  /**
   * What the law says of this charge; the rules themselves stand once, under law.rules. What it says of several charges alike stands under law.sharedRules too, to be told once.
   */
  bars: Bar[];
  /**
   * Sources that see it otherwise.
   */
  conflicts: {
    verdict: Verdict;
    /**
     * What they say.
     */
    text: string;
    source: SourceText;
    sourceIds: SourceIds;
  }[];
  /**
   * Everything its judgement rests on: names of members of `sources`.
   */
  sources: string[];
}
/**
 * A fact that the words of a charge state.
 */
export interface FactFromText {
  /**
   * The member of the case's line that it fills.
   */
  field: string;
  value: FactValue;
  /**
   * Where it was read in the text of the charge: code points, [from, to).
   */
  span: Span;
  /**
   * The words it was read from.
   */
  quote: string;
  /**
   * What the fact is, in words.
   */
  label: string;
  /**
   * Both as a sentence.
   */
  text: string;
}
/**
 * How much of something.
 */
export interface Quantity {
  /**
   * How many of the unit, to a thousandth.
   */
  count: number;
  /**
   * room, wall, sq-ft, sq-yd, hour, day, month, each ...
   */
  unit: string;
}
/**
 * Three sums, low to high.
 */
export interface Range {
  /**
   * The least that the facts allow.
   */
  low: Money;
  /**
   * What adjudicators most often allow; null where nothing supports such a sum.
   */
  likely: string | null;
  /**
   * The most that the facts allow.
   */
  high: Money;
}
/**
 * One step from the charge to the fair sum.
 */
export interface Step {
  /**
   * What the step is, the same in every language.
   */
  code: string;
  /**
   * The step as a sentence.
   */
  text: string;
  /**
   * The likely sum before.
   */
  from: Money;
  /**
   * The likely sum after.
   */
  to: Money;
  /**
   * The low sum after.
   */
  low: Money;
  /**
   * The high sum after.
   */
  high: Money;
  source: SourceText;
  sourceIds: SourceIds;
}
export interface ComparableDecisions {
  /**
   * How like this charge they are.
   */
  similarity: 'same-finding' | 'same-element' | 'same-kind';
  /**
   * How many allowed nothing.
   */
  noneAllowed: number;
  /**
   * How many allowed a part.
   */
  partAllowed: number;
  /**
   * How many allowed all.
   */
  fullyAllowed: number;
  /**
   * The same as a sentence.
   */
  text: string;
  /**
   * The most alike: ids of rules/precedents/cases.json.
   */
  decisions: string[];
}
/**
 * The value of a thing over its useful life.
 */
export interface Depreciation {
  /**
   * Its useful life, in months.
   */
  usefulLifeMonths: {
    /**
     * Months.
     */
    low: number;
    /**
     * Months.
     */
    likely: number;
    /**
     * Months.
     */
    high: number;
  };
  /**
   * When it was installed.
   */
  installed: Days | null;
  /**
   * When the tenant moved in.
   */
  moveIn: Days | null;
  /**
   * When the tenant moved out.
   */
  moveOut: Days | null;
  /**
   * The share of its value that was left at the move-out: percentages as the language writes them, "8.9%".
   */
  remainingShare: {
    /**
     * Percent.
     */
    low: string;
    /**
     * Percent.
     */
    likely: string;
    /**
     * Percent.
     */
    high: string;
  };
  /**
   * The method of depreciation that was used.
   */
  method?: string;
  /**
   * The method, in words.
   */
  methodText?: string;
}
/**
 * The days between which something lies; an open end is null.
 */
export interface Days {
  /**
   * The first of them.
   */
  earliest: Day | null;
  /**
   * The last of them.
   */
  latest: Day | null;
}
export interface MethodFair {
  /**
   * The method.
   */
  id: string;
  /**
   * Its name, in words.
   */
  label: string;
  /**
   * How it counts.
   */
  text: string;
  /**
   * Whether it is the one that is used here.
   */
  inUse: boolean;
  /**
   * The charge by this method.
   */
  fair: Range;
  source: SourceText;
  sourceIds: SourceIds;
}
export interface Bar {
  /**
   * The rule: a name of a member of law.rules.
   */
  rule: string;
  /**
   * bar: nothing may be taken. needs-proof: only with documents. damaged-portion-only: no matching of what is whole. limit: no more than a sum. caution: said beside the charge, changes no sum. not-listed: no kind of charge that the law lists.
   */
  effect: 'bar' | 'needs-proof' | 'damaged-portion-only' | 'limit' | 'caution' | 'not-listed';
  /**
   * True: it applies. Null: that is not known.
   */
  applies: true | null;
  /**
   * The most it allows, where it sets a sum.
   */
  most: Money | null;
}
/**
 * The sums of the whole statement.
 */
export interface Totals {
  /**
   * All charges, credits taken off.
   */
  claimed: Money;
  /**
   * What of them is fair.
   */
  fair: Range;
  /**
   * Where not every charge has a likely sum.
   */
  counted: {
    /**
     * How many charges the likely sum counts.
     */
    lines: number;
    /**
     * How many there are.
     */
    of: number;
    /**
     * The low sum of the others.
     */
    restLow: Money;
    /**
     * The high sum of the others.
     */
    restHigh: Money;
    /**
     * The same as a sentence.
     */
    text: string;
  } | null;
  /**
   * All deposits; null where none is known.
   */
  deposit: Money | null;
  /**
   * Interest the law adds to the deposit.
   */
  interest: Range;
  /**
   * Of the deposit, money paid for a purpose that none of the charges serves, where the law holds it to that; it goes back whatever else is owed.
   */
  keptApart: Range;
  /**
   * Of the fair charges, what money that is no deposit here was paid for (a pet, keys, cleaning): it pays them first, and the deposit does not.
   */
  paidApart: Range;
  /**
   * Deposit and interest less what is fair and not paid apart; null where no deposit is known.
   */
  fairRefund: Range | null;
  /**
   * What was paid back.
   */
  paidBack: Money;
  /**
   * True where that is taken from the statement's words.
   */
  paidBackAssumed: boolean;
  /**
   * What of the fair refund has not been paid.
   */
  shortfall: Range | null;
  /**
   * What is fair beyond deposit and interest.
   */
  owedByTenant: Range | null;
  /**
   * Where the tenant may owe more than the deposit: what the landlord may ask for besides, in words.
   */
  counterclaim: string | null;
  /**
   * What was charged for ordinary wear.
   */
  ordinaryWear: Money;
}
export interface Law {
  /**
   * ISO 3166-2.
   */
  jurisdiction: string;
  /**
   * The name of the place.
   */
  name: string;
  /**
   * When its law was last read.
   */
  reviewed: Day | null;
  /**
   * True where the law could not be read in its own text.
   */
  limitedSources: boolean;
  /**
   * An official guide for tenants and landlords.
   */
  guide: {
    /**
     * Its title.
     */
    title: string;
    /**
     * Who publishes it.
     */
    publisher: string;
    /**
     * Its address.
     */
    url: string | null;
  } | null;
  /**
   * Where help is found.
   */
  help: {
    /**
     * What kind of help.
     */
    kind: 'guide' | 'court' | 'legal-aid';
    /**
     * The same in words.
     */
    label: string;
    /**
     * Its name.
     */
    title: string;
    /**
     * Whose it is.
     */
    publisher: string;
    /**
     * Its address.
     */
    url: string | null;
    basis: Basis;
  }[];
  /**
   * Money of the case that this law does not call a deposit; it is not in the sums.
   */
  notDeposit: Rule[];
  /**
   * What the law says of several charges alike: a view tells it once, though it stands in the bars of each.
   */
  sharedRules: {
    /**
     * The rule: a name of a member of rules.
     */
    rule: string;
    /**
     * As of a charge's own bars.
     */
    effect: 'bar' | 'needs-proof' | 'damaged-portion-only' | 'limit' | 'caution' | 'not-listed';
    /**
     * True: it applies. Null: that is not known.
     */
    applies: true | null;
    /**
     * The charges it may concern.
     */
    lines: string[];
  }[];
  /**
   * Doubts about the law as it is held here.
   */
  caveats: {
    /**
     * What to check.
     */
    text: string;
  }[];
  /**
   * The rules that charges name, by id.
   */
  rules: {
    [k: string]: Rule;
  };
}
/**
 * A rule of law.
 */
export interface Rule {
  /**
   * What the law says.
   */
  text: string;
  source: SourceText;
  sourceIds: SourceIds;
  caveat: Caveat;
}
/**
 * A legal day: a deadline, or a time that opens.
 */
export interface LegalDate {
  /**
   * The rule's id in the law file.
   */
  id: string;
  /**
   * What kind of duty it is: return-deposit, itemize ...
   */
  duty: string;
  /**
   * The same in words.
   */
  label: string;
  /**
   * Whose duty or right it is.
   */
  who: 'landlord' | 'tenant';
  /**
   * The last day on which it can be done.
   */
  last: Days | null;
  /**
   * The first day on which it may be done.
   */
  first: Days | null;
  /**
   * True where the law sets a first day and no last one: a time that opens, not a deadline.
   */
  notBefore: boolean;
  state: DutyState;
  /**
   * The state, in words.
   */
  stateText: string;
  /**
   * What the law says.
   */
  rule: string;
  /**
   * How the day was counted.
   */
  text: string;
  /**
   * What follows if it is missed.
   */
  ifMissed: string;
  /**
   * True where the tenant loses a right if it is missed.
   */
  losesRightIfMissed: boolean;
  /**
   * When the rule applies, where it has a condition.
   */
  condition: string | null;
  /**
   * Where the case holds what the state depends on and is not known.
   */
  dependsOn: Pointer[];
  /**
   * The law's names of the same, in the same order.
   */
  dependsOnIds: string[];
  /**
   * The rules of which one applies, where it is open which.
   */
  alternatives: {
    /**
     * The rule's id.
     */
    id: string;
    /**
     * When it applies.
     */
    condition: string | null;
    /**
     * Its last day.
     */
    last: Days | null;
    /**
     * What it says.
     */
    rule: string;
    /**
     * How its day was counted.
     */
    text: string;
    source: SourceText;
    sourceIds: SourceIds;
  }[];
  source: SourceText;
  sourceIds: SourceIds;
  caveat: Caveat;
}
export interface Defect {
  /**
   * The rule's id in the law file.
   */
  code: string;
  /**
   * What is missing.
   */
  text: string;
  /**
   * False where it may be there after all.
   */
  certain: boolean;
  /**
   * The id of the charge, where it is about one.
   */
  line: string | null;
  /**
   * The ids of the charges it is about.
   */
  lines: string[];
  /**
   * What follows.
   */
  ifMissing: string;
  source: SourceText;
  sourceIds: SourceIds;
  caveat: Caveat;
}
export interface Remedies {
  /**
   * False where a fact is missing without which no sum can be named.
   */
  known: boolean;
  /**
   * The least that may be owed to the tenant.
   */
  least: Money;
  /**
   * The most.
   */
  most: Money;
  /**
   * True where it may be more, by a sum that cannot be named.
   */
  openEnded: boolean;
  /**
   * The same as sentences.
   */
  text: string;
  /**
   * What is due by the fair sums alone.
   */
  amountDue: Range;
  /**
   * What is due if the landlord has lost the right to keep anything.
   */
  amountDueIfForfeited: Range;
  /**
   * Whether the landlord has lost that right.
   */
  forfeiture: 'yes' | 'possible' | 'no';
  items: Remedy[];
  source: SourceText;
  sourceIds: SourceIds;
}
export interface Remedy {
  /**
   * The rule's id in the law file.
   */
  rule: string;
  /**
   * forfeit: a right that is lost. award: a sum on top.
   */
  kind: 'forfeit' | 'award';
  /**
   * False where that is open.
   */
  certain: boolean;
  /**
   * What the law says.
   */
  text: string;
  /**
   * The least.
   */
  least?: Money;
  /**
   * The most.
   */
  most?: Money;
  source: SourceText;
  sourceIds: SourceIds;
  caveat: Caveat;
}
export interface Assumption {
  /**
   * Where the case would hold it.
   */
  asks: Pointer;
  /**
   * The law's name of it.
   */
  id: string;
  /**
   * What was taken as usual.
   */
  text: string;
}
export interface AuditNote {
  /**
   * What does not come out.
   */
  code: string;
  /**
   * The same as a sentence.
   */
  text: string;
  /**
   * The ids of the charges it is about.
   */
  lines: string[];
}
export interface Question {
  /**
   * Where the case holds the answer.
   */
  asks: Pointer;
  /**
   * What is asked.
   */
  code: string;
  /**
   * The question.
   */
  text: string;
  /**
   * How much the answer moves, at most; in the currency of the answer.
   */
  effect: Money;
  /**
   * Whether a day was kept hangs on the answer, and something follows if it was not.
   */
  affectsDeadline: boolean;
  /**
   * The law's name of the fact or event, of a question of law.
   */
  id: string | null;
  /**
   * The id of the charge, where it is about one.
   */
  line: string | null;
}
export interface Caution {
  /**
   * What it is about.
   */
  code: string;
  /**
   * The caution.
   */
  text: string;
}
export interface Source {
  /**
   * Its citation or title.
   */
  text: string;
  basis: Basis;
  /**
   * The same in words.
   */
  basisText: string;
  /**
   * Its address.
   */
  url: string | null;
}
/**
 * What was wrong with an input. The same in every version of the format.
 */
export interface Fault {
  /**
   * What is wrong, the same in every version: "unknown-member" ...
   */
  code: string;
  /**
   * Where, with the names that the input has; "" is the whole.
   */
  at: Pointer;
  /**
   * One plain English sentence or two that say what to do.
   */
  text: string;
  /**
   * The known name nearest to the one that was given.
   */
  near: string | null;
}
/**
 * A letter or paper for a case, version 2 of the format, as paragraphs. A case that cannot be read has only its errors.
 */
export interface Letter {
  wearline: Version;
  /**
   * Version of the engine; only where there are errors.
   */
  engine?: string;
  /**
   * The day of the letter.
   */
  today?: Day;
  /**
   * Which letter it is: question-charges, request-documents ...; "" where none is written.
   */
  kind?: string;
  /**
   * Its name, in words.
   */
  title?: string;
  /**
   * The letters that fit the facts and dates, best first.
   */
  proposed?: {
    /**
     * Which letter: question-charges, request-documents ...
     */
    kind: string;
    /**
     * Its name, in words.
     */
    label: string;
    /**
     * Why it fits now.
     */
    reason: string;
  }[];
  /**
   * Why no letter is proposed.
   */
  noLetter?: {
    /**
     * Why none fits.
     */
    code: string;
    /**
     * The same as a sentence.
     */
    text: string;
  } | null;
  /**
   * Every letter of this side.
   */
  kinds?: {
    /**
     * Which letter: question-charges, request-documents ...
     */
    kind: string;
    /**
     * Its name, in words.
     */
    label: string;
  }[];
  /**
   * The event of the case that its day of sending is; "" where it has none.
   */
  sentEvent?: string;
  /**
   * Of the letter.
   */
  language?: Language;
  paragraphs?: Paragraph[];
  /**
   * The letter as plain text: what is included, and no caution.
   */
  text?: string;
  /**
   * The same in the reader's language, to read and not to send; null where the letter is in it.
   */
  readingCopy?: {
    language: Language;
    /**
     * Its name, in words.
     */
    title: string;
    paragraphs: Paragraph[];
    /**
     * The copy as plain text.
     */
    text: string;
  } | null;
  /**
   * Names, addresses and numbers that no case holds, in the order in which they first stand in the letter.
   */
  placeholders?: {
    /**
     * What is missing: sender, landlord, payee ...
     */
    id: string;
    /**
     * As it stands in the letter, in brackets.
     */
    label: string;
    /**
     * What fills it; "" while nothing does.
     */
    value: string;
  }[];
  /**
   * What to know before sending.
   */
  warnings?: {
    /**
     * What it is about.
     */
    code: string;
    /**
     * What a landlord's paper has to be looked through for; "" for any other warning.
     */
    about: '' | 'day' | 'charge' | 'proof' | 'form';
    /**
     * The warning.
     */
    text: string;
  }[];
  errors: Errors;
}
/**
 * One paragraph.
 */
export interface Paragraph {
  /**
   * The same for the same thing in every version of a letter.
   */
  id: string;
  /**
   * What part of the letter it is. A caution is for the reader and is not sent.
   */
  role: 'address' | 'date' | 'opening' | 'table' | 'line' | 'list' | 'ask' | 'closing' | 'caution' | 'enclosures';
  /**
   * Its words; of a table or list, what stands above it.
   */
  text: string;
  /**
   * The ids of the charges it speaks of.
   */
  lines: string[];
  /**
   * Citations of law in its text, word for word.
   */
  citations: string[];
  /**
   * The heads of the columns of a table; may be empty.
   */
  header: string[];
  /**
   * The cells of a table, row by row; of a list, rows of one cell.
   */
  rows: string[][];
  /**
   * Whether it may be left out.
   */
  optional: boolean;
  /**
   * Whether it is part of the text that is sent.
   */
  included: boolean;
}
/**
 * What a statement that came as text says, version 2 of the format. Sums are in its own currency, negative where in the tenant's favor. A text that cannot be read has only its errors.
 */
export interface Reading {
  wearline: Version;
  /**
   * Version of the engine; only where there are errors.
   */
  engine?: string;
  /**
   * The charges, in the order of the statement.
   */
  lines?: ReadLine[];
  /**
   * All deposits it names.
   */
  deposit?: Money | null;
  /**
   * Interest on the deposit.
   */
  interest?: Money | null;
  /**
   * Its total of the charges.
   */
  statedTotal?: Money | null;
  /**
   * What it says is refunded.
   */
  statedRefund?: Money | null;
  /**
   * What it says is still owed.
   */
  statedBalanceDue?: Money | null;
  /**
   * Payments it counts.
   */
  payment?: Money | null;
  /**
   * Each deposit.
   */
  deposits?: StatedAmount[];
  /**
   * Sums that are neither charges nor any of the above.
   */
  otherAmounts?: StatedAmount[];
  /**
   * The charges as they were read, added up.
   */
  linesTotal?: Money;
  /**
   * Days it names.
   */
  dates?: {
    /**
     * The statement's own date.
     */
    statement: Day | null;
    /**
     * When it was sent.
     */
    sent: Day | null;
    /**
     * When the tenant moved out.
     */
    moveOut: Day | null;
    /**
     * When the tenant moved in.
     */
    moveIn: Day | null;
    /**
     * When something is to be paid.
     */
    due: Day | null;
    /**
     * When the home was looked at.
     */
    inspected: Day | null;
    /**
     * When the deposit was paid.
     */
    depositPaid: Day | null;
  };
  /**
   * Where those sums and days stand.
   */
  spans?: {
    deposit?: TextPlace;
    interest?: TextPlace;
    statedTotal?: TextPlace;
    statedRefund?: TextPlace;
    statedBalanceDue?: TextPlace;
    payment?: TextPlace;
    statement?: TextPlace;
    sent?: TextPlace;
    moveOut?: TextPlace;
    moveIn?: TextPlace;
    due?: TextPlace;
    inspected?: TextPlace;
    depositPaid?: TextPlace;
  };
  /**
   * ISO 4217, where it is written.
   */
  currency?: string | null;
  /**
   * The statement's own.
   */
  language?: Language;
  /**
   * Lines that were read as words only, or not at all.
   */
  unread?: {
    /**
     * Line of the input, from 1.
     */
    line: number;
    /**
     * The line.
     */
    text: string;
    /**
     * Why it is no charge.
     */
    code: string;
    /**
     * The same as a sentence.
     */
    reason: string;
  }[];
  /**
   * What became of each line of the input: charge, heading, date, total ...
   */
  inputLines?: string[];
  /**
   * The paper's arithmetic that does not come out.
   */
  arithmeticErrors?: {
    /**
     * Which sum.
     */
    code: string;
    /**
     * The same as a sentence.
     */
    text: string;
    /**
     * What would explain it: turned digits, a lost point, a charge left out.
     */
    explanation: string | null;
    /**
     * Line of the input, from 1; 0 for none.
     */
    line: number;
    /**
     * What the paper says.
     */
    stated: Money;
    /**
     * What its charges come to.
     */
    computed: Money;
  }[];
  /**
   * Its arithmetic that does.
   */
  arithmeticConfirmed?: {
    /**
     * Which sum.
     */
    code: string;
    /**
     * The same as a sentence.
     */
    text: string;
    /**
     * Line of the input, from 1.
     */
    line: number;
    stated: Money;
    /**
     * The lines of the input it is made of.
     */
    lines: number[];
  }[];
  /**
   * Charges in one reading of the paper that are none in another as likely, and sums that may be charges where no sum of the paper confirms it; they are not among the lines.
   */
  uncertainCharges?: {
    /**
     * The words of the charge.
     */
    text: string;
    amount: Money;
    /**
     * Which reading of the paper has it, from 0; charges of one reading are taken or left together. Null: it is asked about by itself.
     */
    reading: number | null;
    spans: TextPlace[];
    amountSpan: TextPlace;
  }[];
  errors?: Errors;
}
/**
 * One charge.
 */
export interface ReadLine {
  /**
   * The words of the charge.
   */
  text: string;
  amount: Money;
  /**
   * Whether it adds to the charges or takes off them.
   */
  role: 'charge' | 'credit' | 'tax';
  /**
   * True where the sum is not printed but follows from a printed count and price.
   */
  computed: boolean;
  /**
   * True where letters were taken for digits.
   */
  corrected: boolean;
  /**
   * The kind of charge: damage, cleaning, rent, fee, utility, keys, disposal, other.
   */
  kind: string | null;
  /**
   * What it is about, a name of the wear guide; null where that could not be told.
   */
  element: string | null;
  /**
   * What is said to be wrong with it.
   */
  finding: string | null;
  /**
   * The room or place it names.
   */
  location: string | null;
  /**
   * The count and unit it names.
   */
  quantity: Quantity | null;
  facts: Facts;
  factSpans: FactSpans;
  /**
   * From 0 to 100: below 50 ask, from 70 on it is safe to go on.
   */
  confidence: number;
  /**
   * True for a heading, a sum or a remark.
   */
  notACharge: boolean;
  /**
   * The words it was told from.
   */
  basis: string[];
  /**
   * What else it may be, best first.
   */
  alternatives: Alternative[];
  /**
   * Where its words stand, line by line.
   */
  spans: TextPlace[];
  /**
   * Where its sum stands.
   */
  amountSpan: TextPlace;
}
/**
 * Facts that words state, as members of a case's line.
 */
export interface Facts {
  /**
   * When it was installed: a day or an uncertain date (EDTF).
   */
  installed?: string;
  /**
   * Its age in years.
   */
  ageYears?: string | number;
  /**
   * Its age at move-in, in years.
   */
  ageYearsAtMoveIn?: string | number;
  /**
   * Its condition at move-in.
   */
  conditionAtMoveIn?: string;
  /**
   * Who or what did it.
   */
  cause?: string;
  severity?: 'light' | 'moderate' | 'heavy';
  /**
   * How many of the fault: nail holes, stains.
   */
  count?: number;
  /**
   * What on the landlord's side brought it about.
   */
  landlordFactors?: string[];
  costComponents?: CostComponents;
  /**
   * How much was charged for.
   */
  chargedQuantity?: Quantity;
  /**
   * How much of it was damaged.
   */
  damagedQuantity?: Quantity;
  remedy?: 'replace' | 'repair' | 'clean' | 'dispose';
  /**
   * Whether what was put in is better than what was there.
   */
  betterment?: boolean;
  /**
   * What a sound repair would cost.
   */
  repairCost?: Money;
  /**
   * What the thing costs new, like for like.
   */
  replacementCost?: Money;
  /**
   * Its useful life, in years.
   */
  usefulLifeYears?: number;
  /**
   * A sum in the tenant's favor.
   */
  credit?: boolean;
  /**
   * Documents that came for it.
   */
  supportingDocuments?: string[];
  /**
   * Documents that did not come.
   */
  missingDocuments?: string[];
  /**
   * Whether the record of the move-out has it.
   */
  onMoveOutRecord?: boolean;
  /**
   * Whether the lease has the charge.
   */
  inLease?: boolean;
  /**
   * Whether the work was done.
   */
  workDone?: boolean;
  /**
   * Hours the landlord worked.
   */
  hours?: Quantity;
  /**
   * What an hour was charged at.
   */
  hourlyRate?: Money;
  /**
   * The first day charged (rent, utilities).
   */
  periodStart?: string;
  /**
   * The last day charged.
   */
  periodEnd?: string;
  /**
   * When the home was let again.
   */
  reletOn?: string;
}
/**
 * For each of the facts the words it was read from: code points of the text, [from, to).
 */
export interface FactSpans {
  [k: string]: Span;
}
export interface Alternative {
  /**
   * What it may be about.
   */
  element: string | null;
  /**
   * What may be wrong with it.
   */
  finding: string | null;
  /**
   * From 0 to 100.
   */
  confidence: number;
}
/**
 * Where something stands in the statement.
 */
export interface TextPlace {
  /**
   * Line of the input, from 1; 0 where it has none.
   */
  line: number;
  /**
   * UTF-16 code units from the start of that line.
   */
  start: number;
  /**
   * The same, end exclusive.
   */
  end: number;
}
export interface StatedAmount {
  /**
   * The words of its line.
   */
  text: string;
  amount: Money;
  span: TextPlace;
}
/**
 * What one description of a charge is for, version 2 of the format.
 */
export interface Recognition {
  wearline: Version;
  /**
   * The description.
   */
  text: string;
  /**
   * The sum it names.
   */
  amount: Money | null;
  /**
   * The kind of charge: damage, cleaning, rent, fee, utility, keys, disposal, other.
   */
  kind: string | null;
  /**
   * What it is about, a name of the wear guide; null where that could not be told.
   */
  element: string | null;
  /**
   * What is said to be wrong with it.
   */
  finding: string | null;
  /**
   * The room or place it names.
   */
  location: string | null;
  /**
   * The count and unit it names.
   */
  quantity: Quantity | null;
  facts: Facts;
  factSpans: FactSpans;
  /**
   * From 0 to 100: below 50 ask, from 70 on it is safe to go on.
   */
  confidence: number;
  /**
   * True for a heading, a sum or a remark.
   */
  notACharge: boolean;
  /**
   * The words it was told from.
   */
  basis: string[];
  /**
   * What else it may be, best first.
   */
  alternatives: Alternative[];
}
/**
 * What a person can choose from, in one language, version 2 of the format.
 */
export interface Catalogue {
  wearline: Version;
  language: Language;
  /**
   * Groups of elements.
   */
  groups: Named[];
  /**
   * What charges are about.
   */
  elements: Element[];
  landlordFactors: Named[];
  conditionsAtMoveIn: Named[];
  causes: Named[];
  /**
   * Ways to count what a thing was still worth.
   */
  depreciationMethods: {
    /**
     * The name that a case uses.
     */
    id: string;
    /**
     * The same in words.
     */
    label: string;
    /**
     * How it counts.
     */
    text: string;
  }[];
  /**
   * Published tables of useful lives.
   */
  usefulLifeSources: Named[];
  /**
   * Places.
   */
  jurisdictions: {
    /**
     * ISO 3166.
     */
    code: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * Whether its law is held.
     */
    law: boolean;
  }[];
  /**
   * Cities and counties with rules of their own.
   */
  localities: {
    /**
     * The place whose law it lies under.
     */
    jurisdiction: string;
    /**
     * Its id.
     */
    id: string;
    /**
     * Its name.
     */
    name: string;
    /**
     * What the case's locality is.
     */
    value: string;
    /**
     * How to tell that the home is inside.
     */
    inside: string;
    /**
     * What could not be read and where to ask; "" for nothing.
     */
    ask: string;
  }[];
}
export interface Named {
  /**
   * The name that a case uses.
   */
  id: string;
  /**
   * The same in words.
   */
  label: string;
}
export interface Element {
  /**
   * The name that a case uses.
   */
  id: string;
  /**
   * The id of its group.
   */
  group: string;
  /**
   * The usual kind of charge.
   */
  kind: string;
  /**
   * Its name.
   */
  label: string;
  /**
   * What else it stands for.
   */
  covers: string;
  /**
   * Whether it loses value with age.
   */
  depreciates: boolean;
  /**
   * The least that can be repaired so that it matches.
   */
  repairableArea: {
    /**
     * The unit.
     */
    unit: string;
    /**
     * The same as a sentence.
     */
    text: string;
  } | null;
  findings: Finding[];
}
export interface Finding {
  /**
   * The name that a case uses.
   */
  id: string;
  /**
   * Its name.
   */
  label: string;
  /**
   * What it is.
   */
  description: string;
  /**
   * What it usually is.
   */
  usual: 'wear' | 'damage' | 'depends';
  /**
   * Whether age lowers its charge.
   */
  depreciates: boolean;
  /**
   * What to ask about it.
   */
  ask: string;
}
